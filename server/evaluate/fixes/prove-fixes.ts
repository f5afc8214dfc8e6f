import type { Judgement } from "../../../library/judge.ts";
import { askedAnswer } from "../../../library/rules/asked-answer.ts";
import type { Finding, ProposedFix } from "../../../library/rules/finding.ts";
import { ruleById } from "../../../library/rules/registry.ts";
import { type JudgedNetwork, withKnownCurrent } from "../../../library/rules/rule.ts";
import { counted } from "../../../library/rules/wording/format-number.ts";
import type { CheckOutcome, Edit, PlacedFinding, PlacedFix } from "../checked-plan.ts";
import type { LocatedPlan } from "../provenance/located-plan.ts";
import type { Uri } from "../workspace.ts";
import { overlap } from "./edits.ts";
import { keyOf, keysOf, severityOrder } from "./finding-keys.ts";
import { type Given, otherRecordsChanged } from "./fix-effect.ts";
import { PieceTable } from "./piece-table.ts";

/** Checks the plan again with other texts for some files. */
export type Recheck = (texts: ReadonlyMap<Uri, string>) => Promise<CheckOutcome>;

/** See `Checker.provenFixes`. */
export async function provenFixes(
  plan: LocatedPlan,
  placed: PlacedFinding,
  attempt: Recheck,
): Promise<readonly PlacedFix[]> {
  const findings = plan.findingsIn(placed);
  const proven: PlacedFix[] = [];
  for (const { fix, proposed } of possibleFixes(plan, findings)) {
    const tried = await verifyFix(plan, fix, proposed, attempt);
    if (!tried) continue;
    const left = keysOf(tried.after.judgement.findings);
    if (findings.every((finding) => !left.has(keyOf(finding)))) proven.push(tried.fix);
  }
  return proven.sort(bestFirst);
}

/** See `Checker.provenChange`. */
export async function provenChange(
  plan: LocatedPlan,
  proposed: ProposedFix,
  attempt: Recheck,
): Promise<PlacedFix | undefined> {
  const fix = plan.editsOf(proposed);
  if (!fix || fix.edits.length === 0) return undefined;
  return (await verifyFix(plan, fix, proposed, attempt))?.fix;
}

/** The result of applying a fix; undefined if it had any unstated effect, or added a finding. */
async function verifyFix(plan: LocatedPlan, fix: PlacedFix, proposed: ProposedFix, attempt: Recheck) {
  const draft = new Draft(plan);
  draft.apply(fix.edits);
  const after = await attempt(draft.texts());
  if (after.state !== "checked" || !addsNothing(plan, after)) return undefined;
  const others = otherRecordsChanged(proposed.changes, givenIn(plan), givenIn(after));
  return others && { fix: alsoChanging(fix, others), after };
}

/** The repairs that "fix all" takes. */
export interface FixAllOptions {
  /** Only those that change one circuit, cable or part: for a save, where the builder sees no preview. */
  readonly oneRecordEach?: boolean;
  /** Offers too: thicker conductors on which other devices are. */
  readonly offers?: boolean;
  /** The maximum number of checks. Each takes as long as a keystroke. */
  readonly mostRuns?: number;
}

/**
 * See `Checker.fixAll`. Causes come before symptoms, and shared conductors before branches. Each round applies one repair a circuit
 * and checks the plan again; the next round starts from its findings. A repair is given up if its finding remains. If a new finding
 * appears, or something else changes, and the cause is unknown, the next round tries half of them. One alone that brings new findings is
 * tried together with their repairs. One that was given up is tried once more when others have changed the plan.
 */
export async function provenFixAll(
  plan: LocatedPlan,
  attempt: Recheck,
  options: FixAllOptions = {},
): Promise<AllRepairs | undefined> {
  let draft = new Draft(plan);
  const givenUp = new Set<string>();
  let current: LocatedPlan = plan;
  let most = Number.POSITIVE_INFINITY;
  let changedSince = false;
  for (let run = 0; run < (options.mostRuns ?? mostRuns); run++) {
    const round = repairsFor(current, givenUp, options).slice(0, most);
    if (round.length === 0) {
      if (!changedSince || givenUp.size === 0) break;
      givenUp.clear();
      changedSince = false;
      continue;
    }
    const edits = round.flatMap(({ fix }) => fix.edits);
    const after = await attempt(draft.textsWith(edits));
    const left = after.state === "checked" ? keysOf(after.judgement.findings) : undefined;
    const inVain = left ? round.filter(({ finding }) => left.has(keyOf(finding))) : [];
    const changes = round.flatMap(({ changes }) => changes);
    const changesOnly = () => otherRecordsChanged(changes, givenIn(current), givenIn(after))?.length === 0;
    if (after.state === "checked" && inVain.length === 0 && addsNothing(current, after) && changesOnly()) {
      draft.apply(edits);
      current = after as LocatedPlan;
      changedSince = givenUp.size > 0;
      most = Number.POSITIVE_INFINITY;
    } else if (inVain.length > 0 && inVain.length < round.length) {
      for (const { key } of inVain) givenUp.add(key);
    } else if (round.length === 1) {
      const together =
        after.state === "checked" && inVain.length === 0 && !options.oneRecordEach
          ? await withFollowing(
              current,
              { draft, repair: round[0]!, after: after as LocatedPlan },
              attempt,
              options,
            )
          : undefined;
      if (together) {
        ({ draft, plan: current } = together);
        changedSince = givenUp.size > 0;
      } else for (const { key } of round) givenUp.add(key);
      most = Number.POSITIVE_INFINITY;
    } else {
      most = Math.floor(round.length / 2);
    }
  }
  const edits = draft.edits();
  if (edits.length === 0) return undefined;
  const left = keysOf(current.judgement.findings);
  const gone = openIn(plan.judgement.findings).filter((finding) => !left.has(keyOf(finding))).length;
  return {
    title: `Fix ${counted(gone, "finding")}`,
    kind: "repair",
    edits,
    alsoChanges: [],
    findingsGone: gone,
  };
}

/** All repairs of a plan together. */
export interface AllRepairs extends PlacedFix {
  /** The number of its findings that are then gone. */
  readonly findingsGone: number;
}

/**
 * A repair that brings new findings, together with the repairs of those: a greater fuse, and a thicker conductor behind it. Undefined if
 * a finding is left that was not there.
 */
async function withFollowing(
  before: LocatedPlan,
  { draft, repair, after }: { readonly draft: Draft; readonly repair: Repair; readonly after: LocatedPlan },
  attempt: Recheck,
  options: FixAllOptions,
): Promise<{ readonly draft: Draft; readonly plan: LocatedPlan } | undefined> {
  const known = keysOf(before.judgement.findings);
  const trial = draft.copy();
  trial.apply(repair.fix.edits);
  const changes = [...repair.changes];
  let plan = after;
  for (let step = 0; step < mostFollowing; step++) {
    const added = openIn(plan.judgement.findings).filter(
      (finding) => finding.severity !== "info" && !known.has(keyOf(finding)),
    );
    const following = roundOf(plan, added.toSorted(bySubject), new Set(), options);
    if (following.length === 0) return undefined;
    trial.apply(following.flatMap(({ fix }) => fix.edits));
    changes.push(...following.flatMap((one) => one.changes));
    const next = await attempt(trial.texts());
    if (next.state !== "checked" || keysOf(next.judgement.findings).has(keyOf(repair.finding)))
      return undefined;
    plan = next as LocatedPlan;
    if (addsNothing(before, next)) {
      const others = otherRecordsChanged(changes, givenIn(before), givenIn(next));
      return others?.length === 0 ? { draft: trial, plan } : undefined;
    }
  }
  return undefined;
}

/** A repair that needs more than this is none. */
const mostFollowing = 2;

/** For a save, which must not take much longer than a breath. */
const mostRuns = 40;

/** The plan's own text, edited step by step. */
class Draft {
  readonly #plan: LocatedPlan;
  readonly #files = new Map<Uri, PieceTable>();

  constructor(plan: LocatedPlan) {
    this.#plan = plan;
  }

  copy(): Draft {
    const draft = new Draft(this.#plan);
    for (const [uri, table] of this.#files) draft.#files.set(uri, table.copy());
    return draft;
  }

  apply(edits: readonly Edit[]): void {
    for (const uri of new Set(edits.map((edit) => edit.uri))) {
      this.#tableOf(uri).apply(edits.filter((edit) => edit.uri === uri));
    }
  }

  texts(): ReadonlyMap<Uri, string> {
    return new Map([...this.#files].map(([uri, table]) => [uri, table.text]));
  }

  textsWith(edits: readonly Edit[]): ReadonlyMap<Uri, string> {
    const texts = new Map(this.texts());
    for (const uri of new Set(edits.map((edit) => edit.uri))) {
      const table = new PieceTable(this.#tableOf(uri).text);
      table.apply(edits.filter((edit) => edit.uri === uri));
      texts.set(uri, table.text);
    }
    return texts;
  }

  /** Relative to the plan's own text. */
  edits(): readonly Edit[] {
    return [...this.#files].flatMap(([uri, table]) => {
      const text = this.#plan.textOf(uri);
      const version = this.#plan.snapshot.get(uri);
      if (text === undefined || version === undefined) return [];
      return table
        .edits()
        .map((edit) => ({ uri, version, expected: text.slice(edit.start, edit.end), ...edit }));
    });
  }

  #tableOf(uri: Uri): PieceTable {
    let table = this.#files.get(uri);
    if (!table) {
      table = new PieceTable(this.#plan.textOf(uri) ?? "");
      this.#files.set(uri, table);
    }
    return table;
  }
}

interface Repair {
  readonly key: string;
  readonly finding: Finding;
  readonly fix: PlacedFix;
  readonly changes: ProposedFix["changes"];
}

/**
 * The repairs of one round: at most one for each circuit, cable or part; no two edits overlap. None that waits while there is one
 * of an earlier stage, and one alone if it changes conductors on which other devices are. Independent of the order of the findings.
 */
function repairsFor(
  plan: LocatedPlan,
  givenUp: ReadonlySet<string>,
  options: FixAllOptions,
): readonly Repair[] {
  const found = openIn(plan.judgement.findings).toSorted(bySubject);
  for (const stage of stages) {
    const round = roundOf(
      plan,
      found.filter(({ rule }) => ruleById(rule)?.repairsWait === stage),
      givenUp,
      options,
    );
    if (round.length > 0) return round;
  }
  return [];
}

/** In the order in which repairs are taken. */
const stages = [undefined, "for devices", "for conductors"] as const;

function roundOf(
  plan: LocatedPlan,
  findings: readonly Finding[],
  givenUp: ReadonlySet<string>,
  options: FixAllOptions,
): readonly Repair[] {
  const repairs: Repair[] = [];
  const records = new Set<number>();
  const taken = new TakenEdits();
  for (const finding of findings) {
    if (!("record" in finding.at) || records.has(finding.at.record)) continue;
    for (const proposed of inOrderOf(finding.fixes, options)) {
      const key = `${keyOf(finding)}\n${proposed.title}`;
      if (!isTaken(proposed, options) || givenUp.has(key)) continue;
      const fix = plan.editsOf(proposed);
      if (!fix || fix.alsoChanges.length > 0 || fix.edits.length === 0) continue;
      const repair = { key, finding, fix, changes: proposed.changes };
      // The plan is checked again before the next one: it may have become needless.
      if (proposed.otherDevices !== undefined) return [repair];
      // Another way out would be a different repair; this one waits for the next round.
      if (proposed.changes.some(({ record }) => records.has(record))) break;
      if (overlap([...fix.edits, ...taken.near(fix.edits)])) break;
      repairs.push(repair);
      taken.add(fix.edits);
      for (const { record } of [finding.at, ...proposed.changes]) records.add(record);
      break;
    }
  }
  return repairs;
}

/** Offers take the least copper: where they are wanted, they come first. */
function inOrderOf(fixes: readonly ProposedFix[], { offers }: FixAllOptions): readonly ProposedFix[] {
  const isOffer = ({ otherDevices }: ProposedFix) => otherDevices !== undefined;
  return offers ? [...fixes.filter(isOffer), ...fixes.filter((fix) => !isOffer(fix))] : fixes;
}

function isTaken({ kind, otherDevices, changes }: ProposedFix, options: FixAllOptions): boolean {
  if (kind !== "repair" && !(options.offers && otherDevices !== undefined)) return false;
  return !options.oneRecordEach || new Set(changes.map(({ record }) => record)).size === 1;
}

/** Not by record: that follows from the order of the plan's statements. */
function bySubject(one: Finding, other: Finding): number {
  const text = ({ subject, rule, at }: Finding) =>
    `${subject}\n${rule}\n${"record" in at ? at.path.join(".") : at.problem}`;
  const shared = ({ fixes }: Finding) => Math.max(0, ...fixes.map(({ otherDevices = 0 }) => otherDevices));
  const [first, second] = [text(one), text(other)];
  return shared(other) - shared(one) || (first < second ? -1 : first > second ? 1 : 0);
}

/** Findings that the builder did not accept. */
function openIn(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(({ accepted, severity }) => accepted === undefined && severity !== "hint");
}

/** Edits by stretches of their files: only those that could touch are compared. */
class TakenEdits {
  readonly #stretches = new Map<string, Edit[]>();

  add(edits: readonly Edit[]): void {
    for (const edit of edits) {
      for (const stretch of stretchesOf(edit)) {
        const there = this.#stretches.get(stretch);
        if (there) there.push(edit);
        else this.#stretches.set(stretch, [edit]);
      }
    }
  }

  near(edits: readonly Edit[]): readonly Edit[] {
    const near = new Set<Edit>();
    for (const edit of edits) {
      for (const stretch of stretchesOf(edit)) {
        for (const other of this.#stretches.get(stretch) ?? []) {
          if (edit.start <= other.end && other.start <= edit.end) near.add(other);
        }
      }
    }
    return [...near];
  }
}

/** Names of the stretches that an edit touches, including both of its ends. */
function stretchesOf({ uri, start, end }: Edit): readonly string[] {
  const first = Math.floor(start / stretchLength);
  const last = Math.floor(end / stretchLength);
  return Array.from({ length: last - first + 1 }, (_, index) => `${first + index} ${uri}`);
}

const stretchLength = 256;

interface PossibleFix {
  readonly fix: PlacedFix;
  readonly proposed: ProposedFix;
}

function possibleFixes(plan: LocatedPlan, findings: readonly Finding[]): readonly PossibleFix[] {
  const fixes = new Map<string, PossibleFix>();
  for (const proposed of findings
    .flatMap((finding) => [...finding.fixes, ...askedAnswer(finding).fixes].slice(0, mostFixes))
    .slice(0, 3 * mostFixes)) {
    const fix = plan.editsOf(proposed);
    if (!fix || fix.edits.length === 0) continue;
    const key = JSON.stringify(fix.edits.map(({ uri, start, end, newText }) => [uri, start, end, newText]));
    if (!fixes.has(key)) fixes.set(key, { fix, proposed });
  }
  return [...fixes.values()];
}

const mostFixes = 8;

/** The input of each record; empty if the plan was not run. */
function givenIn(plan: CheckOutcome): readonly Given[] {
  return (plan as LocatedPlan).traced.outcome.records;
}

/** A fix that turns out to change other circuits becomes a suggestion for the builder to choose, as if the text had shown it. */
function alsoChanging(fix: PlacedFix, others: readonly number[]): PlacedFix {
  const alsoChanges = [...new Set([...fix.alsoChanges, ...others])].sort((a, b) => a - b);
  return alsoChanges.length > fix.alsoChanges.length ? { ...fix, kind: "suggestion", alsoChanges } : fix;
}

/**
 * True if no circuit, cable or part has gone or lost its current, every scenario solved before is still solved, and no error or
 * warning is new or worse. Information does not count, nor a warning of an interrupting rating: thicker conductors increase a fault
 * current, and a fuse may then state too little. Where a collapse of the voltage ends, currents and drops are judged for the first time: findings then are not new.
 */
function addsNothing(before: LocatedPlan, after: CheckOutcome & { readonly state: "checked" }): boolean {
  const [had, has] = [before.judgement, after.judgement];
  const fewer = withKnownCurrent(has.circuits).length < withKnownCurrent(had.circuits).length;
  if (fewer || has.problems.length > had.problems.length) return false;
  if (!keepsNetwork(had, has)) return false;
  const known = keysOf(before.judgement.findings);
  const now = keysOf(after.judgement.findings);
  const endsCollapse = [...known.keys()].some((key) => key.startsWith("voltage/collapse\n") && !now.has(key));
  for (const [key, severity] of now) {
    if (severity === "hint" || severity === "info") continue;
    const was = known.get(key);
    if (was === undefined && (endsCollapse || (severity === "warning" && isOfFaultCurrent(key)))) continue;
    if (was === undefined || severityOrder[severity] < severityOrder[was]) return false;
  }
  return true;
}

function isOfFaultCurrent(key: string): boolean {
  return key.startsWith("protection/interrupting\n");
}

function keepsNetwork({ network: had, model }: Judgement, { network: has, model: now }: Judgement): boolean {
  if (now.networkUnread && !model.networkUnread) return false;
  if (!had) return true;
  if (!has) return false;
  const solved = ({ result }: JudgedNetwork, index: number) => result.scenarios[index]?.state === "solved";
  return (
    has.network.parts.length >= had.network.parts.length &&
    has.network.conductors.length >= had.network.conductors.length &&
    had.network.scenarios.every((_, index) => !solved(had, index) || solved(has, index))
  );
}

function bestFirst(a: PlacedFix, b: PlacedFix): number {
  const rank = (fix: PlacedFix) => (fix.kind === "repair" ? 0 : 1);
  return rank(a) - rank(b) || a.alsoChanges.length - b.alsoChanges.length;
}
