import { isEstimated, sourceForMaxFault } from "../../library/analysis/network/faults/fault-network.ts";
import type { PartWorst, WorstOf } from "../../library/analysis/network-result.ts";
import type { BatteryPart, DcDcChargerPart, LoadPart, Part } from "../../library/model/network.ts";
import { isConsumer, partTraits } from "../../library/model/part-roles.ts";
import { statedInPlan } from "../../library/model/stated-in-plan.ts";
import type { JudgedNetwork, JudgedPlan } from "../../library/rules/rule.ts";
import {
  formatDistinct,
  formatExact,
  formatRounded,
  withUnit,
} from "../../library/rules/wording/format-number.ts";
import { kindInWords, scenarioInWords } from "../../library/rules/wording/part-in-words.ts";
import { sourceInWords } from "../../library/rules/wording/source-in-words.ts";
import type { Citation } from "../../library/standards/citation.ts";
import { leastCurrentA, voltageInWords } from "./conductor-table.ts";
import { limitRow, marginInWords } from "./limit-row.ts";
import { markdownWords } from "./plain-words.ts";
import { type ScenarioColumn, scenarioTable, type Weight } from "./scenario-table.ts";
import { wayRow } from "./way-row.ts";

/**
 * A part's output, input or through current in the worst scenario, each against its limit, then all scenarios, and the source of
 * its numbers. A value that cannot be judged, because the plan states no limit, is reported as such.
 */
export function partSummary(plan: JudgedPlan, judged: JudgedNetwork, part: Part): string {
  return [
    `${kindInWords(part)}${dataInWords(part)}`,
    limitRows(plan, judged, part).join("\n"),
    scenarioTable(judged, columnsOf(part), weightOf(judged, part)),
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
  if (!isConsumer(part)) return undefined;
  if (part.kind === "inverter")
    return { volts: part.cutOffV, what: "cuts off at", source: sourceInWords(part.cutOffVSource) };
  return part.minimumV === undefined
    ? undefined
    : { volts: part.minimumV, what: "needs", source: "stated in the plan" };
}

/** The data that distinguish parts of one kind, as the plan gives them. */
function dataInWords(part: Part): string {
  const data = dataOf(part);
  return data.map((one) => `, ${one}`).join("");
}

function dataOf(part: Part): string[] {
  switch (part.kind) {
    case "battery":
      return [part.chemistry, `${formatExact(part.nominalV)} V`, `${formatExact(part.capacityAh)} Ah`];
    case "inverter":
      return [`${formatExact(part.continuousW)} W`];
    case "dcDcCharger":
    case "shoreCharger":
    case "solarController":
      return [`${formatExact(part.outputA)} A at ${formatExact(part.outputV)} V`];
    case "alternator":
      return [`${formatExact(part.ratedA)} A at ${formatExact(part.outputV)} V`];
    case "solarArray":
      return [
        `${part.series * part.parallel} × ${withUnit(part.maxPowerV * part.maxPowerA, "W")}`,
        `${part.series} in series, ${part.parallel} in parallel`,
      ];
    case "load":
      return [drawInWords(part)];
    case "fusePanel":
      return [`${part.positions} positions`];
    case "busBar":
    case "disconnect":
    case "shunt":
    case "chassis":
    case "part":
      return [];
  }
}

function drawInWords({ draws }: LoadPart): string {
  switch (draws.as) {
    case "current":
      return `${formatExact(draws.currentA)} A`;
    case "power":
      return `${formatExact(draws.powerW)} W at any voltage`;
    case "resistance":
      return withUnit(draws.ohm, "Ω");
    case "motor":
      return `${formatExact(draws.runningA)} A running, ${formatExact(draws.startingA)} A starting`;
  }
}

function limitRows(plan: JudgedPlan, judged: JudgedNetwork, part: Part): string[] {
  const worst = judged.result.parts[part.index];
  if (!worst) return [];
  const most = (what: string, is: WorstOf | undefined, limit: Limit) => mostRow(judged, what, is, limit);
  const feeds = (limit: Limit) => most("Gives", worst.feeds, limit);
  const draws = (limit: Limit) => most("Takes", worst.draws, limit);
  const passes = (ratedA: number | undefined) =>
    most("Passes on", worst.feeds ?? worst.draws, {
      limitA: ratedA,
      is: "rated",
      unstated: "its rating is not stated",
    });
  switch (part.kind) {
    case "battery":
      return [
        feeds({ limitA: part.maxDischargeA, is: "may give", unstated: "its discharge limit is not stated" }),
        draws({ limitA: part.maxChargeA, is: "may take", unstated: "its charge limit is not stated" }),
        deadShortRow(part),
      ];
    case "inverter":
      return [
        draws({}),
        ...surgeRow(judged, worst),
        ...lowestVoltageRow(judged, part.index),
        ...wayRow(plan, part.index),
      ];
    case "dcDcCharger":
      return [
        feeds({ limitA: part.outputA, is: "rated" }),
        draws({ limitA: part.inputMaxA, is: "may take", unstated: "its input limit is not stated" }),
        ...wayRow(plan, part.index),
      ];
    case "solarController":
      return [feeds({ limitA: part.outputA, is: "rated" }), draws({})];
    case "shoreCharger":
      return [feeds({ limitA: part.outputA, is: "rated" })];
    case "alternator":
      return [
        feeds({
          limitA: (part.ratedA * part.continuousPercent) / 100,
          is: `may give continuously, ${formatRounded(part.continuousPercent)} % of its rating,`,
          source: sourceInWords(part.continuousSource),
        }),
      ];
    case "solarArray":
      return [feeds({})];
    case "load":
      return [
        draws({}),
        ...surgeRow(judged, worst),
        ...lowestVoltageRow(judged, part.index),
        ...wayRow(plan, part.index),
      ];
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "shunt":
    case "part":
      return [passes(part.ratedA)];
    case "chassis":
      return [most("Passes on", worst.feeds ?? worst.draws, {})];
  }
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
  const scenario = markdownWords(scenarioInWords(network, worst.scenario));
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
      markdownWords(scenarioInWords(network, surge.scenario)),
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

function columnsOf(part: Part): ScenarioColumn[] {
  const index = part.index;
  const voltage: ScenarioColumn = { title: "Voltage", cell: ({ partV }) => voltageInWords(partV[index]) };
  const current = (cell: (currentA: number) => string): ScenarioColumn => ({
    title: "Current",
    cell: ({ partA }) => cell(partA[index] ?? 0),
  });
  const input: ScenarioColumn = {
    title: "At its input",
    cell: ({ inputA }) => withUnit(inputA[index] ?? 0, "A"),
  };
  switch (part.kind) {
    case "battery":
      return [voltage, current(givenOrTaken)];
    case "dcDcCharger":
    case "solarController":
      return [voltage, current((is) => withUnit(Math.max(is, 0), "A")), input];
    case "load":
    case "inverter":
    case "alternator":
    case "shoreCharger":
    case "solarArray":
      return [voltage, current((is) => withUnit(Math.abs(is), "A"))];
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "shunt":
    case "chassis":
    case "part":
      return [current((is) => withUnit(Math.abs(is), "A"))];
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

/** Values assumed because the plan does not state them, or perhaps not the plan's own: with their source. */
function takenRows(part: Part): string[] {
  const taken = (what: string, is: string, source: Citation) =>
    source.authority === "stated in the plan" ? [] : [limitRow(what, is, "", "", sourceInWords(source))];
  switch (part.kind) {
    case "battery":
      return part.internal.stated
        ? []
        : taken("Internal resistance", resistanceRange(part), part.internal.source);
    case "inverter":
    case "solarController":
      return taken("Efficiency", withUnit(part.efficiencyPercent, "%"), part.efficiencySource);
    case "dcDcCharger":
      return [
        ...taken("Efficiency", withUnit(part.efficiencyPercent, "%"), part.efficiencySource),
        ...inputMinimum(part),
      ];
    case "alternator":
    case "shoreCharger":
    case "solarArray":
    case "load":
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "shunt":
    case "chassis":
    case "part":
      return [];
  }
}

function inputMinimum({ inputMinV, inputMinVSource }: DcDcChargerPart): string[] {
  return inputMinVSource.authority === "stated in the plan"
    ? []
    : [limitRow("Full output from", withUnit(inputMinV, "V"), "", "", sourceInWords(inputMinVSource))];
}

function resistanceRange({ internal: { lowOhm, highOhm } }: BatteryPart): string {
  return `${formatRounded(lowOhm * 1000)} to ${withUnit(highOhm * 1000, "mΩ")}`;
}

function statedSource({ source, kind }: Part): string {
  if (source !== undefined) return `_Its numbers: ${markdownWords(source)}._`;
  return partTraits[kind].hasDataSheet ? "_The plan states no source for its numbers._" : "";
}
