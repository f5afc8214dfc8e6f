import type { PeriodEnergy } from "../../analysis/energy/energy-result.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";

const chargerNeeded = ownRequirement(
  "A period with hours of driving or of shore power belongs to a plan with a charger that then charges a bank.",
);

export const energyNoCharger = defineRule<Values>({
  id: "energy/no-charger",
  title: "Driving or shore hours without a charger",
  severity: "warning",
  why: "Hours that charge no bank look like a source that is counted on.",
  sources: [chargerNeeded],
  fixable: false,
  acceptable: false,
  // Needs the sources of each bank. Silent where no bank is judged: `energy/no-bank` reports that.
  check: ({ energy }) =>
    energy.flatMap((one) =>
      (["driving", "shore"] as const).flatMap((hours): Found<Values>[] =>
        addsNothing(one, hours)
          ? [
              {
                subject: one.period.name,
                at: { record: one.period.record, path: [hours] },
                values: { period: one.period.name, hours },
              },
            ]
          : [],
      ),
    ),
  message: ({ period, hours }) =>
    hours === "driving"
      ? `The driving hours of ${period} have no effect: no alternator, and no charger that runs with the engine, charges a bank of this plan.`
      : `The shore hours of ${period} have no effect: no charger on the mains charges a bank of this plan.`,
});

interface Values {
  readonly period: string;
  readonly hours: "driving" | "shore";
}

function addsNothing({ period, banks }: PeriodEnergy, hours: Values["hours"]): boolean {
  const kind = hours === "driving" ? "engine" : "shore";
  return (
    period.values[hours] !== undefined &&
    banks.length > 0 &&
    banks.every(({ sources }) => sources.every((source) => source.kind !== kind))
  );
}
