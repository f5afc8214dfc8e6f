import { isKeptFullByRelay } from "../../analysis/network/topology/batteries-beside.ts";
import { networkGraph } from "../../analysis/network/topology/network-graph.ts";
import type { WorstOf } from "../../analysis/network-result.ts";
import type { BatteryPart, Network } from "../../model/network.ts";
import { isStarterMotor } from "../../model/part-roles.ts";
import { usualChargeRates } from "../../standards/usual-charge-rates.ts";
import { isAbove, statedRating } from "../current-through.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatDistinctWithUnit, formatRounded } from "../wording/format-number.ts";
import { atPart, occasionInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const chargeCurrent = defineRule<Values>({
  id: "battery/charge-current",
  title: "Charge current limit exceeded",
  formerTitles: ["Charged with more than the battery takes"],
  severity: "warning",
  why: "A battery charged too fast gases, heats up and ages; one with its own protection cuts out while the chargers still deliver.",
  sources: [statedRating, usualChargeRates.source],
  fixable: false,
  acceptable: true,
  restsOn: "voltages",
  // Needs the current into each battery in every scenario. Information if only the usual rate is exceeded.
  check: (plan) => inNetwork(plan, check),
  message({ currentA, estimate, limitA, stated, forMinutes, scenario, chemistry, perAh, source }) {
    const [takes, may] = formatDistinctWithUnit(currentA, limitA, "A");
    if (forMinutes)
      return `May take ${takes} ${scenario}${estimate}, its limit is ${may} (maxChargeA). A starter battery is nearly full and takes so much only for minutes (common practice, no source): compare the limit with the alternator's regulator.`;
    return stated
      ? `Takes ${takes} ${scenario}${estimate}, its limit is ${may} (maxChargeA): set the chargers to give less, or add a battery in parallel.`
      : `Takes ${takes} ${scenario}${estimate}; ${chemistry} of this capacity usually takes up to ${may}, ${formatRounded(perAh)} A per Ah (${source}). State maxChargeA from its data sheet.`;
  },
});

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
}

function check(judged: JudgedNetwork): Found<Values>[] {
  const { network, result } = judged;
  const batteries = network.parts.filter((part) => part.kind === "battery");
  const onAnAlternator = batteriesOnAlternators(judged);
  return batteries.flatMap((battery) => {
    const worst = result.parts[battery.index]?.draws;
    if (!worst) return [];
    if (battery.maxChargeA !== undefined) {
      if (!isAbove(worst.currentA, battery.maxChargeA)) return [];
      const forMinutes = isStarterBattery(judged, battery) && onAnAlternator.has(battery.index);
      return [found(network, battery, worst, { limitA: battery.maxChargeA, stated: true, forMinutes })];
    }
    // An alternator holds a voltage, and a full starter battery takes little of its possible current.
    if (onAnAlternator.has(battery.index)) return [];
    const limitA = usualChargeRates.greatestPerAh[battery.chemistry] * battery.capacityAh;
    return isAbove(worst.currentA, limitA)
      ? [found(network, battery, worst, { limitA, stated: false, forMinutes: false })]
      : [];
  });
}

function found(
  network: Network,
  battery: BatteryPart,
  worst: WorstOf,
  { limitA, stated, forMinutes }: Pick<Values, "limitA" | "stated" | "forMinutes">,
): Found<Values> {
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
    },
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
