import type {
  ScenarioResult,
  SolvedScenario,
  UnsolvedScenario,
} from "../../library/analysis/network-result.ts";
import type { Network } from "../../library/model/network.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import { formatDistinct } from "../../library/rules/wording/format-number.ts";
import { listInWords, partInWords } from "../../library/rules/wording/part-in-words.ts";
import { several } from "./counts.ts";
import { markdownWords } from "./plain-words.ts";

/** One column of a {@link scenarioTable}: its title, and its cell for a solved scenario. */
export interface ScenarioColumn {
  readonly title: string;
  readonly cell: (solved: SolvedScenario) => string;
}

/** The numbers that rank scenarios, the most important first. Undefined, or not a number: it is not compared. */
export type Weight = (solved: SolvedScenario) => readonly number[] | undefined;

/**
 * A Markdown table with a row for each scenario, worst first: those without an operating point, then by weight, highest first.
 * The worst solved one is marked, if they differ.
 */
export function scenarioTable(
  { network, result }: JudgedNetwork,
  columns: readonly ScenarioColumn[],
  weight: Weight,
): string {
  const rows = result.scenarios
    .map(
      (solved): Row => ({ solved, weight: solved.state === "solved" ? weightOf(solved, weight) : undefined }),
    )
    .sort(worstFirst);
  const weighed = rows.filter((row) => row.weight);
  const differs = weighed.length > 1 && heavier(weighed[0]!, weighed.at(-1)!) > 0;
  const worst = differs ? weighed[0] : undefined;
  const lines = rows.slice(0, mostScenarios).map((row) => {
    const scenario = network.scenarios[row.solved.scenario];
    const moment = scenario?.momentary ? ", for a moment" : "";
    const name = `${markdownWords(scenario?.name ?? "")}${moment}`;
    const { solved } = row;
    if (solved.state === "unsolved")
      return line([`**${name}**`, "**not solved**", ...columns.slice(1).map(() => "")]);
    const cells = columns.map(({ cell }) => cell(solved));
    return row === worst
      ? line([`**${name}** (worst)`, ...cells.map((cell) => `**${cell}**`)])
      : line([name, ...cells]);
  });
  const left = rows.length - lines.length;
  return [
    [line(["Scenario", ...columns.map(({ title }) => title)]), line(["---", ...columns.map(() => "---:")])],
    lines,
    left > 0 ? ["", `… and ${several(left, "other scenario")}.`] : [],
    unsolvedInWords({ network, result }),
  ]
    .flat()
    .join("\n");
}

/** No one reads more rows than these in a popup. */
const mostScenarios = 6;

/** Why scenarios have no numbers, a sentence each: silence would read as "no current". */
function unsolvedInWords({ network, result }: JudgedNetwork): string[] {
  const unsolved = result.scenarios.flatMap((one) => (one.state === "unsolved" ? [one] : []));
  return unsolved.slice(0, 2).flatMap((one) => {
    const name = markdownWords(network.scenarios[one.scenario]?.name ?? "");
    return ["", `**${name}** is not solved: ${whyUnsolved(network, one)}`];
  });
}

/** "there is no operating point: the inverter would pull the voltage down without end. With up to 65 % of …" */
export function whyUnsolved({ parts }: Network, { why, reachedShare, culprits }: UnsolvedScenario): string {
  const who = markdownWords(listInWords(culprits.flatMap((part) => parts[part] ?? []).map(partInWords), 3));
  if (why === "not-converged" && who === "") return "the calculation did not converge, so it has no result.";
  // A share just below 100 % is not shown as 100 %.
  const [share] = formatDistinct(100 * reachedShare, 100);
  const reached = `With up to ${share} % of the power there is one.`;
  return why === "collapse"
    ? `there is no operating point: ${who || "the load"} would pull the voltage down without limit. ${reached}`
    : `no operating point was found; the voltage falls first at ${who}. ${reached}`;
}

interface Row {
  readonly solved: ScenarioResult;
  readonly weight: readonly number[] | undefined;
}

function worstFirst(one: Row, other: Row): number {
  return (
    rankOf(other.solved) - rankOf(one.solved) ||
    heavier(other, one) ||
    one.solved.scenario - other.solved.scenario
  );
}

function rankOf({ state }: ScenarioResult): number {
  return state === "unsolved" ? 1 : 0;
}

/** Above 0 if the first one is worse. Solved values differ by rounding even between equal scenarios. */
function heavier({ weight: one }: Row, { weight: other }: Row): number {
  if (!one || !other) return Number(one !== undefined) - Number(other !== undefined);
  for (const [index, value] of one.entries()) {
    const difference = value - (other[index] ?? 0);
    if (Math.abs(difference) > rounding * Math.max(1, Math.abs(value))) return difference;
  }
  return 0;
}

/** Far above the solver's error, far below the displayed digits. */
const rounding = 1e-6;

function weightOf(solved: SolvedScenario, weight: Weight): readonly number[] | undefined {
  const is = weight(solved);
  return is?.some(Number.isNaN) ? undefined : is;
}

function line(cells: readonly string[]): string {
  return `| ${cells.join(" | ")} |`;
}
