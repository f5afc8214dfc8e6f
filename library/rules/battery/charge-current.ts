import { chargeInPeriod } from "../../analysis/energy/charge-in-period.ts";
import { isNeverFull } from "../../analysis/energy/never-full.ts";
import { isKeptFullByRelay } from "../../analysis/network/topology/batteries-beside.ts";
import { networkGraph } from "../../analysis/network/topology/network-graph.ts";
import type { WorstOf } from "../../analysis/network-result.ts";
import type { BatteryPart, Network } from "../../model/network.ts";
import { isStarterMotor } from "../../model/part-roles.ts";
import { monthNames } from "../../model/use-properties.ts";
import { usualChargeRates } from "../../standards/usual-charge-rates.ts";
import { isAbove, statedRating } from "../current-through.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork, type JudgedPlan } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatAbout, formatDistinctWithUnit, formatRounded } from "../wording/format-number.ts";
import { atPart, listInWords, occasionInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const chargeCurrent = defineRule<Values>({
  id: "battery/charge-current",
  title: "Charge current too high or too low",
  formerTitles: ["Charge current limit exceeded", "Charged with more than the battery takes"],
  severity: "warning",
  why: "A battery charged too fast gases, heats up and ages; one with its own protection cuts out while the chargers still deliver. A lead-acid battery charged too slowly is seldom full, and sulphates.",
  sources: [statedRating, usualChargeRates.source],
  fixable: false,
  acceptable: true,
  restsOn: "voltages",
  // Needs the current into each battery in every scenario, and in a period the hours of its sources. Information if only the usual rate
  // is exceeded or not reached.
  check: (plan) => [...inNetwork(plan, (judged) => check(judged, plan.energy)), ...tooSlow(plan)],
  message(values) {
    const { inPeriod } = values;
    if (inPeriod?.as === "too slow" || inPeriod?.as === "driving") return offeredInWords(values, inPeriod);
    const hours =
      inPeriod && (inPeriod.hours > 0 ? `for about ${formatAbout(inPeriod.hours)} h` : "in no hour");
    return `${takenInWords(values)}${hours ? ` In ${inPeriod.period} its sources offer more than that ${hours}.` : ""}`;
  },
});

/** In a scenario. */
function takenInWords(values: Values): string {
  const { currentA, estimate, limitA, stated, forMinutes, scenario } = values;
  const [takes, may] = formatDistinctWithUnit(currentA, limitA, "A");
  if (forMinutes)
    return `May take ${takes} ${scenario}${estimate}, its limit is ${may} (maxChargeA). A starter battery is nearly full and takes so much only for minutes (common practice, no source): compare the limit with the alternator's regulator.`;
  return stated
    ? `Takes ${takes} ${scenario}${estimate}, its limit is ${may} (maxChargeA): set the chargers to give less, or add a battery in parallel.`
    : `Takes ${takes} ${scenario}${estimate}; ${usualInWords(values, `up to ${may}`)}. State maxChargeA from its data sheet.`;
}

/** By the sources of a period. */
function offeredInWords(
  values: Values,
  { as, period, hours, neverFull = [] }: NonNullable<Values["inPeriod"]>,
): string {
  const { currentA, limitA } = values;
  const most = `about ${formatAbout(currentA)} A`;
  if (as === "too slow")
    return `In ${period} its sources charge it with at most ${most}; ${usualInWords(values, `at least ${formatRounded(limitA)} A`)}. In ${listInWords(neverFull, 12)} it is never full: add sun, driving or shore power.`;
  return `In ${period} its sources offer up to ${most} while the engine drives the alternator, too much for about ${formatAbout(hours)} h; ${usualInWords(values, `up to ${formatRounded(limitA)} A`)}. State maxChargeA from its data sheet.`;
}

function usualInWords({ chemistry, perAh, source }: Values, amount: string): string {
  return `${chemistry} of this capacity usually takes ${amount}, ${formatRounded(perAh)} A per Ah (${source})`;
}

interface Values {
  readonly currentA: number;
  readonly estimate: string;
  readonly limitA: number;
  /** False: the limit is the usual one for the chemistry. */
  readonly stated: boolean;
  /** A starter battery on an alternator: it is nearly full, and takes its greatest current only for minutes. */
  readonly forMinutes: boolean;
  /** `in "charging, nothing on"`, `with charger alone`. */
  readonly scenario: string;
  readonly chemistry: string;
  readonly perAh: number;
  readonly source: string;
  /**
   * In a period. `scenario`: the hours in which its sources offer more than the limit. `driving`: the same with an alternator that charges
   * it with no charger between. `too slow`: they never offer the least usual rate, which `limitA` and `perAh` then are.
   */
  readonly inPeriod?: {
    readonly as: "scenario" | "driving" | "too slow";
    readonly period: string;
    readonly hours: number;
    /** Of a slow charge: the months without a full one. */
    readonly neverFull?: readonly string[];
  };
}

type Energy = JudgedPlan["energy"];

function check(judged: JudgedNetwork, energy: Energy): Found<Values>[] {
  const { network, result } = judged;
  const batteries = network.parts.filter((part) => part.kind === "battery");
  const onAnAlternator = batteriesOnAlternators(judged);
  return batteries.flatMap((battery) => {
    const worst = result.parts[battery.index]?.draws;
    if (!worst) return [];
    if (battery.maxChargeA !== undefined) {
      if (!isAbove(worst.currentA, battery.maxChargeA)) return [];
      const forMinutes = isStarterBattery(judged, battery) && onAnAlternator.has(battery.index);
      const limit = { limitA: battery.maxChargeA, stated: true, forMinutes };
      return [found(network, battery, worst, limit, forMinutes ? [] : energy)];
    }
    // An alternator holds a voltage, and a full starter battery takes little of its possible current. Another may be empty.
    if (onAnAlternator.has(battery.index))
      return isStarterBattery(judged, battery) ? [] : whileDriving(battery, energy);
    const limitA = usualChargeRates.greatestPerAh[battery.chemistry] * battery.capacityAh;
    return isAbove(worst.currentA, limitA)
      ? [found(network, battery, worst, { limitA, stated: false, forMinutes: false }, energy)]
      : [];
  });
}

function found(
  network: Network,
  battery: BatteryPart,
  worst: WorstOf,
  { limitA, stated, forMinutes }: Pick<Values, "limitA" | "stated" | "forMinutes">,
  energy: Energy,
): Found<Values> {
  const charges = chargesIn(energy, battery);
  const longest = charges.reduce<(typeof charges)[number] | undefined>(
    (most, one) => (most && most.hoursAbove >= one.hoursAbove ? most : one),
    undefined,
  );
  return {
    subject: battery.name,
    at: atPart(battery, ...(stated ? ["maxChargeA"] : [])),
    ...(stated && !forMinutes ? {} : { severity: "info" }),
    values: {
      currentA: worst.currentA,
      estimate: estimateInWords(worst.estimate),
      limitA,
      stated,
      forMinutes,
      scenario: occasionInWords(network, worst),
      chemistry: battery.chemistry,
      perAh: usualChargeRates.greatestPerAh[battery.chemistry],
      source: sourceInWords(usualChargeRates.source),
      ...(longest && {
        inPeriod: { as: "scenario", period: longest.period.name, hours: longest.hoursAbove },
      }),
    },
  };
}

/** The charging of its bank in each period that is judged and charges it. */
function chargesIn(energy: Energy, { record }: BatteryPart) {
  return energy.flatMap(({ period, banks }) =>
    banks
      .filter(
        ({ batteries, sources }) => sources.length > 0 && batteries.some((one) => one.record === record),
      )
      .map((bank) => ({ period, bank, ...chargeInPeriod(bank) })),
  );
}

/** In the first period in which an alternator and the other sources offer its bank more than is usual. */
function whileDriving(battery: BatteryPart, energy: Energy): Found<Values>[] {
  const [first] = chargesIn(energy, battery).filter(
    ({ bank, hoursAbove }) => hoursAbove > 0 && bank.sources.some(({ kind }) => kind === "engine"),
  );
  if (!first) return [];
  const { period, greatestA, limitA, hoursAbove } = first;
  return [inAPeriod(battery, { period, currentA: greatestA, limitA, as: "driving", hours: hoursAbove })];
}

/** Each bank of lead once, in the first period in which it is not always full and its sources never offer the least usual rate. */
function tooSlow({ energy }: JudgedPlan): Found<Values>[] {
  const slow = new Map<number, Found<Values>>();
  for (const { period, banks } of energy)
    for (const bank of banks) {
      const [battery] = bank.batteries;
      const neverFull = bank.months.filter(isNeverFull).map(({ month }) => monthNames[month]!);
      const isLead = bank.batteries.every(({ chemistry }) => chemistry !== "LiFePO4");
      if (!battery || !isLead || slow.has(battery.record) || neverFull.length === 0) continue;
      const { greatestA } = chargeInPeriod(bank);
      const firsts = bank.batteries.filter(({ index }) =>
        bank.hours.flows.bank.strings.some(([first]) => first === index),
      );
      const limitA = firsts.reduce(
        (sum, { chemistry, capacityAh }) => sum + usualChargeRates.leastPerAh[chemistry] * capacityAh,
        0,
      );
      if (greatestA <= 0 || greatestA >= limitA) continue;
      slow.set(
        battery.record,
        inAPeriod(battery, { period, currentA: greatestA, limitA, as: "too slow", hours: 0, neverFull }),
      );
    }
  return [...slow.values()];
}

function inAPeriod(
  battery: BatteryPart,
  {
    period,
    currentA,
    limitA,
    ...offer
  }: Pick<Values, "currentA" | "limitA"> & {
    readonly period: Energy[number]["period"];
  } & Pick<NonNullable<Values["inPeriod"]>, "as" | "hours" | "neverFull">,
): Found<Values> {
  const { chemistry } = battery;
  const rates = offer.as === "driving" ? usualChargeRates.greatestPerAh : usualChargeRates.leastPerAh;
  return {
    subject: battery.name,
    at: atPart(battery),
    severity: "info",
    values: {
      ...{ currentA, limitA, chemistry, perAh: rates[chemistry], estimate: "", scenario: "" },
      ...{ stated: false, forMinutes: false, source: sourceInWords(usualChargeRates.source) },
      inPeriod: { ...offer, period: period.name },
    },
    related: [{ at: { record: period.record, path: [] }, text: `In the period ${period.name}` }],
  };
}

/** Part indices of the batteries of banks whose positive side an alternator feeds with no charger between. */
function batteriesOnAlternators({ network, result: { topology } }: JudgedNetwork): ReadonlySet<number> {
  const alternators = network.parts.filter((part) => part.kind === "alternator");
  if (alternators.length === 0) return new Set();
  const { componentOf } = networkGraph(network);
  const fed = new Set(alternators.map(({ terminals }) => componentOf[terminals.positive]));
  const banks = topology.banks.filter(({ positives }) =>
    positives.some((pole) => fed.has(componentOf[pole])),
  );
  return new Set(banks.flatMap(({ batteries }) => batteries));
}

/** A battery of lead that cranks an engine, or that a DC-DC charger or a charging relay spares for it: it is kept nearly full. */
function isStarterBattery({ network }: JudgedNetwork, battery: BatteryPart): boolean {
  const { chemistry, terminals } = battery;
  if (chemistry === "LiFePO4") return false;
  if (isKeptFullByRelay(network, battery)) return true;
  const { componentOf } = networkGraph(network);
  const own = componentOf[terminals.positive];
  return network.parts.some((part) => {
    if (part.kind === "dcDcCharger") return componentOf[part.terminals.inputPositive] === own;
    return isStarterMotor(part) && componentOf[part.terminals.positive] === own;
  });
}
