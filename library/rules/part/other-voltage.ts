import {
  type HighestVoltage,
  highestVoltages,
  type ReachedVoltage,
} from "../../analysis/highest-voltages.ts";
import { portsOf } from "../../analysis/network/topology/ports.ts";
import type { Network } from "../../model/network.ts";
import { isStarterMotor, maximumVoltageOf, minimumVoltageOf } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { CircuitRun } from "../../model/run.ts";
import { chargingVoltage } from "../../standards/charging-practice.ts";
import { worksFromShare } from "../../standards/machine-practice.ts";
import { statedRating } from "../current-through.ts";
import { atProperty, defineRule, type Found, inNetwork, perRun } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, formatExact, withUnit } from "../wording/format-number.ts";
import { atPart, listInWords, partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const partOtherVoltage = defineRule<Values>({
  id: "part/other-voltage",
  title: "Voltage too high for a device",
  formerTitles: ["Device that may be made for less voltage"],
  severity: "error",
  why: "A device burns out above the voltage on its nameplate: one for 12 V on 24 V as it is switched on, others while the bank is charged.",
  sources: [statedRating, chargingVoltage.source, worksFromShare.source],
  fixable: false,
  acceptable: true,
  // Needs the maximum voltage of a device, and the highest one that its batteries, chargers and modules give. A warning if that is the
  // usual charging voltage. Without a stated maximum, a minimum far below the nominal voltage shows that a device may be made for
  // less: information. Of inverters, whose cut-off voltages are alike, inverter/other-voltage then makes an error.
  check: (plan) => [
    ...perRun(plan, ({ circuit }) => {
      if (circuit.inNetwork || circuit.word !== "circuit") return [];
      const { minimumV, maximumV, systemV } = circuit;
      if (maximumV !== undefined) {
        const found = tooHigh("maximumV", maximumV, alone(circuit));
        return found ? [{ ...found, at: atProperty(circuit, "maximumV") }] : [];
      }
      if (minimumV === undefined || !isFarBelow(minimumV, systemV)) return [];
      return [{ ...mayBeTooHigh("minimumV", minimumV, systemV), at: atProperty(circuit, "minimumV") }];
    }),
    ...inNetwork(plan, (judged) => {
      const { network } = judged;
      return network.parts.flatMap((part): Found<Values>[] => {
        const { worksFrom, worksUpTo } = descriptorOf(part);
        const port = portsOf(part).find(({ does }) => does === "draws");
        if (!port || worksFrom === undefined || worksUpTo === undefined) return [];
        const [minimumV, maximumV] = [minimumVoltageOf(part), maximumVoltageOf(part)];
        const isMinimumStated = minimumV !== undefined && !part.taken?.includes(worksFrom);
        if (maximumV === undefined && (!isMinimumStated || part.kind === "inverter")) return [];
        const highest = highestVoltages(judged)(port);
        if (!highest) return [];
        if (maximumV !== undefined) {
          // Inverters, engines and converters are bought for the voltage of their bank.
          const mayConvert = part.kind === "load" && !isStarterMotor(part);
          const found = tooHigh(worksUpTo, maximumV, highest, { network, mayConvert });
          return found ? [{ ...found, subject: part.name, at: atPart(part, worksUpTo) }] : [];
        }
        const { nominalV } = highest;
        if (minimumV === undefined || nominalV === undefined || !isFarBelow(minimumV, nominalV)) return [];
        return [
          {
            ...mayBeTooHigh(worksFrom, minimumV, nominalV),
            subject: part.name,
            at: atPart(part, worksFrom),
          },
        ];
      });
    }),
  ],
  message(values) {
    if (values.verdict === "may be too high") {
      const { property, minimumV, nominalV, source } = values;
      return `Works from ${formatExact(minimumV)} V on (${property}), less than half of the ${withUnit(nominalV, "V")} here; a device for ${withUnit(nominalV, "V")} rarely does (${source}): see on its nameplate that it is made for ${withUnit(nominalV, "V")}, and state its maximum (${values.states}).`;
    }
    const { verdict, property, maximumV, voltageV, from, mayConvert, chargeV } = values;
    const [withstood, reached] = formatDistinctWithUnit(maximumV, voltageV, "V");
    const withstands = `Withstands ${withstood} (${property})`;
    if (verdict === "nominal")
      return `${withstands}, and its circuit has ${reached}: use one made for ${reached}${mayConvert ? ", or feed it through a converter" : ""}.`;
    const others = [
      ...(mayConvert ? [", or feed it through a converter"] : []),
      ...(chargeV === undefined ? [] : [`, or charge with ${withUnit(chargeV, "V")} at most`]),
    ];
    return `${withstands}, and up to ${reached} reach it ${from}: use one for ${reached} or more${others.join("")}.`;
  },
});

type Values = MayBeTooHigh | TooHigh;

interface MayBeTooHigh {
  readonly verdict: "may be too high";
  readonly property: string;
  readonly minimumV: number;
  readonly nominalV: number;
  /** The property that states the maximum. */
  readonly states: string;
  readonly source: string;
}

interface TooHigh {
  readonly verdict: "nominal" | "reached";
  readonly property: string;
  readonly maximumV: number;
  readonly voltageV: number;
  /** "from the shore charger mains" */
  readonly from: string;
  /** A converter for its current is sensible. */
  readonly mayConvert: boolean;
  /** The highest charging voltage that the device withstands, V; absent if its batteries need more. */
  readonly chargeV?: number;
}

function mayBeTooHigh(property: string, minimumV: number, nominalV: number) {
  const states = property === "inputMinV" ? "inputMaxV" : "maximumV";
  const source = sourceInWords(worksFromShare.source);
  const values: MayBeTooHigh = { verdict: "may be too high", property, minimumV, nominalV, states, source };
  return { severity: "info", values } as const;
}

function isFarBelow(minimumV: number, nominalV: number): boolean {
  return exceeds(worksFromShare.least * nominalV, minimumV);
}

function tooHigh(
  property: string,
  maximumV: number,
  { nominalV, stated, usual, batteries }: HighestVoltage,
  { network, mayConvert = true }: { readonly network?: Network; readonly mayConvert?: boolean } = {},
): Pick<Found<Values>, "severity" | "values" | "related" | "isNeverAccepted"> | undefined {
  if (nominalV !== undefined && exceeds(nominalV, maximumV))
    return {
      values: { verdict: "nominal", property, maximumV, voltageV: nominalV, from: "", mayConvert },
      // A reason for the information, that its nameplate has a wide range, contradicts the maximum that the plan states.
      isNeverAccepted: true,
    };
  const isStated = stated !== undefined && exceeds(stated.voltageV, maximumV);
  const reached = isStated ? stated : usual;
  if (!reached || !exceeds(reached.voltageV, maximumV)) return undefined;
  const from = `${whence(reached, network)}${isStated ? "" : estimated}`;
  const mayChargeLess = reached.scenario === undefined && maximumV >= leastChargingV(batteries);
  const chargeV = mayChargeLess ? { chargeV: maximumV } : {};
  return {
    ...(!isStated && { severity: "warning" }),
    values: {
      verdict: "reached",
      property,
      maximumV,
      voltageV: reached.voltageV,
      from,
      mayConvert,
      ...chargeV,
    },
    related: reached.sources.map((source) => relatedPart(source)),
  };
}

const estimated = ` (estimated: the charging voltage is not stated; ${sourceInWords(chargingVoltage.source)})`;

function whence({ sources, scenario }: ReachedVoltage, network: Network | undefined): string {
  if (network && scenario !== undefined) return scenarioInWords(network, scenario);
  return sources.length > 0 ? `from ${listInWords(sources.map(partInWords))}` : "while its bank is charged";
}

/** The least voltage that charges these batteries fully, V. */
function leastChargingV(batteries: HighestVoltage["batteries"]): number {
  if (batteries.length === 0) return Number.POSITIVE_INFINITY;
  return batteries.reduce(
    (sumV, { chemistry, systemV }) => sumV + (chargingVoltage.absorptionFor12V[chemistry][0] * systemV) / 12,
    0,
  );
}

/** Of a circuit outside of a network only its nominal voltage is known; a bank of 12, 24, 36 or 48 V is charged with more. */
function alone({ systemV }: CircuitRun): HighestVoltage {
  const ofBank = systemV % 12 === 0;
  const usual = ofBank ? { voltageV: (chargingVoltage.for12V * systemV) / 12, sources: [] } : undefined;
  return { nominalV: systemV, stated: undefined, usual, batteries: [] };
}
