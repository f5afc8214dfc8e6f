import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";

const chargesABank = ownRequirement(
  "The sun of a period counts only if the array charges a bank through a controller.",
);

export const energyArrayUnused = defineRule<Values>({
  id: "energy/array-unused",
  title: "Solar array charges no bank",
  severity: "warning",
  why: "An array that is in no balance looks like a source that is counted on.",
  sources: [chargesABank],
  fixable: false,
  acceptable: true,
  // Needs the arrays that are at no bank. Silent where no bank is judged: `energy/no-bank` reports that.
  check({ energy }): Found<Values>[] {
    const judged = energy.find(({ climate, banks }) => climate !== undefined && banks.length > 0);
    return (judged?.idleArrays ?? []).map(({ record, name, hasController }) => ({
      subject: name,
      at: { record, path: [] },
      values: { name, period: judged!.period.name, hasController },
      related: [
        { at: { record: judged!.period.record, path: [] }, text: `In the period ${judged!.period.name}` },
      ],
    }));
  },
  message: ({ name, period, hasController }) =>
    hasController
      ? `${name} adds no energy in ${period}: its controller charges no bank of this plan. Connect the controller's output with a battery.`
      : `${name} adds no energy in ${period}: no solar controller is connected to both of its ends. Connect it with a controller that charges a battery.`,
});

interface Values {
  readonly name: string;
  readonly period: string;
  readonly hasController: boolean;
}
