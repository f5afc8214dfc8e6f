import { isShareUnknown, unknownSharesOf } from "../../library/analysis/network/unknown-shares.ts";
import type { SolvedScenario } from "../../library/analysis/network-result.ts";
import type { Part } from "../../library/model/network.ts";
import { givesEnergy, isConsumer, passesCurrentOn } from "../../library/model/part-roles.ts";
import type { JudgedNetwork, JudgedPlan } from "../../library/rules/rule.ts";
import { formatDistinct, formatRounded, withUnit } from "../../library/rules/wording/format-number.ts";
import { conductorInWords, listInWords, partInWords } from "../../library/rules/wording/part-in-words.ts";
import { notKnown } from "../../library/rules/wording/unknown-length.ts";
import { leastCurrentA, voltageAtPart } from "./conductor-table.ts";
import { several } from "./counts.ts";
import { markdownWords } from "./plain-words.ts";
import { whyUnsolved } from "./scenario-table.ts";

/**
 * The devices on in a scenario, whether it was solved and how exactly, the conductor nearest to its ampacity, and each source's
 * output and each device's voltage. Without an operating point, the devices that pull the voltage down.
 */
export function scenarioSummary(plan: JudgedPlan, judged: JudgedNetwork, index: number): string {
  const { network, result } = judged;
  const solved = result.scenarios.find(({ scenario }) => scenario === index);
  const on = `On: ${listed(network.parts.filter((part) => isDevice(part) && network.scenarios[index]?.on[part.index])) || "no devices"}.`;
  const moment = network.scenarios[index]?.momentary
    ? "A motor is just starting: these currents count for voltages, not for heat."
    : "";
  if (!solved) return ["not solved", on].join("\n\n");
  if (solved.state === "unsolved") {
    const why = whyUnsolved(network, solved);
    return ["**not solved**", `${why.charAt(0).toUpperCase()}${why.slice(1)}`, on].join("\n\n");
  }
  return [
    `solved; at each node the currents sum to 0 within ${exponent(solved.residualA)} A, where the greatest is ${withUnit(solved.largestA, "A")}`,
    moment,
    on,
    hardestWorked(plan, judged, solved),
    deviceTable(judged, solved),
  ]
    .filter((block) => block !== "")
    .join("\n\n");
}

/** A number far below anything measurable: only its magnitude matters. */
function exponent(value: number): string {
  return value === 0 ? "0" : value >= 0.001 ? formatRounded(value) : value.toExponential(0);
}

function listed(parts: readonly Part[]): string {
  return markdownWords(listInWords(parts.map(partInWords), 8));
}

function isDevice(part: Part): boolean {
  return !passesCurrentOn(part);
}

function hardestWorked({ circuits }: JudgedPlan, { network }: JudgedNetwork, solved: SolvedScenario): string {
  const { atMost, sharesCurrentBy } = unknownSharesOf(network);
  const { conductorA } = atMost(solved);
  const ampacities = new Map(
    circuits.map(({ circuit, result }) => [circuit.record, result.ampacity] as const),
  );
  let hardest: { readonly words: string; readonly share: number } | undefined;
  for (const [index, conductor] of network.conductors.entries()) {
    const ampacity = ampacities.get(conductor.record);
    if (!ampacity?.judged) continue;
    const currentA = Math.abs(conductorA[index] ?? 0);
    const share = currentA / ampacity.ampacityA;
    if (share <= (hardest?.share ?? 0)) continue;
    const [is, may] = formatDistinct(currentA, ampacity.ampacityA);
    const isShared = sharesCurrentBy(network.scenarios[solved.scenario]!, index).length > 0;
    hardest = {
      words: `${markdownWords(conductorInWords(conductor))}, ${isShared ? "at most " : ""}${is} A of ${may} A`,
      share,
    };
  }
  return hardest ? `Nearest to its ampacity: ${hardest.words}.` : "";
}

/** Sources by output, highest first, then devices by voltage, lowest first. */
function deviceTable(judged: JudgedNetwork, { partA, partV, scenario }: SolvedScenario): string {
  const { network } = judged;
  const nominal = (part: Part) => partV[part.index] ?? Number.NaN;
  const rows = [
    ...network.parts
      .filter(givesEnergy)
      .sort((one, other) => (partA[other.index] ?? 0) - (partA[one.index] ?? 0)),
    ...network.parts
      .filter((part) => isConsumer(part) && partA[part.index] !== 0)
      .sort((one, other) => nominal(one) - nominal(other)),
  ];
  if (rows.length === 0) return "";
  const shown = rows.slice(0, mostRows);
  const left = several(rows.length - shown.length, "other part");
  return [
    "| Part | Voltage | Current |",
    "| --- | ---: | ---: |",
    ...shown.map((part) => {
      const currentA = partA[part.index] ?? 0;
      const way = Math.abs(currentA) < leastCurrentA ? "" : currentA > 0 ? "gives " : "takes ";
      const current = isShareUnknown(network, scenario, part.index)
        ? notKnown
        : `${way}${withUnit(Math.abs(currentA), "A")}`;
      return `| ${markdownWords(partInWords(part))} | ${voltageAtPart(judged, part, partV[part.index])} | ${current} |`;
    }),
    ...(left === "" ? [] : ["", `… and ${left}.`]),
  ].join("\n");
}

const mostRows = 10;
