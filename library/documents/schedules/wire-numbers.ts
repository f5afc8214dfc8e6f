import { groupedBy } from "../../analysis/grouped-by.ts";
import type { KeptNumber, KeptNumbers } from "./kept-numbers.ts";
import {
  endsBeforeSplit,
  hasRealEnds,
  identityInFile,
  identityOf,
  nameAndEnds,
  type WireIdentity,
} from "./wire-identity.ts";
import type { Wire } from "./wires.ts";

/**
 * Gives every conductor its number. Kept numbers stay, even if others were added, removed, renamed or put in another order; the
 * rest get the next numbers above all that were ever given. The number of a conductor that is gone is retired: its label may
 * still be on a wire, so it is never given again.
 *
 * A conductor is recognised by name, role and ends, two that share them by size, length and protection; else by its name, if its ends have changed; else by its two terminals, if its
 * name has. It never guesses: if several could match, all get new numbers.
 */
export function numberWires(wires: readonly Wire[], kept: KeptNumbers): NumberedWires {
  const active = kept.numbers.filter(({ retired }) => !retired);
  const candidates = wires.map((wire): Candidate => ({ wire, identity: identityOf(wire) }));
  const matches = matchAll(candidates, active);
  const given = new Set<number>();
  let next = kept.numbers.reduce((most, { number }) => Math.max(most, number), 0) + 1;
  const twice: NumberedWires["twice"][number][] = [];
  // If two branches gave one number to two conductors, the first line of the file keeps it.
  const keepers = new Map<Candidate, KeptNumber>();
  const inOrderOfFile = [...matches].sort(([, one], [, other]) => one.line - other.line);
  for (const [candidate, line] of inOrderOfFile) {
    if (given.has(line.number)) continue;
    given.add(line.number);
    keepers.set(candidate, line);
  }
  const numbered = candidates.map((candidate): NumberedWire => {
    const { wire, identity } = candidate;
    const before = keepers.get(candidate);
    if (before) return { wire, identity, number: before.number, kept: true, before };
    const number = next++;
    const lost = matches.get(candidate);
    if (lost) twice.push({ wire, number, instead: lost.number });
    return { wire, identity, number, kept: false, before: undefined };
  });
  const matched = new Set(matches.values());
  const alike = groupedBy(numbered, ({ identity }) => nameAndEnds(identity));
  const withLikeOfTwins = numbered.map((one): NumberedWire => {
    if (alike.get(nameAndEnds(one.identity))!.length > 1) return one;
    const { like: _, ...identity } = one.identity;
    return { ...one, identity };
  });
  return { wires: withLikeOfTwins, retired: active.filter((line) => !matched.has(line)), twice };
}

export interface NumberedWires {
  /** In the order given. */
  readonly wires: readonly NumberedWire[];
  /** Lines of the file whose conductor is gone. */
  readonly retired: readonly KeptNumber[];
  /** Conductors that had the number of another one, as after a merge, and got a new one. */
  readonly twice: readonly { readonly wire: Wire; readonly number: number; readonly instead: number }[];
}

export interface NumberedWire {
  readonly wire: Wire;
  readonly identity: WireIdentity;
  readonly number: number;
  /** False: the file does not have it yet, and another plan may change it before it does. */
  readonly kept: boolean;
  /** The line of the file that its number comes from. */
  readonly before: KeptNumber | undefined;
}

/** A number can be kept by a name of its own, or by two terminals. */
export function canBeKept(identity: WireIdentity): boolean {
  return identity.name !== undefined || hasRealEnds(identity);
}

interface Candidate {
  readonly wire: Wire;
  readonly identity: WireIdentity;
}

function matchAll(
  candidates: readonly Candidate[],
  lines: readonly KeptNumber[],
): ReadonlyMap<Candidate, KeptNumber> {
  const matches = new Map<Candidate, KeptNumber>();
  const free = {
    candidates: new Set(candidates.filter(({ identity }) => canBeKept(identity))),
    lines: new Set(lines),
  };
  const exact = ({ identity }: Identified) => identityInFile(identity);
  const whole = ({ identity }: Identified) => nameAndEnds(identity);
  const part = (keyOf: (identity: WireIdentity) => string | undefined) => (one: Identified) =>
    keyOf(one.identity);
  const steps: ((one: Identified) => string | undefined)[] = [
    exact,
    whole,
    part(({ name, role, from }) => name && `${name}\n${role}\n${from}`),
    part(({ name, role, to }) => name && `${name}\n${role}\n${to}`),
    part(({ name, role }) => name && `${name}\n${role}`),
    part((identity) => (hasRealEnds(identity) ? `${identity.from}\n${identity.to}` : undefined)),
  ];
  for (const keyOf of steps) {
    const linesByKey = groupedBy(free.lines, keyOf);
    for (const [key, found] of groupedBy(free.candidates, keyOf)) {
      const known = linesByKey.get(key) ?? [];
      if (keyOf !== exact && keyOf !== whole && !areInterchangeable(found, known)) continue;
      found.slice(0, known.length).forEach((candidate, index) => {
        matches.set(candidate, known[index]!);
        free.candidates.delete(candidate);
        free.lines.delete(known[index]!);
      });
    }
    if (keyOf === whole) matchSplit(matches, free);
  }
  return matches;
}

/** A part that was put into a conductor, such as a fuse holder or a relay, splits it: the piece towards the source keeps the number. */
function matchSplit(
  matches: Map<Candidate, KeptNumber>,
  free: { readonly candidates: Set<Candidate>; readonly lines: Set<KeptNumber> },
): void {
  const wires = [...free.candidates].map(({ wire }) => wire);
  if (!wires.some(({ from, to }) => from.inLine || to.inLine)) return;
  const linesByEnds = groupedBy(free.lines, ({ identity }) =>
    hasRealEnds(identity) ? [identity.from, identity.to].sort().join("\n") : undefined,
  );
  for (const candidate of [...free.candidates]) {
    const ends = endsBeforeSplit(candidate.wire, wires);
    const [line, another] = (ends && linesByEnds.get([...ends].sort().join("\n"))) ?? [];
    if (!line || another || !free.lines.has(line)) continue;
    matches.set(candidate, line);
    free.candidates.delete(candidate);
    free.lines.delete(line);
  }
}

interface Identified {
  readonly identity: WireIdentity;
}

/** One on each side, or equally many equal ones on each side: any assignment is right. */
function areInterchangeable(some: readonly Identified[], others: readonly Identified[]): boolean {
  return some.length === others.length && isOne(some) && isOne(others);
}

function isOne(all: readonly Identified[]): boolean {
  return new Set(all.map(({ identity }) => nameAndEnds(identity))).size === 1;
}
