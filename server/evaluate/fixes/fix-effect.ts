import type { PlanRecord } from "../../../library/model/record.ts";
import { type Change, isNamedInPlan, type Settable } from "../../../library/rules/finding.ts";

/** The DSL function of a record and its input, as the run left them. */
export type Given = Pick<PlanRecord, "word" | "input">;

/**
 * The side effects of some changes on a plan, found by comparing its records before and after: the other records that also
 * changed, each only in the properties that the changes name. Undefined if anything else has changed: a constant that sets a
 * size may set a length as well, and a finding may be gone because a load has become smaller.
 */
export function otherRecordsChanged(
  changes: readonly Change[],
  before: readonly Given[],
  after: readonly Given[],
): readonly number[] | undefined {
  if (before.length !== after.length) return undefined;
  const named = new Set(
    changes.flatMap((change) => [change.path[0], ...(change.do === "rename" ? [change.to] : [])]),
  );
  const others: number[] = [];
  for (const [record, { word, input }] of before.entries()) {
    const now = after[record];
    if (now?.word !== word) return undefined;
    const own = changes.filter((change) => change.record === record);
    if (own.length > 0) {
      if (!sameData(own.reduce(changed, input), now.input)) return undefined;
    } else if (!sameData(input, now.input)) {
      if (!propertiesThatDiffer(input, now.input).every((property) => named.has(property))) return undefined;
      others.push(record);
    }
  }
  return others;
}

/** The input of a record with one change made to it. */
export function changed(input: unknown, change: Change): unknown {
  const [property, ...inner] = change.path;
  if (property === undefined || !isObject(input)) return input;
  if (Array.isArray(input)) {
    return input.map((each, index) => {
      if (String(index) !== property) return each;
      return inner.length > 0
        ? changed(each, { ...change, path: inner })
        : change.do === "set"
          ? asRecorded(change.value)
          : each;
    });
  }
  const { [property]: old, ...rest } = input;
  if (inner.length > 0) return { ...rest, [property]: changed(old, { ...change, path: inner }) };
  if (change.do === "set") return { ...rest, [property]: asRecorded(change.value) };
  return change.do === "remove" ? rest : { ...rest, [change.to]: old };
}

/** A record has a reference in the place of a name. */
function asRecorded(value: Settable): unknown {
  if (typeof value !== "object") return value;
  if (isNamedInPlan(value)) return value.reference;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, asRecorded(inner)]));
}

function propertiesThatDiffer(one: unknown, other: unknown): readonly string[] {
  const [first, second] = [isObject(one) ? one : {}, isObject(other) ? other : {}];
  return [...new Set([...Object.keys(first), ...Object.keys(second)])].filter(
    (property) => !sameData(first[property], second[property]),
  );
}

/** True for plain data with the same content. A property that is undefined equals a missing one. */
function sameData(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (!isObject(one) || !isObject(other) || Array.isArray(one) !== Array.isArray(other)) return false;
  return propertiesThatDiffer(one, other).length === 0;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null;
}
