import { isDeepStrictEqual } from "node:util";
import { describe, it } from "vitest";
import { testWorld } from "../analysis/energy/world.tester.ts";
import { judge } from "../judge.ts";
import type { PropertyPath } from "../model/plain-values.ts";
import type { PlanProblem, PlanRecord } from "../model/record.ts";
import { askedAnswer } from "./asked-answer.ts";
import type { At, Finding, ProposedFix, Severity } from "./finding.ts";
import { type ExampleRun, runExample } from "./page.tester.ts";
import type { Rule } from "./rule.ts";

/**
 * Runs the table of cases of one rule through the whole engine, and proves every proposed fix by applying it and judging again:
 * after a repair the finding is gone and there is no new one, from this rule or any other.
 *
 * A table is refused if it repeats a case, if a case asserts nothing, or if it shows only one side of the limit.
 */
export function testRule(rule: Rule<unknown>, cases: readonly RuleCase[]): void {
  describe(rule.id, () => {
    it("has a sound table of cases", () => complain(faultsOfTable(rule, cases)));
    for (const one of cases) it(one.name, () => complain(faultsOfCase(rule, one)));
  });
}

/** One row: a plan, and this rule's findings in it. */
export interface RuleCase {
  /** The special point of the plan, in a builder's words. */
  readonly name: string;
  /** The plan's circuits: each a change from {@link goodCircuit}; `undefined` removes a property. */
  readonly circuits?: readonly Input[];
  readonly build?: Input;
  /** The plan as code instead, in plain JavaScript without its import: `const house = battery({ … }); …`. */
  readonly plan?: string;
  /** The problems that stopped the plan, for rules about plans that could not run. */
  readonly problems?: readonly PlanProblem[];
  /** "nothing", or the findings of this rule, in order. Findings of other rules are ignored here. */
  readonly finds: "nothing" | readonly ExpectedFinding[];
}

interface ExpectedFinding {
  /** The circuit's name; if left out, the only circuit's. */
  readonly subject?: string;
  /** The record of the finding, by its name (that of its variable, if it states none) or its number; any if left out. */
  readonly record?: string | number;
  /** The property of the finding, as a plan writes it: "gauge", "protect.ratingA", "" for the whole argument. */
  readonly on: string;
  /** The rule's own severity if left out. */
  readonly severity?: Severity;
  /** The message, or its beginning. */
  readonly message: string;
  /** Some or all of the values behind the message. */
  readonly values?: Readonly<Record<string, unknown>>;
  /** The title of each fix, and the circuit's properties after it; in order. */
  readonly fixes: "no fix" | readonly ExpectedFix[];
  /** The builder's reason, if the plan accepts the finding. */
  readonly accepted?: string;
}

interface ExpectedFix {
  readonly title: string;
  /** A repair if left out. */
  readonly kind?: ProposedFix["kind"];
  /**
   * Properties after the fix, by path: `{ gauge: 6, "protect.ratingA": 60 }`; `undefined` for one that is gone. They are those of
   * the finding's record, or of the one that is named: `{ "feed cable": { gauge: 2 } }`.
   */
  readonly gives: Readonly<Record<string, unknown>>;
}

export type Input = Readonly<Record<string, unknown>>;

/** In order with every rule: 4 AWG at the column of its stated insulation carries 40 A over 15 ft behind 50 A. */
export const goodCircuit: Input = {
  name: "Heater",
  load: 40,
  oneWayFt: 15,
  gauge: 4,
  protect: 50,
  insulationC: 75,
};

/** The faults of a table as a table. Empty if there are none. */
export function faultsOfTable(rule: Rule<unknown>, cases: readonly RuleCase[]): string[] {
  const faults: string[] = [];
  // Each plan runs once, not once for every pair: a run makes a realm of its own.
  const plans = cases.map(ranOf);
  cases.forEach((one, index) => {
    const earlier = cases.slice(0, index);
    if (earlier.some((other) => other.name === one.name)) faults.push(`two cases are called "${one.name}"`);
    const twin = earlier.find((_, other) => isDeepStrictEqual(plans[other], plans[index]));
    if (twin) faults.push(`"${one.name}" repeats the plan of "${twin.name}"`);
    if (one.finds !== "nothing" && one.finds.length === 0) faults.push(`"${one.name}" asserts nothing`);
    if (one.finds !== "nothing" && one.finds.some(({ message }) => message.trim() === ""))
      faults.push(`"${one.name}" expects an empty message, which every message starts with`);
  });
  if (!cases.some(({ finds }) => finds === "nothing")) faults.push(`no case lets ${rule.id} pass`);
  if (!cases.some(({ finds }) => finds !== "nothing")) faults.push(`no case makes ${rule.id} speak`);
  return faults;
}

/** The differences between a case's expectations and the engine's results. Empty if there are none. */
export function faultsOfCase(rule: Rule<unknown>, one: RuleCase): string[] {
  const { records, problems } = ranOf(one);
  const before = judge(records, problems, undefined, testWorld).findings;
  const found = before.filter((finding) => finding.rule === rule.id);
  const expected = one.finds === "nothing" ? [] : one.finds;
  const faults = problems
    .filter(() => one.plan !== undefined && !rule.id.startsWith("plan/"))
    .map((problem) => `the plan stopped: ${inWords(problem)}`);
  for (let i = 0; i < Math.max(found.length, expected.length); i++) {
    const [got, wanted] = [found[i], expected[i]];
    if (!got) faults.push(`missed: "${wanted?.message}"`);
    else if (!wanted) faults.push(`not expected: "${rule.message(got.values)}" on ${placeInWords(got.at)}`);
    else {
      faults.push(...differences(rule, got, wanted, records));
      for (const fix of fixesOf(got)) faults.push(...faultsOfFix(fix, got, { records, problems, before }));
    }
  }
  return faults;
}

/** The records and problems of a case's plan. */
function ranOf(one: RuleCase): ExampleRun {
  if (one.plan === undefined) return { records: recordsOf(one), problems: one.problems ?? [] };
  const { records, problems } = runExample(one.plan);
  return { records, problems: one.problems ?? problems };
}

/** The records of circuits that are written as changes from the good one. */
export function recordsOf({ build, circuits = [{}] }: Pick<RuleCase, "build" | "circuits">): PlanRecord[] {
  return [
    ...(build ? [{ word: "build" as const, input: build, fallbackName: "build" }] : []),
    ...circuits.map((change, index) => ({
      word: "circuit" as const,
      input: withoutUndefined({ ...goodCircuit, ...change }),
      fallbackName: `plan.ts line ${index + 1}`,
    })),
  ];
}

/** Those that it has at once, and those that it works out when somebody asks. */
function fixesOf(finding: Finding): readonly ProposedFix[] {
  return [...finding.fixes, ...askedAnswer(finding).fixes];
}

/** The records after every change of a fix. */
export function applyFix(records: readonly PlanRecord[], fix: ProposedFix): PlanRecord[] {
  const inputs = records.map(({ input }) => structuredClone(input)) as Record<string, unknown>[];
  for (const change of fix.changes) {
    const path = change.path;
    const last = path.at(-1);
    if (last === undefined) throw new Error(`"${fix.title}" changes a whole argument, not a property`);
    const holder = holderOf(inputs[change.record], path);
    if (change.do === "set") holder[last] = change.value;
    else if (change.do === "remove") delete holder[last];
    else {
      holder[change.to] = holder[last];
      delete holder[last];
    }
  }
  return records.map((record, index) => ({ ...record, input: inputs[index] }));
}

function complain(faults: readonly string[]): void {
  if (faults.length > 0) throw new Error(faults.join("\n"));
}

function differences(
  rule: Rule<unknown>,
  got: Finding,
  wanted: ExpectedFinding,
  records: readonly PlanRecord[],
): string[] {
  const faults: string[] = [];
  const compare = (what: string, is: unknown, should: unknown) => {
    if (!isDeepStrictEqual(is, should)) faults.push(`${what} is ${inWords(is)}, expected ${inWords(should)}`);
  };
  if (wanted.subject !== undefined) compare("subject", got.subject, wanted.subject);
  const record = "record" in got.at ? got.at.record : 0;
  if (typeof wanted.record === "number") compare("record", record, wanted.record);
  else if (wanted.record !== undefined) compare("record", nameOf(records[record]), wanted.record);
  compare("place", placeInWords(got.at), wanted.on);
  compare("severity", got.severity, wanted.severity ?? rule.severity);
  compare("accepted", got.accepted, wanted.accepted);
  const message = rule.message(got.values);
  if (!message.startsWith(wanted.message))
    faults.push(`message is "${message}", expected "${wanted.message}"`);
  const values = got.values as Readonly<Record<string, unknown>>;
  for (const [name, value] of Object.entries(wanted.values ?? {}))
    compare(`value ${name}`, values[name], value);
  const fixes = wanted.fixes === "no fix" ? [] : wanted.fixes;
  compare(
    "fixes",
    fixesOf(got).map(({ title, kind }) => `${title} (${kind})`),
    fixes.map(({ title, kind = "repair" }) => `${title} (${kind})`),
  );
  fixesOf(got).forEach((fix, index) => {
    const after = applyFix(records, fix);
    const compareAll = (input: unknown, gives: object, of: string) => {
      for (const [path, value] of Object.entries(gives))
        compare(`${of}${path} after "${fix.title}"`, valueAt(input, path.split(".")), value);
    };
    for (const [key, value] of Object.entries(fixes[index]?.gives ?? {})) {
      const named = after.filter((one) => nameOf(one) === key);
      if (named.length > 1) faults.push(`"${key}" names ${named.length} records of the plan`);
      const [one] = named;
      if (one && typeof value === "object" && value !== null) compareAll(one.input, value, `${key}: `);
      else compareAll(after[record]?.input, { [key]: value }, "");
    }
  });
  return faults;
}

export interface Proof {
  readonly records: readonly PlanRecord[];
  readonly problems: readonly PlanProblem[];
  readonly before: readonly Finding[];
}

/**
 * The faults of a fix that is applied and judged again. Empty if there are none. A suggestion may bring new findings, because the
 * builder decides; but the plan must still be one that can be judged.
 */
export function faultsOfFix(
  fix: ProposedFix,
  finding: Finding,
  { records, problems, before }: Proof,
): string[] {
  const after = judge(applyFix(records, fix), problems, undefined, testWorld).findings;
  if (fix.kind === "suggestion") {
    const refused = (findings: readonly Finding[]) =>
      findings.filter(({ rule }) => rule === "plan/invalid-value").length;
    return refused(after) > refused(before) ? [`after "${fix.title}" the plan cannot be judged`] : [];
  }
  const faults = after
    // As in the proof of a fix: new information does not refuse it.
    .filter((now) => now.severity !== "info" && !before.some((then) => sameComplaint(then, now)))
    .map((now) => `"${fix.title}" brings ${now.rule} (${now.severity}) on ${placeInWords(now.at)}`);
  if (
    after.some(
      (now) => now.rule === finding.rule && now.subject === finding.subject && samePlace(now, finding),
    )
  )
    faults.push(`the finding is still there after "${fix.title}"`);
  return faults;
}

/** A finding that got worse is a new one. */
function sameComplaint(then: Finding, now: Finding): boolean {
  const worse = severities.indexOf(now.severity) < severities.indexOf(then.severity);
  return then.rule === now.rule && then.subject === now.subject && samePlace(then, now) && !worse;
}

const severities: readonly Severity[] = ["error", "warning", "info", "hint"];

function samePlace(one: Finding, other: Finding): boolean {
  return isDeepStrictEqual(one.at, other.at);
}

/** The name in the plan, else that of its variable. */
function nameOf(record: PlanRecord | undefined): string | undefined {
  const { name } = (record?.input ?? {}) as { readonly name?: unknown };
  return typeof name === "string" ? name : record?.fallbackName;
}

function placeInWords(at: At): string {
  return "record" in at ? at.path.join(".") : `problem ${at.problem}`;
}

function holderOf(input: Record<string, unknown> | undefined, path: PropertyPath): Record<string, unknown> {
  let holder = input;
  for (const key of path.slice(0, -1)) {
    const inner = holder?.[key];
    if (typeof inner !== "object" || inner === null)
      throw new Error(`a fix sets ${path.join(".")}, but ${key} is not an object in the plan`);
    holder = inner as Record<string, unknown>;
  }
  if (!holder) throw new Error("a fix changes a record that is not there");
  return holder;
}

function valueAt(input: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], input);
}

function withoutUndefined(input: Input): Input {
  return Object.fromEntries(Object.entries(input).filter(([, value]) => value !== undefined));
}

function inWords(value: unknown): string {
  return typeof value === "string" ? `"${value}"` : (JSON.stringify(value) ?? "absent");
}
