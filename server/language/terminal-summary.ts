import type { Part } from "../../library/model/network.ts";
import { descriptorOf } from "../../library/model/parts/index.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import { withUnit } from "../../library/rules/wording/format-number.ts";
import { atStart, conductorInWords, terminalInWords } from "../../library/rules/wording/part-in-words.ts";
import { voltageInWords } from "./conductor-table.ts";
import { several } from "./counts.ts";
import { markdownWords } from "./plain-words.ts";
import { scenarioTable } from "./scenario-table.ts";

/** The voltage of a terminal by scenario, and the maximum current of each conductor that lands on it. */
export function terminalSummary(judged: JudgedNetwork, terminal: number): string {
  const { network, result } = judged;
  const landing = network.conductors.flatMap((conductor, index) =>
    conductor.from === terminal || conductor.to === terminal ? [{ conductor, index }] : [],
  );
  const lines = landing.slice(0, mostConductors).map(({ conductor, index }) => {
    const worst = result.conductors[index]?.worst;
    const carries = worst ? `up to **${withUnit(worst.currentA, "A")}**` : "not worked out";
    return `- ${markdownWords(conductorInWords(conductor))}: ${carries}`;
  });
  const left = several(landing.length - lines.length, "other conductor");
  const part = network.parts[network.terminals[terminal]!.part] as Part;
  const table = scenarioTable(
    judged,
    [
      { title: "Voltage", cell: ({ terminalV }) => voltageInWords(terminalV[terminal]) },
      {
        title: "Through it",
        cell: ({ conductorA }) =>
          withUnit(
            // Incoming current leaves again: half of the sum of all currents, except if the part itself gives or takes some.
            throughA(
              landing.map(({ conductor, index }) => [conductor.to === terminal, conductorA[index] ?? 0]),
            ),
            "A",
          ),
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

const mostConductors = 8;

/** The greater of the arriving and the leaving current, A. */
function throughA(flows: readonly (readonly [arrives: boolean, currentA: number])[]): number {
  let [arriving, leaving] = [0, 0];
  for (const [arrives, currentA] of flows) {
    const inward = arrives ? currentA : -currentA;
    if (inward > 0) arriving += inward;
    else leaving -= inward;
  }
  return Math.max(arriving, leaving);
}

function isNegative(part: Part, name: string): boolean {
  return descriptorOf(part).role === "metal" || /negative$/i.test(name);
}
