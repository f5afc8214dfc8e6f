import { isEstimated, sourceForMaxFault } from "../../library/analysis/network/faults/fault-network.ts";
import { isShareUnknown } from "../../library/analysis/network/unknown-shares.ts";
import type { PartWorst, WorstOf } from "../../library/analysis/network-result.ts";
import { withoutLengthTo } from "../../library/analysis/unknown-lengths.ts";
import type { BatteryPart, Part } from "../../library/model/network.ts";
import {
  currentLimitsOf,
  givesEnergy,
  isConsumer,
  isDevice,
  minimumVoltageOf,
  type PartCurrentLimit,
  passesCurrentOn,
  sourceOfFigure,
} from "../../library/model/part-roles.ts";
import { descriptorOf } from "../../library/model/parts/index.ts";
import { statedInPlan } from "../../library/model/stated-in-plan.ts";
import type { JudgedNetwork, JudgedPlan } from "../../library/rules/rule.ts";
import { formatDistinct, formatRounded, withUnit } from "../../library/rules/wording/format-number.ts";
import {
  kindInWords,
  occasionInWords,
  phraseInWords,
  scenarioInWords,
  summaryInWords,
} from "../../library/rules/wording/part-in-words.ts";
import { sourceInWords } from "../../library/rules/wording/source-in-words.ts";
import { notKnown } from "../../library/rules/wording/unknown-length.ts";
import { leastCurrentA, voltageAtPart } from "./conductor-table.ts";
import { deviceFaultRows } from "./fault-rows.ts";
import { limitRow, marginInWords } from "./limit-row.ts";
import { markdownWords } from "./plain-words.ts";
import { type ScenarioColumn, scenarioTable, type Weight } from "./scenario-table.ts";
import { wayRow } from "./way-row.ts";

/**
 * A part's output, input or through current in the worst scenario, each against its limit, then all scenarios, and the source of
 * its numbers. A value that cannot be judged, because the plan states no limit, is reported as such. For a fuse
 * or breaker also the fault currents through it.
 */
export function partSummary(plan: JudgedPlan, judged: JudgedNetwork, part: Part): string {
  return [
    [kindInWords(part), ...summaryInWords(part)].join(", "),
    limitRows(plan, judged, part).join("\n"),
    scenarioTable(judged, columnsOf(judged, part), weightOf(judged, part)),
    takenRows(part).join("\n"),
    statedSource(part),
  ]
    .filter((block) => block !== "")
    .join("\n\n");
}

/** The lowest voltage at a device, against its minimum. */
export function lowestVoltageRow({ network, result }: JudgedNetwork, index: number): string[] {
  const part = network.parts[index] as Part;
  const lowest = result.parts[index]?.lowestV;
  const needed = leastV(part);
  if (!lowest) return needed ? ["- Lowest voltage: not judged; no scenario gives it"] : [];
  const scenario = markdownWords(scenarioInWords(network, lowest.scenario));
  if (withoutLengthTo({ network, result }, part).length > 0) {
    const isEnough = !needed || lowest.voltageV >= needed.volts;
    const verdict = isEnough ? "not judged: a length on the way is not known" : scenario;
    const needs = needed ? `; ${needed.what} ${withUnit(needed.volts, "V")}` : "";
    return [
      limitRow(
        "Lowest voltage",
        `at most ${withUnit(lowest.voltageV, "V")}`,
        `${verdict}${needs}`,
        "",
        needed?.source ?? "",
      ),
    ];
  }
  if (!needed) return [limitRow("Lowest voltage", withUnit(lowest.voltageV, "V"), scenario, "", "")];
  const [is, least] = formatDistinct(lowest.voltageV, needed.volts);
  return [
    limitRow(
      "Lowest voltage",
      `${is} V`,
      `${scenario}; ${needed.what} ${least} V`,
      marginInWords(lowest.voltageV - needed.volts, "V"),
      needed.source,
    ),
  ];
}

function leastV(
  part: Part,
): { readonly volts: number; readonly what: string; readonly source: string } | undefined {
  const volts = isConsumer(part) ? minimumVoltageOf(part) : undefined;
  if (volts === undefined) return undefined;
  return part.kind === "inverter"
    ? { volts, what: "cuts off at", source: sourceInWords(sourceOfFigure(part, "cutOffV")) }
    : { volts, what: "needs", source: "stated in the plan" };
}

function limitRows(plan: JudgedPlan, judged: JudgedNetwork, part: Part): string[] {
  const worst = judged.result.parts[part.index];
  if (!worst) return [];
  const isBattery = part.kind === "battery";
  const limits = currentLimitsOf(part);
  const most = (what: string, is: WorstOf | undefined, current: PartCurrentLimit["current"]) =>
    mostRow(
      judged,
      what,
      is,
      limitIn(
        part,
        limits.find((limit) => limit.current === current),
      ),
    );
  if (passesCurrentOn(part))
    return [
      most("Passes on", worst.feeds ?? worst.draws, "carries"),
      ...(isDevice(part) ? deviceFaultRows(judged, part) : []),
    ];
  const draws = isBattery || descriptorOf(part).ports.some(({ does }) => does === "draws");
  return [
    ...(givesEnergy(part) ? [most("Gives", worst.feeds, "gives")] : []),
    ...(draws ? [most("Takes", worst.draws, "takes")] : []),
    ...(isBattery ? [deadShortRow(part)] : []),
    ...(isConsumer(part) ? [...surgeRow(judged, worst), ...lowestVoltageRow(judged, part.index)] : []),
    ...wayRow(plan, part.index),
  ];
}

function limitIn(part: Part, limit: PartCurrentLimit | undefined): Limit {
  if (!limit) return {};
  const { property, lastingA: limitA, percentForHours, words } = limit;
  const noun = descriptorOf(part).properties[property]?.words;
  if (percentForHours === undefined) return { limitA, is: words, unstated: `its ${noun} is not stated` };
  const source = sourceInWords(sourceOfFigure(part, "continuousPercent"));
  return { limitA, is: `${words}, ${formatRounded(percentForHours)} % of its rating,`, source };
}

interface Limit {
  /** Undefined: no limit to compare with; then `unstated` gives the reason, if there is one. */
  readonly limitA?: number | undefined;
  /** The kind of limit, in front of the number. */
  readonly is?: string;
  readonly unstated?: string;
  readonly source?: string;
}

function mostRow(
  { network }: JudgedNetwork,
  what: string,
  worst: WorstOf | undefined,
  { limitA, is = "", unstated = "", source = "stated in the plan" }: Limit,
): string {
  const notJudged = unstated === "" ? "" : `${unstated}, so not judged`;
  if (!worst || worst.currentA < leastCurrentA)
    return limitRow(what, "no current in any solved scenario", "", "", "");
  const scenario = markdownWords(occasionInWords(network, worst));
  if (limitA === undefined)
    return limitRow(
      what,
      withUnit(worst.currentA, "A"),
      [scenario, notJudged].filter(Boolean).join("; "),
      "",
      "",
    );
  const [current, limit] = formatDistinct(worst.currentA, limitA);
  return limitRow(
    what,
    `${current} A`,
    `${scenario}; ${is} ${limit} A`,
    marginInWords(limitA - worst.currentA, "A"),
    source,
  );
}

function surgeRow({ network }: JudgedNetwork, { surge, draws }: PartWorst): string[] {
  if (!surge || surge.currentA <= (draws?.currentA ?? 0)) return [];
  return [
    limitRow(
      "For a moment",
      withUnit(surge.currentA, "A"),
      markdownWords(occasionInWords(network, surge)),
      "",
      "",
    ),
  ];
}

/** Its own share only: other sources of a fault are listed at each protective device. */
function deadShortRow(part: BatteryPart): string {
  const { voltageV, ohm } = sourceForMaxFault(part);
  const sources =
    part.shortCircuitA === undefined ? [part.internal.source, part.fullVSource] : [statedInPlan(undefined)];
  return limitRow(
    "Dead short at its terminals",
    `up to ${withUnit(voltageV / ohm, "A")}`,
    isEstimated(part) ? "its internal resistance is not stated, the lowest usual one is taken" : "",
    "",
    [...new Set(sources.map(sourceInWords))].join("; "),
  );
}

function columnsOf(judged: JudgedNetwork, part: Part): ScenarioColumn[] {
  const index = part.index;
  const voltage: ScenarioColumn = {
    title: "Voltage",
    cell: ({ partV }) => voltageAtPart(judged, part, partV[index]),
  };
  const current = (cell: (currentA: number) => string): ScenarioColumn => ({
    title: "Current",
    cell: ({ partA, scenario }) =>
      isShareUnknown(judged.network, scenario, index) ? notKnown : cell(partA[index] ?? 0),
  });
  const input: ScenarioColumn = {
    title: "At its input",
    cell: ({ inputA }) => withUnit(inputA[index] ?? 0, "A"),
  };
  if (part.kind === "battery") return [voltage, current(givenOrTaken)];
  const { role } = descriptorOf(part);
  switch (role) {
    case "converter":
      return [voltage, current((is) => withUnit(Math.max(is, 0), "A")), input];
    case "source":
    case "consumer":
      return [voltage, current((is) => withUnit(Math.abs(is), "A"))];
    case "passes current on":
    case "metal":
      return [current((is) => withUnit(Math.abs(is), "A"))];
    default:
      return role satisfies never;
  }
}

function givenOrTaken(currentA: number): string {
  if (Math.abs(currentA) < leastCurrentA) return withUnit(0, "A");
  return currentA < 0 ? `takes ${withUnit(-currentA, "A")}` : `gives ${withUnit(currentA, "A")}`;
}

/** The worst is the lowest voltage for devices, the maximum lasting current for everything else. */
function weightOf({ network }: JudgedNetwork, part: Part): Weight {
  const { index } = part;
  if (isConsumer(part))
    return ({ partV, partA }) => (partA[index] === 0 ? undefined : [-(partV[index] ?? Number.NaN)]);
  return ({ scenario, partA, partV, inputA }) => {
    if (network.scenarios[scenario]?.momentary) return undefined;
    const currentA = Math.max(Math.abs(partA[index] ?? 0), inputA[index] ?? 0);
    // An emptier bank gives the same current at a lower voltage.
    return part.kind === "battery" ? [currentA, -(partV[index] ?? Number.NaN)] : [currentA];
  };
}

/** Values assumed because the plan does not state them, with their source. */
function takenRows(part: Part): string[] {
  if (part.kind === "battery") {
    const { stated, source } = part.internal;
    return stated
      ? []
      : [limitRow("Internal resistance", resistanceRange(part), "", "", sourceInWords(source))];
  }
  const figures = part as unknown as Readonly<Record<string, number>>;
  const { properties, worksFrom } = descriptorOf(part);
  return (part.taken ?? []).flatMap((name) => {
    const { words = "", unit = "", source } = properties[name]!;
    // The lowest voltage of a consumer is in a row of its own.
    if (source === undefined || (isConsumer(part) && name === worksFrom)) return [];
    const value = phraseInWords([{ value: figures[name]!, unit, rounded: true }]);
    return [limitRow(words.charAt(0).toUpperCase() + words.slice(1), value, "", "", sourceInWords(source))];
  });
}

function resistanceRange({ internal: { lowOhm, highOhm } }: BatteryPart): string {
  return `${formatRounded(lowOhm * 1000)} to ${withUnit(highOhm * 1000, "mΩ")}`;
}

function statedSource(part: Part): string {
  const { source } = part;
  if (source !== undefined) return `_Its numbers: ${markdownWords(source)}._`;
  return descriptorOf(part).hasDataSheet ? "_The plan states no source for its numbers._" : "";
}
