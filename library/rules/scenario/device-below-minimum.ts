import { type DeviceVoltage, deviceVoltages, isBelow, type Lowest } from "../../analysis/device-voltage.ts";
import { estimatesOf } from "../../analysis/network/estimates.ts";
import { isAccepted } from "../../analysis/sizing.ts";
import { pathOfDevice } from "../../analysis/supply-path-drop.ts";
import { withoutLengthTo } from "../../analysis/unknown-lengths.ts";
import type { Estimate } from "../../model/estimate.ts";
import { isStarterMotor, sourceOfFigure } from "../../model/part-roles.ts";
import { cutOffVoltage } from "../../standards/device-practice.ts";
import { statedRating } from "../current-through.ts";
import type { ProposedFix, Related } from "../finding.ts";
import { lossesOn, relatedLosses, wayFixes } from "../fixes/way-fix.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork, type JudgedPlan } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatDistinctWithUnit, formatExact } from "../wording/format-number.ts";
import { atPart, partInWords, scenarioInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { otherLevers, wayOut } from "../wording/way-out.ts";

export const deviceBelowMinimum = defineRule<Values>({
  id: "scenario/device-below-minimum",
  title: "Device below its minimum voltage",
  formerTitles: ["Too little voltage at a device"],
  severity: "error",
  why: "A device below its minimum voltage does not start, cuts out, or restarts when another load comes on.",
  sources: [statedRating, cutOffVoltage.source],
  fixable: true,
  repairsWait: "for conductors",
  acceptable: true,
  restsOn: "voltages",
  // Needs the lowest voltage at each device in every scenario. A warning while a motor starts, and for a charger, which gives
  // less. Information at a start that no scenario of the plan states, if the internal resistance of a battery is not stated either.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      deviceVoltages(judged).flatMap((device): Found<Values>[] => {
        const { part, neededV, lasting, momentary } = device;
        const below = [lasting, momentary].filter(
          // A device that is connected the wrong way round is reported by network/unconnected.
          (lowest) => lowest !== undefined && lowest.voltageV >= 0 && isBelow(lowest.voltageV, neededV),
        ) as Lowest[];
        const [worst] = below;
        if (!worst) return [];
        const fixes = fixesFor(plan, device);
        const estimate = estimatesOf(judged.network).ofVoltage(worst.scenario, part.index);
        const values: Values = {
          device: partInWords(part),
          voltageV: worst.voltageV,
          estimate: estimateInWords(estimate),
          ...(withoutLengthTo(judged, part).length > 0 && { atMost: true as const }),
          neededV,
          needs: needs[part.kind],
          source: sourceOf(part),
          scenario: scenarioInWords(judged.network, worst.scenario),
          wayOut: wayOut(fixes, isStarterMotor(part) ? forAStarter : `${otherLevers}, or run less at once`),
        };
        return [
          {
            subject: part.name,
            at: atPart(part, needs[part.kind]),
            severity: isGuessedStart(judged, worst, estimate)
              ? "info"
              : worst === momentary || part.kind === "dcDcCharger"
                ? "warning"
                : "error",
            values,
            related: mostLost(judged, part, worst),
            fixes,
          },
        ];
      }),
    ),
  message({ device, voltageV, atMost, estimate, neededV, needs: property, source, scenario, wayOut: way }) {
    const [gets] = formatDistinctWithUnit(voltageV, neededV, "V");
    const from = source ? `, ${source}` : "";
    return `${atMost ? "At most" : "Only"} ${gets} ${scenario} at ${device}${estimate}, which needs ${formatExact(neededV)} V (${property}${from}): ${way}.`;
  },
});

/** No load of the plan can be left off for it, and it is made for the voltage of its engine. */
const forAStarter = "shorten its cables, or crank with a battery of more cranking current";

/** The voltage of a start falls with the resistance of the batteries. */
function isGuessedStart(
  { network }: JudgedNetwork,
  { scenario }: Lowest,
  estimate: Estimate | undefined,
): boolean {
  return network.scenarios[scenario]?.furtherStart === true && estimate?.internalResistance === true;
}

interface Values {
  readonly device: string;
  readonly voltageV: number;
  /** A length on the way is not known: the real voltage is lower. */
  readonly atMost?: true;
  readonly estimate: string;
  readonly neededV: number;
  readonly needs: Needs;
  /** The source of a minimum voltage that is not stated. */
  readonly source: string;
  readonly scenario: string;
  readonly wayOut: string;
}

type Needs = "minimumV" | "cutOffV" | "inputMinV";

const needs: Readonly<Record<DeviceVoltage["part"]["kind"], Needs>> = {
  load: "minimumV",
  inverter: "cutOffV",
  dcDcCharger: "inputMinV",
};

function sourceOf(part: DeviceVoltage["part"]): string {
  if (part.kind === "load") return "";
  const source = sourceOfFigure(part, needs[part.kind]);
  return source.authority === "stated in the plan" ? "" : sourceInWords(source);
}

/**
 * The fixes if a thicker supply path is enough in every scenario. If it only helps lasting scenarios, and a starting motor still
 * pulls the voltage down, the builder must decide.
 */
function fixesFor(plan: JudgedPlan, { part, lasting, momentary, neededV }: DeviceVoltage): ProposedFix[] {
  const on = {
    part: part.index,
    place: part.record,
    accepted: isAccepted(part, "scenario/device-below-minimum"),
  };
  const forAll = wayFixes(plan, { ...on, kinds: ["lasting voltage", "momentary voltage"] });
  const both = [lasting, momentary].every((lowest) => lowest && isBelow(lowest.voltageV, neededV));
  if (forAll.length > 0 || !both) return forAll;
  return wayFixes(plan, { ...on, kinds: ["lasting voltage"] }).map((fix) => ({ ...fix, kind: "suggestion" }));
}

function mostLost(judged: JudgedNetwork, part: DeviceVoltage["part"], lowest: Lowest): Related[] {
  const way = pathOfDevice(judged, part.index, lowest.scenario);
  return way ? relatedLosses(lossesOn(judged, way), part.record) : [];
}
