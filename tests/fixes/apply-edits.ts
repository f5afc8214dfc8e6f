import { expect } from "vitest";
import type { Edit } from "../../server/evaluate/checked-plan.ts";
import type { Uri } from "../../server/evaluate/workspace.ts";

/** The files after some edits; every edit must find the text it expects, and none may overlap another. */
export function applyEdits(files: ReadonlyMap<Uri, string>, edits: readonly Edit[]): Map<Uri, string> {
  const after = new Map(files);
  const ordered = [...edits].sort((a, b) => b.start - a.start || b.end - a.end);
  const reached = new Map<Uri, number>();
  for (const { uri, start, end, expected, newText } of ordered) {
    const text = after.get(uri);
    expect(files.get(uri)?.slice(start, end)).toBe(expected);
    expect(end).toBeLessThanOrEqual(reached.get(uri) ?? Number.POSITIVE_INFINITY);
    reached.set(uri, start);
    after.set(uri, `${text?.slice(0, start)}${newText}${text?.slice(end)}`);
  }
  return after;
}
