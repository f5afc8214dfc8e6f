import type { Counts } from "../server/language/messages.ts";

/**
 * "12 circuits, 2 errors, 1 warning", as the server words it for one plan; it lists findings only, and never claims that anything
 * is safe.
 */
export function countsInWords(counts: Counts): string {
  const kinds: [number, string, string][] = [
    [counts.errors, "error", "errors"],
    [counts.warnings, "warning", "warnings"],
    [counts.infos, "note", "notes"],
    [counts.hints, "hint", "hints"],
    [counts.accepted, "accepted", "accepted"],
  ];
  const found = kinds.filter(([count]) => count > 0).map(([count, one, many]) => numbered(count, one, many));
  const network = [
    counts.parts > 0 ? `, ${numbered(counts.parts, "part", "parts")}` : "",
    counts.cables > 0 ? `, ${numbered(counts.cables, "cable", "cables")}` : "",
  ].join("");
  return `${numbered(counts.circuits, "circuit", "circuits")}${network}, ${found.join(", ") || "no findings"}`;
}

/** "1 plan", "2 plans". */
export function numbered(count: number, one: string, many: string): string {
  return `${count.toLocaleString("en")} ${count === 1 ? one : many}`;
}

/** The sum over several plans. */
export function sumOf(all: readonly Counts[]): Counts {
  const sum = { circuits: 0, parts: 0, cables: 0, errors: 0, warnings: 0, infos: 0, hints: 0, accepted: 0 };
  for (const counts of all) {
    for (const key of Object.keys(sum) as (keyof Counts)[]) sum[key] += counts[key];
  }
  return sum;
}
