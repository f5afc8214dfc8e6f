import type { Verdict } from "../../analysis/energy/energy-result.ts";
import { monthNames } from "../../model/use-properties.ts";
import { counted, formatDistinct, formatExact, formatRounded } from "../../rules/wording/format-number.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import { textOf } from "./changed-properties.ts";
import type { ComparedPlan, PlanSide } from "./compared-plan.ts";
import { type Effect, isSmall, shareLeft } from "./effects.ts";
import { autonomyInWords, type EnergyChange, monthInWords } from "./energy-difference.ts";
import type { DiffFinding, FindingsDifference } from "./findings.ts";
import type { Limit, Measured } from "./measured.ts";
import { moveInWords } from "./moves.ts";
import type { PurchaseChange } from "./parts-to-buy.ts";
import { type ChangedSubject, isSame, type PlanDifference, type StandingSubject } from "./plan-difference.ts";
import type { Subject } from "./subject.ts";

/**
 * One plan's difference as words in blocks, the same for the terminal, Markdown and the editor: they only escape and set it.
 * Nothing here is fit to be shown yet: names and reasons are as the plans give them.
 */
export interface DiffText {
  readonly path: string;
  readonly movedFrom: string | undefined;
  /** True if nothing changed; shown collapsed. */
  readonly quiet: boolean;
  /** One line: the result. */
  readonly summary: string;
  /** Sentences that a reader must know before the rest. */
  readonly notices: readonly string[];
  readonly blocks: readonly DiffBlock[];
}

export interface DiffBlock {
  readonly title: string;
  readonly columns: readonly string[];
  /** Each as long as {@link columns}. */
  readonly rows: readonly (readonly string[])[];
  /** Rows that are shown folded or only counted, if there are any. None of them crossed a limit. */
  readonly folded?: { readonly words: string; readonly rows: readonly (readonly string[])[] };
}

export interface DiffOptions {
  /** Smaller changes are rows like the others, and not folded. */
  readonly all: boolean;
}

/** `labels`: the names of the two states, "HEAD~1", "the working tree". */
export function describeDiff(
  plan: ComparedPlan,
  labels: { readonly before: string; readonly after: string },
  options: DiffOptions,
): DiffText {
  const { path, movedFrom } = plan;
  switch (plan.state) {
    case "compared":
      return { path, movedFrom, ...describeCompared(plan.difference, labels, movedFrom, options) };
    case "added":
    case "removed": {
      const { side } = plan;
      const came = plan.state === "added";
      const label = came ? labels.after : labels.before;
      const word = came
        ? `a plan that is not in ${labels.before}`
        : `a plan that is no longer in ${labels.after}`;
      if (side.state === "not-evaluated") {
        const summary = `${word}: could not be evaluated`;
        return { path, movedFrom, quiet: false, summary, notices: [notEvaluated(side, label)], blocks: [] };
      }
      return {
        ...{ path, movedFrom, quiet: false, summary: `${word}: ${contentsInWords(side)}` },
        notices: unreadNotice(side.networkUnread, label),
        // The findings of a removed plan need no attention.
        blocks: came ? sideFindings(side.findings, "found") : [],
      };
    }
    case "not-evaluated": {
      if (plan.unchanged) {
        const summary = "could not be evaluated, as before: its text has not changed";
        return { path, movedFrom, quiet: movedFrom === undefined, summary, notices: [], blocks: [] };
      }
      const sides = [
        { side: plan.before, label: labels.before },
        { side: plan.after, label: labels.after },
      ];
      return {
        ...{ path, movedFrom, quiet: false, summary: "could not be compared" },
        notices: sides.flatMap(({ side, label }) => {
          if (!side) return [`There is no such plan in ${label}.`];
          if (side.state === "not-evaluated") return [notEvaluated(side, label)];
          return [`As of ${label}: ${contentsInWords(side)}.`, ...unreadNotice(side.networkUnread, label)];
        }),
        blocks: sides.flatMap(({ side, label }) =>
          side?.state === "evaluated" ? sideFindings(side.findings, `found as of ${label}`) : [],
        ),
      };
    }
  }
}

function notEvaluated({ why }: Extract<PlanSide, { state: "not-evaluated" }>, label: string): string {
  return `As of ${label} this plan could not be evaluated: ${why.replace(/\.$/, "")}.`;
}

function unreadNotice(unread: boolean, label: string): string[] {
  return unread
    ? [
        `As of ${label} the network could not be read whole: its parts, cables and currents are not compared. A finding says why.`,
      ]
    : [];
}

/** "18 circuits, 12 parts, 9 cables; 1 error, 2 accepted". */
function contentsInWords(side: Extract<PlanSide, { state: "evaluated" }>): string {
  const { circuits, parts, cables, findings } = side;
  const contents = [
    circuits > 0 || parts === 0 ? counted(circuits, "circuit") : "",
    parts > 0 ? counted(parts, "part") : "",
    cables > 0 ? counted(cables, "cable") : "",
  ].filter(Boolean);
  return `${contents.join(", ")}; ${countsInWords(findings) || "no findings"}`;
}

function describeCompared(
  difference: PlanDifference,
  labels: { readonly before: string; readonly after: string },
  movedFrom: string | undefined,
  { all }: DiffOptions,
): Omit<DiffText, "path" | "movedFrom"> {
  const { networkUnread, unsolved, effects, findings, purchases } = difference;
  const notices = [
    ...unreadNotice(networkUnread.before, labels.before),
    ...unreadNotice(networkUnread.after, labels.after),
    ...(isSame(difference) ? [] : unsolvedNotices(unsolved, labels)),
  ];
  const blocks = [
    changesBlock(difference),
    movesBlock(difference),
    effectsBlock(
      "Figures of the changed items",
      effects.filter(({ own }) => own),
      all,
    ),
    effectsBlock(
      "Elsewhere",
      effects.filter(({ own }) => !own),
      all,
    ),
    energyBlock(difference.energy, all),
    findingsBlock(findings),
    purchasesBlock(purchases),
  ].filter(({ rows, folded }) => rows.length > 0 || folded !== undefined);
  const quiet = isSame(difference) && notices.length === 0 && movedFrom === undefined;
  return { quiet, summary: summaryOf(difference), notices, blocks };
}

function unsolvedNotices(
  { before, after }: PlanDifference["unsolved"],
  labels: { readonly before: string; readonly after: string },
): string[] {
  const told = (names: readonly string[], where: string) =>
    names.length === 0
      ? []
      : [
          `${where} there is no operating point in ${listInWords(names.map((name) => `"${name}"`))}: figures are compared as far as they were worked out.`,
        ];
  if (before.join("\n") === after.join("\n")) return told(after, "In both");
  return [...told(before, `As of ${labels.before}`), ...told(after, `As of ${labels.after}`)];
}

function summaryOf(difference: PlanDifference): string {
  const { before, after } = difference.networkUnread;
  if (isSame(difference))
    return before || after ? "no change in the compared contents" : "no change in the build";
  const { added, removed, changed, effects, findings, purchases } = difference;
  const renamedOnly = changed.filter(({ properties }) => properties.length === 0).length;
  const elsewhere = effects.filter(({ own }) => !own);
  const past = effects.filter(({ crossed }) => crossed === "past").length;
  const came = [...findings.came, ...findings.changed.filter(({ worse }) => worse).map(({ after }) => after)];
  const went = [
    ...findings.went,
    ...findings.changed.filter(({ worse }) => !worse).map(({ before }) => before),
  ];
  return [
    changed.length > renamedOnly ? `${changed.length - renamedOnly} changed` : "",
    renamedOnly > 0 ? `${renamedOnly} renamed` : "",
    added.length > 0 ? `${added.length} added` : "",
    removed.length > 0 ? `${removed.length} removed` : "",
    elsewhere.length > 0 ? `${counted(elsewhere.length, "figure")} elsewhere` : "",
    past > 0 ? `${past} past ${past === 1 ? "its limit" : "their limits"}` : "",
    came.length > 0 ? `${countsInWords(came)} appeared` : "",
    went.length > 0 ? `${countsInWords(went)} disappeared` : "",
    came.length + went.length === 0 ? "no finding appeared or disappeared" : "",
    monthsInWords(difference.energy),
    purchases.length > 0 ? "parts to buy differ" : "",
  ]
    .filter(Boolean)
    .join(" · ");
}

function movesBlock({ moves }: PlanDifference): DiffBlock {
  const rows = moves.map((move) => [move.subject.called, moveInWords(move)]);
  return { title: "Moves", columns: ["Item", "Move"], rows };
}

function changesBlock({ added, removed, changed }: PlanDifference): DiffBlock {
  return {
    title: "Changes",
    columns: ["Item", "Property", "Before", "After"],
    rows: [
      ...removed.map((one) => [one.subject.called, "removed", standingInWords(one), ""]),
      ...added.map((one) => [one.subject.called, "added", "", standingInWords(one)]),
      ...changedRows(changed),
    ],
  };
}

/** From this many on, subjects that changed alike share one row. */
const fewestTogether = 3;

/** A changed default of the build shows in every circuit; it is reported once, with the number of circuits that took it. */
function changedRows(changed: readonly ChangedSubject[]): string[][] {
  const alike = new Map<string, Subject[]>();
  const keyOf = (kind: string, property: ChangedSubject["properties"][number]) =>
    JSON.stringify([kind, property.words, property.before, property.after]);
  for (const { subject, properties } of changed)
    for (const property of properties) {
      const key = keyOf(subject.kindInWords, property);
      alike.set(key, [...(alike.get(key) ?? []), subject]);
    }
  const told = new Set<string>();
  return changed.flatMap(({ subject, renamedFrom, properties }) => [
    ...(renamedFrom === undefined ? [] : [[subject.called, "name", renamedFrom, subject.name]]),
    ...properties.flatMap((property) => {
      const { words, before, after } = property;
      const key = keyOf(subject.kindInWords, property);
      const subjects = alike.get(key) ?? [];
      if (subjects.length < fewestTogether) return [[subject.called, words, before, after]];
      if (told.has(key)) return [];
      told.add(key);
      const names = listInWords(subjects.map(({ name }) => name));
      return [[`${subjects.length} × ${subject.kindInWords}: ${names}`, words, before, after]];
    }),
  ]);
}

/** The fields by which a builder knows a new one. The rest is in the plan. */
const first = ["from", "to", "load", "loadW", "draws", "drawsW", "length", "size", "protection"];

function standingInWords({ subject, measured }: StandingSubject): string {
  const { kind, properties, network } = subject;
  const shown = kind === "circuit" || kind === "cable" ? first : undefined;
  const stated = properties.flatMap(({ id, words, value }) => {
    if (shown && !shown.includes(id)) return [];
    if (value.as === "parts") {
      const names = value.parts.map((part) => network?.parts[part]?.name ?? "");
      return names.length > 0 ? [`${words}: ${listInWords(names)}`] : [];
    }
    const text = textOf(value);
    if (text === "no") return [];
    return [
      text === "yes"
        ? words
        : shown && id !== "from" && id !== "to" && id !== "protection"
          ? text
          : `${words} ${text}`,
    ];
  });
  const worked = measured
    .filter(({ what }) => what === "currentA" || what === "dropPercent" || what === "dropFromBankPercent")
    .map(measuredInWords);
  return [stated.join(", "), worked.join(", ")].filter(Boolean).join("; ");
}

/** "drop 3.2 % of 10 %", "current 12 A". */
function measuredInWords({ words, value, unit, limit }: Measured): string {
  if (!limit) return `${words} ${formatRounded(value)} ${unit}`;
  const [is, may] = formatDistinct(value, limit.value);
  return `${words} ${is} ${unit} of ${may} ${unit}`;
}

/** Maximum number of effects shown, unless more crossed a limit: a reader takes in no more. The rest are folded. */
const mostEffects = 12;

function effectsBlock(title: string, effects: readonly Effect[], all: boolean): DiffBlock {
  const columns = ["Item", "Figure", "Before", "After", "Limit", "Left"];
  if (all) return { title, columns, rows: effects.map(effectRow) };
  const crossed = effects.filter((effect) => effect.crossed).length;
  const large = effects.filter((effect) => !isSmall(effect));
  const shown = large.slice(0, Math.max(crossed, mostEffects));
  const isShown = new Set(shown);
  const rest = effects.filter((effect) => !isShown.has(effect));
  const rows = shown.map(effectRow);
  if (rest.length === 0) return { title, columns, rows };
  const words =
    shown.length === large.length
      ? counted(rest.length, "smaller change")
      : `${counted(rest.length, "further change")}, none crosses its limit`;
  return { title, columns, rows, folded: { words, rows: rest.map(effectRow) } };
}

function effectRow({
  subject,
  words,
  unit,
  before,
  after,
  limitBefore,
  limitAfter,
  crossed,
}: Effect): string[] {
  const was = apart(before, [after, limitBefore?.value]);
  const is = apart(after, [before, limitAfter?.value]);
  const limit = limitInWords(limitBefore, limitAfter, unit);
  const left = leftInWords(shareLeft(before, limitBefore), shareLeft(after, limitAfter));
  const crossing = crossed === "past" ? "past its limit: " : crossed === "back" ? "within its limit: " : "";
  return [subject.called, words, `${was} ${unit}`, `${is} ${unit}`, limit, `${crossing}${left}`];
}

/** With enough figures to be distinct from each of the others. */
function apart(value: number, others: readonly (number | undefined)[]): string {
  return others
    .flatMap((other) => (other === undefined ? [] : [formatDistinct(value, other)[0]]))
    .reduce((longest, text) => (text.length > longest.length ? text : longest), formatRounded(value));
}

function limitInWords(before: Limit | undefined, after: Limit | undefined, unit: string): string {
  if (!after) return before ? "none any more" : "";
  const now = `${after.words} ${formatRounded(after.value)} ${unit}`;
  if (!before || formatRounded(before.value) === formatRounded(after.value)) return now;
  return `${after.words} ${formatRounded(before.value)} → ${formatRounded(after.value)} ${unit}`;
}

/** "71 % → 64 %"; "4 % → 3 % over". */
function leftInWords(before: number | undefined, after: number | undefined): string {
  const text = (left: number) => (left < 0 ? `${wholePercent(-left)} over` : wholePercent(left));
  if (after === undefined) return "";
  if (before === undefined) return text(after);
  return text(before) === text(after) ? text(after) : `${text(before)} → ${text(after)}`;
}

function wholePercent(percent: number): string {
  return `${percent < 10 ? formatRounded(percent) : Math.round(percent)} %`;
}

/** Months whose verdict stays the same are folded: their lowest charge moved only. */
function energyBlock(changes: readonly EnergyChange[], all: boolean): DiffBlock {
  const columns = ["Period", "Figure", "Before", "After"];
  const [rows, rest]: [string[][], string[][]] = [[], []];
  for (const { period, bank, autonomyDays, months } of changes) {
    const of = `${period}: ${bank}`;
    const [was, is] = [autonomyInWords(autonomyDays.before), autonomyInWords(autonomyDays.after)];
    if (was !== is) rows.push([of, "autonomy", was, is]);
    for (const { month, before, after } of months) {
      const row = [of, monthNames[month]!, monthInWords(before), monthInWords(after)];
      (all || before?.words !== after?.words ? rows : rest).push(row);
    }
  }
  const title = "Energy";
  if (rest.length === 0) return { title, columns, rows };
  return {
    ...{ title, columns, rows },
    folded: { words: `${counted(rest.length, "month")} with the same verdict`, rows: rest },
  };
}

/** "the bank keeps up in 2 more months". */
function monthsInWords(changes: readonly EnergyChange[]): string {
  const short = (figures: { readonly verdict: Verdict } | undefined) =>
    figures?.verdict === "runs short" || figures?.verdict === "not on average";
  const months = changes.flatMap((change) => change.months);
  const came = months.filter(({ before, after }) => short(after) && !short(before)).length;
  const went = months.filter(({ before, after }) => short(before) && !short(after)).length;
  return [
    came > 0 ? `runs short in ${counted(came, "further month")}` : "",
    went > 0 ? `no longer short in ${counted(went, "month")}` : "",
  ]
    .filter(Boolean)
    .join(", ");
}

function findingsBlock({ came, went, changed }: FindingsDifference): DiffBlock {
  const where = { kept: "", removed: ", with removed parts", added: ", with added parts" };
  const row = (what: string, finding: DiffFinding) => [
    `${what}${where[finding.of]}`,
    severityOf(finding),
    finding.subject,
    finding.accepted === undefined ? finding.message : `${finding.message} Accepted: ${finding.accepted}`,
    finding.rule,
  ];
  return {
    title: "Findings",
    columns: ["", "Severity", "About", "Finding", "Rule"],
    rows: [
      ...came.map((finding) => row("new", finding)),
      ...changed.map(({ before, after }) => row(severityChange(before, after), after)),
      ...went.map((finding) => row("gone", finding)),
    ],
  };
}

function severityChange(before: DiffFinding, after: DiffFinding): string {
  if (before.accepted !== undefined && after.accepted !== undefined) return "accepted for another reason";
  if (after.accepted !== undefined) return `accepted, was ${before.severity}`;
  if (before.accepted !== undefined) return "no longer accepted";
  return `was ${before.severity}`;
}

function severityOf({ severity, accepted }: DiffFinding): string {
  return accepted === undefined ? severity : "accepted";
}

function sideFindings(findings: readonly DiffFinding[], what: string): DiffBlock[] {
  if (findings.length === 0) return [];
  return [
    {
      title: "Findings",
      columns: ["", "Severity", "About", "Finding", "Rule"],
      rows: findings.map((one) => [what, severityOf(one), one.subject, one.message, one.rule]),
    },
  ];
}

function purchasesBlock(purchases: readonly PurchaseChange[]): DiffBlock {
  return {
    title: "To buy, as cut and with spares",
    columns: ["Item", "Before", "After", "Difference"],
    rows: purchases.map(({ what, unit, before, after }) => {
      const [was, is] = [shownAmount(before, unit), shownAmount(after, unit)];
      const amount = (value: number) =>
        unit === "pieces" ? formatExact(value) : `${formatExact(value)} ${unit}`;
      const less = unit === "pieces" ? "fewer" : "less";
      // From the amounts shown, to make the three add up.
      const apart = shownAmount(Math.abs(is - was), unit);
      return [what, amount(was), amount(is), `${amount(apart)} ${after > before ? "more" : less}`];
    }),
  };
}

/** Lengths to a tenth: a spool is longer by more than that. */
function shownAmount(amount: number, unit: PurchaseChange["unit"]): number {
  return unit === "pieces" ? amount : Math.round(amount * 10) / 10;
}

/** "1 error, 2 warnings, 1 accepted". */
function countsInWords(findings: readonly DiffFinding[]): string {
  const of = (word: string) => findings.filter((finding) => severityOf(finding) === word).length;
  return [
    of("error") > 0 && counted(of("error"), "error"),
    of("warning") > 0 && counted(of("warning"), "warning"),
    of("info") > 0 && `${of("info")} for information`,
    of("hint") > 0 && counted(of("hint"), "hint"),
    of("accepted") > 0 && `${of("accepted")} accepted`,
  ]
    .filter(Boolean)
    .join(", ");
}
