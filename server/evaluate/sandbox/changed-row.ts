import type { IndependentRow } from "../instrument/independent-rows.ts";
import { changedRange } from "../text/changed-range.ts";
import type { RawRecord, RunModule, RunOutcome, RunRequest } from "./contract.ts";

/** The row of a module's list that contains a range of its JavaScript, if the run shows the result of that row alone. */
export type FindRow = (
  uri: string,
  range: { readonly start: number; readonly end: number },
) => IndependentRow | undefined;

/** A run with one row of a list alone. */
export interface RowRun {
  readonly row: IndependentRow;
  readonly request: RunRequest;
}

/** The run that shows all differences from the last one; undefined if more than one row was changed. */
export function runOfChangedRow(before: RunRequest, now: RunRequest, findRow: FindRow): RowRun | undefined {
  const changed = now.modules.filter(({ js }, index) => js !== before.modules[index]?.js);
  const [module] = changed;
  const old = before.modules.find(({ uri }) => uri === module?.uri);
  if (!module || !old || changed.length > 1) return undefined;
  const range = changedRange(old.js, module.js);
  const parts = [old.js.slice(range.start, range.endBefore), module.js.slice(range.start, range.endAfter)];
  if (parts.some((part) => delimiter.test(part))) return undefined;
  const row = findRow(module.uri, { start: range.start, end: range.endAfter });
  if (!row) return undefined;
  const alone = (one: RunModule) => (one === module ? { ...one, js: row.js } : one);
  return { row, request: { ...now, modules: now.modules.map(alone) } };
}

/** Without these characters, a change leaves all rows, texts and comments where they are. */
const delimiter = /[()[\]{}"'`\\/*\n\r\u2028\u2029]/;

/**
 * The outcome of the last run with one row's records as they are in the run of that row alone. Undefined if the row was made by
 * other calls or of other objects this time, or if it ended early.
 */
export function withRow({ row }: RowRun, before: RunOutcome, alone: RunOutcome): RunOutcome | undefined {
  if (alone.end !== "whole") return undefined;
  const records = [...before.records];
  for (const site of row.callSites) {
    const [made, ...more] = recordsOf(site, alone);
    const all = recordsOf(site, before);
    const at = all[row.index];
    const old = at === undefined ? undefined : before.records[at];
    const now = made === undefined ? undefined : alone.records[made];
    if (!old || !now || at === undefined || more.length > 0 || all.length !== row.count) return undefined;
    if (!isMadeAlike(old, before, now, alone)) return undefined;
    records[at] = { ...now, call: old.call, allocations: old.allocations };
  }
  return { ...before, records };
}

/** The records made within calls of a site, in order: one for each call. */
function recordsOf(site: number, { records, calls }: RunOutcome): readonly number[] {
  const within = new Set<number>();
  const found: number[] = [];
  for (const [index, record] of records.entries()) {
    let call = record.call;
    while (call >= 0 && calls[call]?.callSite !== site) call = calls[call]?.within ?? -1;
    if (call < 0) continue;
    // A further record of the same row: no row can be found by its number.
    if (within.has(call)) return [];
    within.add(call);
    found.push(index);
  }
  return found;
}

/** True if two records of different runs were made by the same calls, of objects with the same allocations. */
function isMadeAlike(one: RawRecord, ofOne: RunOutcome, other: RawRecord, ofOther: RunOutcome): boolean {
  const sameCall = (first: number, second: number): boolean => {
    const [a, b] = [ofOne.calls[first], ofOther.calls[second]];
    if (!a || !b) return a === b;
    return a.callSite === b.callSite && sameCall(a.within, b.within) && sameAll(a.seen, b.seen);
  };
  const sameAllocation = (first: number, second: number): boolean => {
    const [a, b] = [ofOne.allocations[first], ofOther.allocations[second]];
    if (!a || !b) return a === b;
    return a.literal === b.literal && sameCall(a.call, b.call) && sameAll(a.seen, b.seen);
  };
  const sameAll = (first: readonly number[], second: readonly number[]) =>
    first.length === second.length && first.every((index, at) => sameAllocation(index, second[at] ?? -1));
  const paths = Object.keys(one.allocations);
  return (
    one.word === other.word &&
    sameCall(one.call, other.call) &&
    paths.length === Object.keys(other.allocations).length &&
    paths.every((path) => sameAllocation(one.allocations[path] ?? -1, other.allocations[path] ?? -1))
  );
}
