import { cooler } from "./coolest-terminal.ts";
import type { NetworkTerminal } from "./network.ts";
import type { Run } from "./run.ts";

/** A run with the coolest of the terminals where its conductors end: the same object for the same run and terminal. */
export function withTerminals<R extends Run>(
  run: R,
  ends: readonly number[],
  {
    terminals,
    parts,
  }: {
    readonly terminals: readonly NetworkTerminal[];
    readonly parts: readonly { readonly name: string }[];
  },
): R {
  const coolestTerminal = ends.reduce((coolest, end) => {
    const { ratedC, part } = terminals[end]!;
    return ratedC === undefined ? coolest : cooler(coolest, { ratedC, of: parts[part]!.name });
  }, run.coolestTerminal);
  if (!coolestTerminal || coolestTerminal === run.coolestTerminal) return run;
  const before = madeBefore.get(run);
  const { ratedC, of } = before?.coolestTerminal ?? {};
  if (ratedC === coolestTerminal.ratedC && of === coolestTerminal.of) return before as R;
  const made = { ...run, coolestTerminal };
  madeBefore.set(run, made);
  return made;
}

/** A run that an edit elsewhere leaves as it was stays the same object. */
const madeBefore = new WeakMap<Run, Run>();
