import { byName } from "../../analysis/by-name.ts";
import {
  atOneVoltage,
  differInKind,
  differInVoltage,
  nominalOf,
} from "../../analysis/network/at-one-voltage.ts";
import { recordsOfIslands } from "../../analysis/network/topology/islands.ts";
import {
  type BatteryString,
  batteryStrings,
  parallelStrings,
} from "../../analysis/network/topology/parallel-strings.ts";
import { isLithiumBattery } from "../../model/battery-figures.ts";
import type { BatteryPart } from "../../model/network.ts";
import type { Severity } from "../finding.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { formatExact, withUnit } from "../wording/format-number.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";

const ofOneKind = ownRequirement(
  "Batteries in one bank are of one voltage, chemistry, age and capacity; capacities within 10 % count as equal.",
);

export const unlikeBatteries = defineRule<Values>({
  id: "battery/unlike",
  title: "Unlike batteries connected together",
  severity: "warning",
  why: "Unlike batteries work against each other: one is overcharged, emptied or reversed by the others, gases, heats up and fails.",
  sources: [ofOneKind],
  fixable: false,
  acceptable: true,
  // Needs the strings that are connected at both ends, every switch closed. An error if their voltages differ, or if lithium and
  // lead-acid are connected for good. One finding for each group and each string.
  check: (plan) => inNetwork(plan, (judged) => [...inParallel(judged), ...inSeries(judged)]),
  message(values) {
    const { what, other } = values;
    switch (what) {
      case "voltage":
        return `${withUnit(values.ownV, "V")} in parallel with ${withUnit(values.otherV, "V")} (${other}): the difference drives about ${withUnit(values.currentA, "A")} through both. Take them apart, and charge one from the other with a DC-DC charger.`;
      case "lithium":
        return `${values.own} in parallel with ${values.others} (${other}): it rests at ${values.restsHigher ? "a higher" : "a lower"} voltage, and each is charged to the wrong one. Put a DC-DC charger between them.`;
      case "chemistry":
        return `${capital(values.own)} in ${values.way} with ${values.others} (${other}): one of them is always charged to the wrong voltage. Use batteries of one kind.`;
      case "capacity in parallel":
        return `${formatExact(values.ownAh)} Ah in parallel with ${formatExact(values.otherAh)} Ah (${other}): they do not share the current by their capacity. Use batteries of one kind and age.`;
      case "capacity in series":
        return `${formatExact(values.ownAh)} Ah in series with ${formatExact(values.otherAh)} Ah (${other}): the smaller one is empty first, and the others then drive it into reversal. Use batteries of one kind.`;
    }
  },
});

type Values = { readonly other: string } & (
  | { readonly what: "voltage"; readonly ownV: number; readonly otherV: number; readonly currentA: number }
  | {
      readonly what: "lithium";
      readonly own: string;
      readonly others: string;
      readonly restsHigher: boolean;
    }
  | {
      readonly what: "chemistry";
      readonly own: string;
      readonly others: string;
      readonly way: "parallel" | "series";
    }
  | {
      readonly what: "capacity in parallel" | "capacity in series";
      readonly ownAh: number;
      readonly otherAh: number;
    }
);

function inParallel({ network, result }: JudgedNetwork): Found<Values>[] {
  return parallelStrings(network, result.topology.banks).flatMap((strings): Found<Values>[] => {
    const [first, ...others] = strings.sort((one, other) => byName(one.batteries[0]!, other.batteries[0]!));
    const differs =
      others.flatMap((other) => voltageOf(other, first!))[0] ??
      others.flatMap((other) => chemistryOf(other, first!))[0] ??
      others.flatMap((other) => capacityOf(other, first!))[0];
    if (!differs || !drivesCurrent.has(differs.values.what)) return differs ? [differs] : [];
    const explains = recordsOfIslands(network, [first!.batteries[0]!.index]);
    return [{ ...differs, explains, asIfMended: () => atOneVoltage(network, result.topology.banks) }];
  });
}

/** The differences for which one string charges the other, as long as their voltages at rest differ. */
const drivesCurrent: ReadonlySet<Values["what"]> = new Set(["voltage", "lithium"]);

function voltageOf(own: BatteryString, other: BatteryString): Found<Values>[] {
  if (!differInVoltage(own, other)) return [];
  const [ownV, otherV] = [nominalOf(own), nominalOf(other)];
  const restV = ({ batteries }: BatteryString) => batteries.reduce((total, one) => total + one.usualRestV, 0);
  const ohm = sum(own, ({ internal }) => internal.highOhm) + sum(other, ({ internal }) => internal.highOhm);
  const currentA = Math.abs(restV(own) - restV(other)) / ohm;
  return [found(own, other, "nominalV", "error", { what: "voltage", ownV, otherV, currentA })];
}

/** Lithium and lead-acid differ wherever they meet; kinds of lead-acid that a switch can take apart are usual. */
function chemistryOf(own: BatteryString, other: BatteryString): Found<Values>[] {
  const [mine, theirs] = [own.batteries[0]!, other.batteries[0]!];
  if (mine.chemistry === theirs.chemistry) return [];
  const words = { own: mine.chemistry, others: theirs.chemistry };
  if (differInKind(own, other))
    return [
      found(own, other, "chemistry", own.bank === other.bank ? "error" : "warning", {
        what: "lithium",
        ...words,
        restsHigher: isLithiumBattery(mine),
      }),
    ];
  if (own.bank !== other.bank) return [];
  return [found(own, other, "chemistry", "warning", { what: "chemistry", ...words, way: "parallel" })];
}

function capacityOf(own: BatteryString, other: BatteryString): Found<Values>[] {
  const [ownAh, otherAh] = [least(own), least(other)];
  if (own.bank !== other.bank || !differ(ownAh, otherAh)) return [];
  return [found(own, other, "capacityAh", "warning", { what: "capacity in parallel", ownAh, otherAh })];
}

function inSeries({ network, result }: JudgedNetwork): Found<Values>[] {
  return batteryStrings(network, result.topology.banks).flatMap((string): Found<Values>[] => {
    const [first, ...others] = string.batteries;
    if (!first) return [];
    const between = (one: BatteryPart): readonly [BatteryString, BatteryString] => [
      { ...string, batteries: [one] },
      { ...string, batteries: [first] },
    ];
    const unlike = others.find(({ chemistry }) => chemistry !== first.chemistry);
    if (unlike) {
      const words = { own: unlike.chemistry, others: first.chemistry, way: "series" } as const;
      return [found(...between(unlike), "chemistry", "warning", { what: "chemistry", ...words })];
    }
    const uneven = others.find(({ capacityAh }) => differ(capacityAh, first.capacityAh));
    if (!uneven) return [];
    const ah = { ownAh: uneven.capacityAh, otherAh: first.capacityAh };
    return [found(...between(uneven), "capacityAh", "warning", { what: "capacity in series", ...ah })];
  });
}

type WithoutOther<V> = V extends unknown ? Omit<V, "other"> : never;

function found(
  own: BatteryString,
  other: BatteryString,
  property: string,
  severity: Severity,
  values: WithoutOther<Values>,
): Found<Values> {
  const [mine, theirs] = [own.batteries[0]!, other.batteries[0]!];
  return {
    subject: mine.name,
    at: atPart(mine, property),
    severity,
    related: [relatedPart(theirs)],
    values: { ...values, other: partInWords(theirs) } as Values,
  };
}

function sum({ batteries }: BatteryString, of: (battery: BatteryPart) => number): number {
  return batteries.reduce((total, battery) => total + of(battery), 0);
}

function least({ batteries }: BatteryString): number {
  return Math.min(...batteries.map(({ capacityAh }) => capacityAh));
}

function differ(oneAh: number, otherAh: number): boolean {
  return Math.max(oneAh, otherAh) > alikeWithin * Math.min(oneAh, otherAh);
}

/** Capacities within 10 %, and a little for the arithmetic. */
const alikeWithin = 1.1 * (1 + 1e-9);

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
