import { hardestInWords, lowestInWords } from "../../library/documents/network-summary.ts";
import { withoutVerdictInWords, worstDropInWords } from "../../library/documents/worst-drop.ts";
import { counted } from "../../library/rules/wording/format-number.ts";
import { mayHideHazard } from "../evaluate/files/passed-by.ts";
import { shownFindings } from "../evaluate/shown-findings.ts";
import type { CheckedPlans } from "./check-result.ts";
import { codeFrame } from "./code-frame.ts";
import { countsOf, worstFirst } from "./finding-counts.ts";
import { type PassedFile, passedInLines } from "./passed-files.ts";
import type { ReportedFinding } from "./report-schema.ts";
import type { Reported } from "./reported-plan.ts";
import { type Paint, paintFor, printable, type Terminal } from "./terminal.ts";

/** Results for a person at a terminal: findings with their code frames and fixes, worst first, then one line a plan. */
export function textReport({ plans, passedBy }: CheckedPlans, terminal: Terminal): string {
  const paint = paintFor(terminal);
  const blocks = plans.flatMap((plan) => {
    const causes = plan.findings.filter(({ followsFrom }) => !followsFrom?.folded);
    const { shown, leftOut } = shownFindings([...causes].sort(worstFirst), (finding) => ({
      ...finding,
      accepted: finding.accepted !== undefined,
    }));
    return [
      ...shown.map((finding) => findingBlock(plan, finding, paint)),
      ...leftOut.map((rest) => `${leftOutInWords(rest)}; --format json lists all.`),
    ];
  });
  const parts = [
    ...blocks,
    plans.map((plan) => planLine(plan, paint)).join("\n"),
    ...passedBlocks(passedBy, paint),
    ...closingLines(plans, paint),
  ];
  return `${parts.filter((part) => part !== "").join("\n\n")}\n`;
}

/** Files that look like plans and are in none of the results above. */
function passedBlocks(passedBy: readonly PassedFile[], paint: Paint): string[] {
  return passedInLines(passedBy).map(({ title, lines }, index) => {
    const style = index === 0 && passedBy.some(mayHideHazard) ? "error" : "strong";
    return [`${paint(style, title)}:`, ...lines.map((line) => `  ${line}`)].join("\n");
  });
}

function leftOutInWords(rest: readonly [ReportedFinding, ...ReportedFinding[]]): string {
  const [{ rule, file }] = rest;
  return `And ${rest.length.toLocaleString("en-GB")} more of ${rule} in ${printable(file)}`;
}

function findingBlock(plan: Reported, finding: ReportedFinding, paint: Paint): string {
  const { file, line, column, rule, severity, accepted } = finding;
  const label = accepted === undefined ? paint(severity, severity) : paint("faint", "accepted");
  const parts = [
    `${label}  ${paint("strong", printable(finding.message))}`,
    `  ${printable(finding.subject)} · ${paint("faint", `${printable(file)}:${line}:${column}`)} · ${rule}`,
    codeFrame(finding, (number) => plan.lineText(file, number), paint),
  ];
  if (accepted !== undefined) parts.push(`  accepted: ${printable(accepted)}`);
  if (finding.followsFrom)
    parts.push(`  follows from ${finding.followsFrom.rule} at ${printable(finding.followsFrom.subject)}`);
  const following = plan.findings.filter(
    ({ followsFrom: cause }) => cause?.folded && cause.rule === rule && cause.subject === finding.subject,
  );
  if (following.length > 0) {
    const rules = [...new Set(following.map((one) => one.rule))].join(", ");
    parts.push(
      `  follows from it: ${counted(following.length, "finding")} (${rules}); --format json lists them`,
    );
  }
  for (const { text, ...at } of finding.related) {
    parts.push(
      `  see ${paint("faint", `${printable(at.file)}:${at.line}:${at.column}`)}: ${printable(text)}`,
    );
  }
  for (const { title, kind } of finding.fixes) {
    parts.push(`  ${paint("good", kind === "repair" ? "fix" : "by hand")}  ${printable(title)}`);
  }
  if (finding.advice !== undefined) parts.push(`  ${paint("faint", "advice")}  ${printable(finding.advice)}`);
  if (finding.fixesTried === false)
    parts.push(`  ${paint("faint", "fixes  not tried for this one, see below")}`);
  return parts.filter((part) => part !== "").join("\n");
}

function planLine(plan: Reported, paint: Paint): string {
  const name = paint("strong", printable(plan.file));
  if (!plan.evaluated) return `${name}: not checked to the end, see above`;
  const { worstDrop, circuitsNotJudged } = plan;
  const circuits = plan.circuits.length + circuitsNotJudged.length;
  const network = plan.network?.judged ? plan.network : null;
  const contents = [
    network && circuits === 0 ? "" : counted(circuits, "circuit"),
    network ? counted(network.contents.parts, "part") : "",
    network ? counted(network.contents.cables, "cable") : "",
  ];
  const parts = [
    contents.filter(Boolean).join(", "),
    isEmpty(plan) ? "nothing to check" : countsOf(plan.findings),
    // The same figure in the same words as above the plan in the editor.
    worstDrop && worstDropInWords(worstDrop, printable(worstDrop.name)),
    withoutVerdictInWords(plan.dropsNotJudged),
    circuitsNotJudged.length > 0
      ? `${counted(circuitsNotJudged.length, "circuit")} without a known current`
      : "",
  ];
  return [`${name}: ${parts.filter(Boolean).join(" · ")}`, ...networkLines(plan)].join("\n");
}

/** A plan whose functions are never called, for example, must not look checked. */
function isEmpty({ circuits, network, findings }: Reported): boolean {
  return circuits.length === 0 && network === null && findings.length === 0;
}

/**
 * A summary of the network: how many scenarios could be solved, the conductor nearest to its ampacity, and the device with the
 * smallest share of its nominal voltage.
 */
function networkLines({ network }: Reported): string[] {
  if (!network) return [];
  if (!network.judged)
    return [
      "  network: not judged, because of an invalid value, see above; sizes and fuses are, as far as they need no current from it",
    ];
  const { withoutCircuits } = network;
  const { scenarios, unsolved, hardest, lowest } = network.summary;
  const solved = scenarios - unsolved.length;
  const failed = unsolved.map(({ scenario }) => `"${scenario}"`);
  const state =
    unsolved.length === 0
      ? `${counted(scenarios, "scenario")} solved`
      : `${solved} of ${counted(scenarios, "scenario")} solved, not ${firstOf(failed)}`;
  const worst = [
    hardest &&
      hardestInWords({
        ...hardest,
        name: printable(hardest.name),
        ...("alone" in hardest
          ? { alone: printable(hardest.alone) }
          : { scenario: printable(hardest.scenario) }),
      }),
    lowest &&
      lowestInWords({ ...lowest, name: printable(lowest.name), scenario: printable(lowest.scenario) }),
  ].filter(Boolean);
  const leftOut =
    withoutCircuits.length === 0
      ? ""
      : `, judged without ${firstOf(withoutCircuits)}, because of an invalid value, see above`;
  return [`  network: ${state}${leftOut}`, ...(worst.length > 0 ? [`  ${worst.join(" · ")}`] : [])];
}

/** The first three names of a plan, and the number of the others. */
function firstOf(names: readonly string[]): string {
  const shown = names.slice(0, 3).map((name) => printable(name));
  return `${shown.join(", ")}${names.length > shown.length ? ` and ${names.length - shown.length} more` : ""}`;
}

function closingLines(plans: readonly Reported[], paint: Paint): string[] {
  const findings = plans.flatMap((plan) => plan.findings);
  const lines: string[] = [];
  const stopped = plans.filter(({ evaluated }) => !evaluated).length;
  const cut = stopped > 0 ? `, ${stopped} of them not checked to the end` : "";
  if (plans.length > 1) lines.push(`${plans.length} plans${cut}: ${countsOf(findings)}`);
  if (plans.length === 0) lines.push("No plan was checked.");
  const [worst] = findings.filter(({ accepted }) => accepted === undefined).sort(worstFirst);
  if (worst) {
    const repairs = findings.some(({ fixes }) => fixes.some(({ kind }) => kind === "repair"));
    const apply = repairs ? "loomwright fix applies the repairs; " : "";
    lines.push(`${apply}loomwright explain ${worst.rule} shows the reason, and the sources of its numbers.`);
  }
  const untried = findings.filter(({ fixesTried }) => fixesTried === false).length;
  if (untried > 0) {
    lines.push(
      `Fixes of ${untried.toLocaleString("en-GB")} findings were not tried, to keep the check short; the editor tries them at the cursor, and loomwright fix applies repairs.`,
    );
  }
  if (plans.some((plan) => plan.evaluated && !isEmpty(plan))) {
    const networks = plans.some(({ network }) => network?.judged)
      ? ", and the currents of each network in each of its scenarios"
      : "";
    const checked = `Checked: conductor heat and drop, and the protection of each run${networks}, as written.`;
    lines.push(paint("faint", `${checked} A planning aid: local codes rule.`));
  }
  return lines;
}
