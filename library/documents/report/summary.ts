import { isDevice } from "../../model/part-roles.ts";
import type { Severity } from "../../rules/finding.ts";
import { type JudgedPlan, withKnownCurrent } from "../../rules/rule.ts";
import { counted, formatExact } from "../../rules/wording/format-number.ts";
import { contentsOf, hardestInWords, lowestInWords, networkSummary } from "../network-summary.ts";
import type { Table } from "../table.ts";
import { tableOf, words } from "../table-of.ts";
import {
  dropsOf,
  dropsWithoutVerdict,
  withoutVerdictInWords,
  worstDrop,
  worstDropInWords,
} from "../worst-drop.ts";
import { planningAid } from "./cautions.ts";
import type { Chapter, NumberedFinding, ReportContext } from "./chapter.ts";
import { notJudged } from "./not-judged.ts";
import type { Block } from "./report-content.ts";
import { isInGroup, type RuleGroup, ruleGroups } from "./rule-groups.ts";

/** The checks with their limits, the findings, and, before all that, the items that were not judged. */
export function summaryChapter(context: ReportContext): Chapter {
  const { judgement, numbered } = context;
  const untold = notJudged(judgement, numbered);
  const notice: readonly Block[] =
    untold.length > 0 ? [{ kind: "notice", title: "Not judged in this plan", lines: untold }] : [];
  return {
    id: "summary",
    title: "Summary",
    orientation: "portrait",
    blocks: [
      ...notice,
      { kind: "paragraph", text: `${planningAid.join(" ")} ${howToRead}` },
      { kind: "facts", facts: planFacts(context) },
      { kind: "table", table: checkedTable(context) },
    ],
  };
}

const howToRead =
  "One chapter lists the subjects that it does not check, another the cautions that everybody must know before work begins. Each limit has its source; a figure not seen in print is called an unconfirmed figure. Figures are shown to three places and worked out with all of them.";

interface Fact {
  readonly name: string;
  readonly value: string;
}

/** The plan in a few facts: its contents, its findings, and the figures nearest to their limits. */
export function planFacts({ file, revision, judgement, numbered }: ReportContext): readonly Fact[] {
  const open = numbered.filter(({ accepted }) => accepted === undefined);
  return [
    { name: "Plan", value: file },
    ...(revision === undefined ? [] : [{ name: "State of the plan", value: revision }]),
    { name: "Nominal voltage", value: voltages(judgement) },
    { name: "In the plan", value: contents(judgement) },
    ...scenarios(judgement),
    { name: "Findings", value: findingCounts(open) },
    { name: "Accepted, with a reason", value: String(numbered.length - open.length) },
    ...nearest(judgement),
  ].filter(({ value }) => value !== "");
}

function voltages({ circuits, network }: JudgedPlan): string {
  const inNetwork = (network?.network.parts ?? []).flatMap((part) =>
    part.kind === "load" ? [part.systemV] : [],
  );
  // The voltage of a solar array is not a system voltage.
  const alone = circuits.flatMap(({ circuit }) => (circuit.inNetwork && network ? [] : [circuit.systemV]));
  const all = new Set([...alone, ...inNetwork]);
  return [...all]
    .sort((one, other) => one - other)
    .map((volts) => `${formatExact(volts)} V`)
    .join(", ");
}

function contents({ model, network }: JudgedPlan): string {
  const read = model.circuits.length + model.unjudged.length;
  const { parts = 0, cables = 0 } = network ? contentsOf(network.network) : {};
  return [several(read, "circuit"), several(parts, "part"), several(cables, "cable")]
    .filter(Boolean)
    .join(", ");
}

function scenarios({ model, network }: JudgedPlan): readonly Fact[] {
  const name = "Scenarios";
  if (model.networkUnread) return [{ name, value: "none worked out: the network could not be read" }];
  if (!network) return [{ name, value: "none: the circuits are judged alone" }];
  const all = network.result.scenarios;
  const solved = all.filter(({ state }) => state === "solved").length;
  return [{ name, value: `${solved} of ${all.length} solved` }];
}

/** Each with its own limit, to show how much is left. */
function nearest(judgement: JudgedPlan): readonly Fact[] {
  const { hardest, lowest } = judgement.network ? networkSummary(judgement, judgement.network) : {};
  const drop = worstDrop(dropsOf(judgement));
  const after = (words: string) => words.replace(/^[^:]*: /, "");
  return [
    { name: "Nearest to its ampacity", value: hardest ? after(hardestInWords(hardest)) : "" },
    {
      name: "Nearest to its limit of drop",
      value: drop ? worstDropInWords(drop, drop.name).replace(/^worst drop /, "") : "",
    },
    { name: "Not judged", value: withoutVerdictInWords(dropsWithoutVerdict(judgement)) },
    { name: "Lowest voltage at a device", value: lowest ? after(lowestInWords(lowest)) : "" },
  ];
}

/** "2 errors, 1 warning"; the absence of findings is only stated for the items checked. */
function findingCounts(findings: readonly NumberedFinding[]): string {
  const count = (severity: Severity) => findings.filter((one) => one.severity === severity).length;
  const parts = [
    several(count("error"), "error"),
    several(count("warning"), "warning"),
    count("info") > 0 ? `${count("info")} for information` : "",
    several(count("hint"), "hint"),
  ].filter(Boolean);
  return parts.length > 0 ? parts.join(", ") : "none in the checks made";
}

function checkedTable({ judgement, numbered }: ReportContext): Table {
  return tableOf<RuleGroup>(
    { id: "checked", title: "What was checked", notes: [] },
    [
      words("what", "Subject", ({ title }) => title),
      words("heldAgainst", "Held against", ({ heldAgainst }) => heldAgainst),
      words("lookedAt", "Looked at", (group) => inWords(lookedAt(group, judgement))),
      words("findings", "Found", (group) => {
        const about = numbered.filter(({ rule }) => isInGroup(group, rule));
        return about.length > 0 ? found(about) : noneIn(lookedAt(group, judgement));
      }),
    ],
    ruleGroups,
  );
}

/** "2 errors, 1 accepted: F1, F4, A1". */
function found(findings: readonly NumberedFinding[]): string {
  const open = findings.filter(({ accepted }) => accepted === undefined);
  const accepted = findings.length - open.length;
  const counts = [open.length > 0 ? findingCounts(open) : "", accepted > 0 ? `${accepted} accepted` : ""];
  return `${counts.filter(Boolean).join(", ")}: ${findings.map(({ number }) => number).join(", ")}`;
}

/** How much of the subject of a rule group could be checked. */
type Seen =
  | { readonly looked: number; readonly of: number; readonly what: string; readonly devices?: number }
  | "whole"
  | "no network"
  | "no layout"
  | "unread";

function lookedAt({ looksAt }: RuleGroup, { model, circuits, network, placement }: JudgedPlan): Seen {
  if (looksAt === "plan") return "whole";
  if (looksAt === "layout") {
    if (!placement) return "no layout";
    const { bodies } = placement.layout;
    return { looked: bodies.filter(({ place }) => place).length, of: bodies.length, what: "part" };
  }
  if (looksAt === "runs" || looksAt === "runs and devices") {
    const conductors = new Set(network?.network.conductors.map(({ record }) => record));
    const lone = model.circuits.filter(({ record }) => !conductors.has(record)).length;
    const devices = looksAt === "runs" ? [] : (network?.network.parts ?? []).filter(isDevice);
    const of = conductors.size + lone + model.unjudged.length;
    return { looked: withKnownCurrent(circuits).length, of, what: "run", devices: devices.length };
  }
  if (!network) return model.networkUnread ? "unread" : "no network";
  if (looksAt === "network") return { looked: 1, of: 1, what: "network" };
  const { scenarios: all } = network.result;
  return { looked: all.filter(({ state }) => state === "solved").length, of: all.length, what: "scenario" };
}

function inWords(seen: Seen): string {
  if (seen === "whole") return "the whole plan";
  if (seen === "no network") return "none: no network";
  if (seen === "no layout") return "none: no surface, channel or compartment";
  if (seen === "unread") return "not judged";
  const { looked, of, what, devices = 0 } = seen;
  // A run whose current is unknown is judged in part: by the stated load and by single devices.
  const inPart = `${looked} of ${several(of, what)}${what === "run" ? " in full" : ""}`;
  const first = looked === of ? several(of, what) || `no ${what}` : inPart;
  return devices === 0 ? first : `${first}, ${several(devices, "part")}`;
}

/** If no item was checked, no finding is possible; if some were, the result applies to those. */
function noneIn(seen: Seen): string | null {
  if (seen === "whole") return "none";
  if (typeof seen === "string" || seen.of === 0) return null;
  if (seen.looked === 0) return "not judged";
  return seen.looked === seen.of ? "none" : "none in those";
}

/** "1 circuit", "20 circuits"; empty for none. */
function several(count: number, what: string): string {
  return count === 0 ? "" : counted(count, what);
}
