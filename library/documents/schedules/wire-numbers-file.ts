import type { KeptNumber, KeptNumbers, NumbersProblem } from "./kept-numbers.ts";
import { identityInFile, readIdentity } from "./wire-identity.ts";
import { canBeKept, type NumberedWires } from "./wire-numbers.ts";

/** The file for the numbers of a plan: `…/bus.ts` → `…/bus.wire-numbers.txt`. */
export function wireNumbersFile(rootUri: string): string {
  return `${rootUri.replace(/\.[cm]?[jt]sx?$/i, "")}.wire-numbers.txt`;
}

/** Reads the output of {@link writeWireNumbers}, with all later changes by people and git. Undefined: there is none yet. */
export function readWireNumbers(text: string | undefined): KeptNumbers {
  const numbers: KeptNumber[] = [];
  const problems: NumbersProblem[] = [];
  let comments: string[] = [];
  (text ?? "").split(/\r?\n/).forEach((written, index) => {
    const line = index + 1;
    const trimmed = written.trim();
    if (trimmed === "" || header.includes(trimmed)) return;
    if (trimmed.startsWith("#")) {
      comments.push(trimmed);
      return;
    }
    const read = readLine(trimmed);
    if (typeof read === "string") problems.push({ line, text: read });
    else numbers.push({ ...read, line, comments });
    comments = [];
  });
  return { numbers: withoutRepeats(numbers), trailing: comments, problems };
}

/** The whole file with these numbers in it, ending in a line break. Not for a file with problems: see {@link KeptNumbers.problems}. */
export function writeWireNumbers({ wires, retired }: NumberedWires, kept: KeptNumbers): string {
  const lines = [
    ...wires
      .filter(({ identity }) => canBeKept(identity))
      .map(({ number, identity, before }) => ({
        number,
        identity,
        retired: false,
        comments: before?.comments ?? [],
      })),
    ...[...retired, ...kept.numbers.filter((line) => line.retired)].map((line) => ({
      ...line,
      retired: true,
    })),
  ].sort(inOrder);
  return [
    ...header,
    ...lines.flatMap(({ comments, number, identity, retired: isGone }) => [
      ...comments,
      `${identityInFile(identity)} = ${number}${isGone ? " retired" : ""}`,
    ]),
    ...kept.trailing,
    "",
  ].join("\n");
}

const header: readonly string[] = [
  "# Wire numbers of this plan, a line a conductor, written by: loomwright number",
  "# Keep this file in version control beside the plan. A number is given once and never again:",
  "# one whose conductor is gone is marked retired, because its label may still be on a wire.",
];

function readLine(text: string): Pick<KeptNumber, "number" | "retired" | "identity"> | string {
  if (/^(<{7}|\|{7}|={7}|>{7})(?: |$)/.test(text))
    return "This is a conflict that git left behind. Keep the lines of both sides, take out the marks, and run the command again.";
  const match = /^(?<what>.*) = (?<number>[1-9]\d{0,14})(?<retired> retired)?$/su.exec(text);
  const identity = match && readIdentity(match.groups!.what!);
  if (!match || !identity)
    return 'This is not a wire number. A line reads: "name" positive: "part" terminal to its load = 12';
  return { number: Number(match.groups!.number), retired: match.groups!.retired !== undefined, identity };
}

/** A merge that keeps the lines of both sides may repeat a line. */
function withoutRepeats(numbers: readonly KeptNumber[]): KeptNumber[] {
  const seen = new Map<string, number>();
  const all: KeptNumber[] = [];
  for (const one of numbers) {
    const key = `${identityInFile(one.identity)} = ${one.number}`;
    const first = seen.get(key);
    if (first === undefined) {
      seen.set(key, all.length);
      all.push(one);
    } else {
      const { retired, comments, ...rest } = all[first]!;
      const more = one.comments.filter((comment) => !comments.includes(comment));
      all[first] = { ...rest, retired: retired && one.retired, comments: [...comments, ...more] };
    }
  }
  return all;
}

/** By code point: every machine sorts alike. */
function inOrder(
  one: Pick<KeptNumber, "identity" | "number">,
  other: Pick<KeptNumber, "identity" | "number">,
): number {
  const keys = [one, other].map(({ identity }) => identityInFile(identity)) as [string, string];
  if (keys[0] !== keys[1]) return keys[0] < keys[1] ? -1 : 1;
  return one.number - other.number;
}
