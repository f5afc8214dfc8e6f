import type { BankEnergy, PeriodEnergy } from "../../library/analysis/energy/energy-result.ts";
import { hoursBetween } from "../../library/model/use-properties.ts";
import type { ProposedFix, Settable } from "../../library/rules/finding.ts";
import { counted, formatRounded } from "../../library/rules/wording/format-number.ts";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import { fixedInWords } from "./fixed-in-words.ts";
import type { EnergyLever } from "./messages.ts";
import { plainWords } from "./plain-words.ts";

/** A lever with the place in the plan that it moves. */
export interface PlanLever extends EnergyLever {
  readonly record: number;
  readonly path: readonly string[];
}

/** The levers of a bank in a period: its batteries, its arrays, and the hours of each kind of charger that it has. */
export function leversOf(plan: CheckedPlan, energy: PeriodEnergy, bank: BankEnergy): readonly PlanLever[] {
  const { flows } = bank.hours;
  const kinds = new Set(flows.chargers.map(({ kind }) => kind));
  const { parts } = plan.judgement.network!.network;
  return [
    ...bank.batteries.map(({ record, name, capacityAh }) => {
      const step = capacityAh >= 50 ? 10 : 1;
      return leverAt(plan, record, ["capacityAh"], {
        ...{ label: `${name}: capacity`, unit: "Ah", value: capacityAh, step, from: step },
        most: Math.ceil((5 * capacityAh) / step) * step,
      });
    }),
    ...parts.flatMap((part) => {
      if (part.kind !== "solarArray" || !flows.arrays.some(({ record }) => record === part.record)) return [];
      const { record, name, series, parallel, maxPowerV, maxPowerA } = part;
      const stringW = formatRounded(series * maxPowerV * maxPowerA);
      return leverAt(plan, record, ["parallel"], {
        ...{ label: `${name}: strings of ${stringW} W in parallel`, unit: "", value: parallel },
        ...{ step: 1, from: 1, most: Math.min(50, Math.max(10, 5 * parallel)) },
      });
    }),
    ...(kinds.has("engine") ? [hoursLever(plan, energy, "driving")] : []),
    ...(kinds.has("shore") ? [hoursLever(plan, energy, "shore")] : []),
  ];
}

function hoursLever(
  plan: CheckedPlan,
  { period: { record, name, values } }: PeriodEnergy,
  property: "driving" | "shore",
): PlanLever {
  const stated = values[property];
  const most =
    stated?.fromHour === undefined || stated.untilHour === undefined
      ? 24
      : hoursBetween(stated.fromHour, stated.untilHour);
  return leverAt(plan, record, stated ? [property, "hoursPerDay"] : [property], {
    ...{ label: `${name}: ${property === "driving" ? "driving" : "shore power"}`, unit: "h a day" },
    ...{ value: stated ? (stated.hoursPerDay ?? most) : 0, step: 0.5, from: 0, most },
  });
}

function leverAt(
  plan: CheckedPlan,
  record: number,
  path: readonly string[],
  figures: Omit<EnergyLever, "id" | "hint" | "fixed">,
): PlanLever {
  const lever = {
    ...figures,
    ...{ id: [record, ...path].join(" "), record, path, hint: "", label: plainWords(figures.label) },
  };
  const written = plan.movableAt(record, path);
  if (written.state === "fixed")
    return { ...lever, fixed: `Cannot be moved here: it is ${fixedInWords(written)}.` };
  const placed = plan.editsOf(changeOf(lever, figures.value));
  if (placed?.edits.length !== 1)
    return { ...lever, fixed: "Cannot be moved here: no single place in the text sets it." };
  if (written.state === "absent") {
    if (placed.alsoChanges.length > 0)
      return {
        ...lever,
        fixed: `Cannot be moved here: it is ${fixedInWords({ why: "from a spread" })}.`,
      };
    return { ...lever, hint: "It is not in the text yet, and would be added." };
  }
  return written.sets > 1
    ? { ...lever, hint: `This number sets ${counted(written.sets, "value")} of the plan.` }
    : lever;
}

/** The change that a move makes; hours that the plan does not have yet become an object of their own. */
export function changeOf({ record, path }: Pick<PlanLever, "record" | "path">, value: number): ProposedFix {
  const isWhole = path.length === 1 && path[0] !== "capacityAh" && path[0] !== "parallel";
  const set: Settable = isWhole ? { hoursPerDay: value } : value;
  return { title: "Move a lever", kind: "repair", changes: [{ do: "set", record, path, value: set }] };
}

/** A value that the lever can take, or undefined. */
export function valueWithin({ from, most, step }: EnergyLever, value: number): number | undefined {
  if (!Number.isFinite(value) || value < from || value > most) return undefined;
  return Number((Math.round(value / step) * step).toPrecision(12));
}
