import { unknownSharesOf } from "../../analysis/network/unknown-shares.ts";
import type { SolvedScenario } from "../../analysis/network-result.ts";
import { withoutLengthTo } from "../../analysis/unknown-lengths.ts";
import type { Part } from "../../model/network.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { JudgedNetwork } from "../../rules/rule.ts";
import { withUnit } from "../../rules/wording/format-number.ts";
import { kindInWords, listInWords, summaryInWords } from "../../rules/wording/part-in-words.ts";
import { runsWithoutLength } from "../../rules/wording/unknown-length.ts";

/** A part's kind and ratings, as the plan states them: "AGM battery, 12 V, 110 Ah". */
export function ratingInWords(part: Part): string {
  const isBattery = part.kind === "battery";
  // The chemistry of a battery takes less room in front of its kind.
  const kind = isBattery ? `${part.chemistry} ${kindInWords(part)}` : kindInWords(part);
  const ratings = summaryInWords(part).slice(isBattery ? 1 : 0);
  // A panel that is called "fuse panel" does not need its kind repeated.
  return [...(part.name === kind ? [] : [kind]), ...ratings].join(", ");
}

/**
 * A part's voltage and current in a scenario: "13.2 V · gives 103 A"; "voltage not known: no length of feed" in place of one that needs a
 * length that the plan leaves out. Empty if neither was calculated.
 */
export function operatingWords(judged: JudgedNetwork, part: Part, solved: SolvedScenario): string {
  const { network } = judged;
  const { partV, partA, inputA, scenario } = solved;
  const voltageV = partV[part.index] ?? Number.NaN;
  const current = currentInWords(part, partA[part.index] ?? Number.NaN, inputA[part.index] ?? 0);
  const ofVoltage = Number.isFinite(voltageV) ? withoutLengthTo(judged, part) : [];
  const ofCurrent =
    current === ""
      ? []
      : unknownSharesOf(network).partSharesCurrentBy(network.scenarios[scenario]!, part.index);
  const known = [
    Number.isFinite(voltageV) && ofVoltage.length === 0 ? withUnit(voltageV, "V") : "",
    ofCurrent.length === 0 ? current : "",
  ];
  const unknown = [ofVoltage.length > 0 ? "voltage" : "", ofCurrent.length > 0 ? "current" : ""].filter(
    Boolean,
  );
  const runs = runsWithoutLength(network, [...ofVoltage, ...ofCurrent]);
  const lacks =
    unknown.length > 0 ? `${unknown.join(" and ")} not known: no length of ${listInWords(runs, 2)}` : "";
  return [lacks, ...known].filter(Boolean).join(" · ");
}

/** Below this, a figure is the solver's rounding, not a current. */
const leastCurrentA = 1e-6;

function currentInWords(part: Part, currentA: number, inputA: number): string {
  if (!Number.isFinite(currentA)) return "";
  const size = Math.abs(currentA) < leastCurrentA ? 0 : Math.abs(currentA);
  const amount = withUnit(size, "A");
  if (part.kind === "battery")
    return size === 0 ? amount : currentA < 0 ? `takes ${amount}` : `gives ${amount}`;
  const { role } = descriptorOf(part);
  switch (role) {
    case "converter":
      return size === 0 ? "off" : `takes ${withUnit(Math.max(inputA, 0), "A")}, gives ${amount}`;
    case "source":
      return `gives ${amount}`;
    case "consumer":
      // The line of a load shows its current.
      return size === 0 ? "off" : part.kind === "load" ? "" : `takes ${amount}`;
    case "passes current on":
    case "metal":
      return `passes ${amount}`;
    default:
      return role satisfies never;
  }
}
