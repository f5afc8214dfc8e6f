import { mountedAt } from "../../library/analysis/network/topology/ends-at.ts";
import { isShareUnknown, unknownSharesOf } from "../../library/analysis/network/unknown-shares.ts";
import type { SolvedScenario, WorstOf } from "../../library/analysis/network-result.ts";
import type { Part } from "../../library/model/network.ts";
import { descriptorOf } from "../../library/model/parts/index.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import { withUnit } from "../../library/rules/wording/format-number.ts";
import {
  atStart,
  conductorInWords,
  partInWords,
  terminalInWords,
} from "../../library/rules/wording/part-in-words.ts";
import { notKnown } from "../../library/rules/wording/unknown-length.ts";
import { voltageAtPart } from "./conductor-table.ts";
import { markdownWords } from "./plain-words.ts";
import { scenarioTable } from "./scenario-table.ts";

/** The voltage of a terminal by scenario, and the maximum current of each conductor that lands on it and each device mounted on it. */
export function terminalSummary(judged: JudgedNetwork, terminal: number): string {
  const { network, result } = judged;
  const { sharesCurrentBy } = unknownSharesOf(network);
  const landing: Landing[] = [
    ...network.conductors.flatMap((conductor, index) =>
      conductor.from === terminal || conductor.to === terminal
        ? {
            words: conductorInWords(conductor),
            worst: result.conductors[index]?.design,
            arrivingA: ({ conductorA }: SolvedScenario) =>
              (conductor.to === terminal ? 1 : -1) * (conductorA[index] ?? 0),
            isKnown: ({ scenario }: SolvedScenario) =>
              sharesCurrentBy(network.scenarios[scenario]!, index).length === 0,
          }
        : [],
    ),
    ...mountedAt(network, terminal).map((device) => ({
      words: partInWords(device),
      worst: result.parts[device.index]?.feeds ?? result.parts[device.index]?.draws,
      arrivingA: ({ partA }: SolvedScenario) => -(partA[device.index] ?? 0),
      isKnown: ({ scenario }: SolvedScenario) => !isShareUnknown(network, scenario, device.index),
    })),
  ];
  const lines = landing.slice(0, mostShown).map(({ words, worst }) => {
    const carries = worst ? `up to **${withUnit(worst.currentA, "A")}**` : "not worked out";
    return `- ${markdownWords(words)}: ${carries}`;
  });
  const left = landing.length > lines.length ? `${landing.length - lines.length} more` : "";
  const part = network.parts[network.terminals[terminal]!.part] as Part;
  const table = scenarioTable(
    judged,
    [
      { title: "Voltage", cell: ({ terminalV }) => voltageAtPart(judged, part, terminalV[terminal]) },
      {
        title: "Through it",
        // Incoming current leaves again: half of the sum of all currents, except if the part itself gives or takes some.
        cell: (solved) =>
          landing.every(({ isKnown }) => isKnown(solved))
            ? withUnit(throughA(landing.map(({ arrivingA }) => arrivingA(solved))), "A")
            : notKnown,
      },
    ],
    ({ terminalV }) => {
      const is = terminalV[terminal];
      // The lowest voltage is the worst; for a negative terminal, the one furthest from 0.
      return is === undefined ? undefined : [isNegative(part, network.terminals[terminal]!.name) ? is : -is];
    },
  );
  return [
    `${markdownWords(atStart(terminalInWords(network, terminal)))}, against the negative terminal of its battery`,
    table,
    lines.length > 0 ? `Connected to it:\n\n${lines.join("\n")}${left === "" ? "" : `\n- and ${left}`}` : "",
  ]
    .filter((block) => block !== "")
    .join("\n\n");
}

const mostShown = 8;

/** A conductor that ends at the terminal, or a fuse or breaker that is mounted on it. */
interface Landing {
  readonly words: string;
  readonly worst: WorstOf | undefined;
  /** The current that it brings to the terminal, A; negative if it takes it away. */
  readonly arrivingA: (solved: SolvedScenario) => number;
  /** Whether it depends on no unknown length how a current divides that it carries. */
  readonly isKnown: (solved: SolvedScenario) => boolean;
}

/** The greater of the arriving and the leaving current, A. */
function throughA(arrivingA: readonly number[]): number {
  let [arriving, leaving] = [0, 0];
  for (const inward of arrivingA) {
    if (inward > 0) arriving += inward;
    else leaving -= inward;
  }
  return Math.max(arriving, leaving);
}

function isNegative(part: Part, name: string): boolean {
  return descriptorOf(part).role === "metal" || /negative$/i.test(name);
}
