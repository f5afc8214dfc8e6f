import { cooler } from "./coolest-terminal.ts";
import type { NetworkTerminal } from "./network.ts";
import type { Run, TerminalSize } from "./run.ts";

/**
 * A run with the coolest of the terminals where its conductors end, and with the largest conductors that they take: the same object for
 * the same run and terminals.
 */
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
  const sizes = ends.flatMap((end): readonly TerminalSize[] => {
    const { largest, part } = terminals[end]!;
    return largest ? [{ largest, of: parts[part]!.name }] : [];
  });
  if (coolestTerminal === run.coolestTerminal && sizes.length === 0) return run;
  const terminalSizes = [...(run.terminalSizes ?? []), ...sizes];
  const made: R = {
    ...run,
    ...(coolestTerminal && { coolestTerminal }),
    ...(terminalSizes.length > 0 && { terminalSizes }),
  };
  const before = madeBefore.get(run);
  if (before && keyOf(before) === keyOf(made)) return before as R;
  madeBefore.set(run, made);
  return made;
}

function keyOf({ coolestTerminal, terminalSizes }: Run): string {
  return JSON.stringify([coolestTerminal, terminalSizes]);
}

/** A run that an edit elsewhere leaves as it was stays the same object. */
const madeBefore = new WeakMap<Run, Run>();
