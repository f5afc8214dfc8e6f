import type { Network, ShuntPart } from "../../model/network.ts";
import { type Link, linksOf, piecesOf, reachedFrom, type Step } from "./joined.ts";
import type { Bank } from "./topology.ts";
import { twoPolesOf } from "./two-poles.ts";

/** A conductor that leads from a bank's own pole to something else, without its current passing the shunt. */
export interface Bypass {
  readonly shunt: ShuntPart;
  readonly conductor: number;
  /** The terminal at which it leaves the way between bank and shunt. */
  readonly leavesAt: number;
  /** Parts that feed or draw behind it, indices; none where it only leads round the shunt. */
  readonly parts: readonly number[];
}

/**
 * What the shunts at the banks do not measure. What lies between a bank's poles and a shunt's battery side is the shunt's own
 * way; every conductor that leaves that way and leads to something that feeds or draws, or to the shunt's other side, goes
 * past it. A few walks for each shunt, over what hangs on its battery side and no further.
 */
export function bypassesOf(network: Network, banks: readonly Bank[]): readonly Bypass[] {
  const shunts = network.parts.filter((part) => part.kind === "shunt");
  return shunts.length === 0 ? [] : shunts.flatMap((shunt) => pastShunt(network, banks, shunt));
}

function pastShunt(network: Network, banks: readonly Bank[], shunt: ShuntPart): Bypass[] {
  // Other shunts stop the walk too: what passes them is measured by them.
  const unmeasured = (link: Link) => link.part < 0 || network.parts[link.part]?.kind !== "shunt";
  const reached = reachedFrom(network, [shunt.terminals.batterySide], unmeasured);
  const nearest = [...nearestBanks(banks, reached)];
  // Without one it measures something else than a bank.
  if (nearest.length === 0) return [];
  const batteries = new Set(nearest.flatMap((bank) => bank.batteries));

  const way = new Set<number>();
  for (const pole of nearest.flatMap(({ positives, negatives }) => [...positives, ...negatives])) {
    for (let at: number | undefined = reached.has(pole) ? pole : undefined; at !== undefined; ) {
      if (way.has(at)) break;
      way.add(at);
      at = reached.get(at)?.from;
    }
  }

  // The usual case: on the battery side there is only the bank.
  if (way.size === reached.size) return [];

  const pieces = piecesOf(network, (link, from) => unmeasured(link) && !way.has(from) && !way.has(link.to));
  const behind = new Map<number, Set<number>>();
  const note = (terminal: number, part?: number) => {
    if (!reached.has(terminal) || way.has(terminal)) return;
    const piece = pieces[terminal] ?? -1;
    const parts = behind.get(piece) ?? new Set();
    behind.set(piece, part === undefined ? parts : parts.add(part));
  };
  note(shunt.terminals.systemSide);
  for (const { part, positive, negative } of network.parts.flatMap(twoPolesOf)) {
    if (batteries.has(part.index)) continue;
    note(positive, part.index);
    note(negative, part.index);
  }

  return [...way].flatMap((terminal) =>
    (linksOf(network)[terminal] ?? []).flatMap(({ to, conductor }): Bypass[] => {
      const parts = behind.get(pieces[to] ?? -1);
      return conductor < 0 || way.has(to) || !parts
        ? []
        : [{ shunt, conductor, leavesAt: terminal, parts: [...parts] }];
    }),
  );
}

/** Those whose poles are reached by the fewest steps; several where they hang on the shunt alike. */
function nearestBanks(
  banks: readonly Bank[],
  reached: ReadonlyMap<number, Step | undefined>,
): ReadonlySet<Bank> {
  const bankAt = new Map(
    banks.flatMap((bank) => [...bank.positives, ...bank.negatives].map((pole) => [pole, bank] as const)),
  );
  const nearest = new Set<Bank>();
  const steps = new Map<number, number>();
  let fewest = Number.POSITIVE_INFINITY;
  // A step's beginning stands in the walk before its end.
  for (const [terminal, step] of reached) {
    const count = step ? (steps.get(step.from) ?? 0) + 1 : 0;
    steps.set(terminal, count);
    if (count > fewest) break;
    const bank = bankAt.get(terminal);
    if (!bank) continue;
    nearest.add(bank);
    fewest = count;
  }
  return nearest;
}
