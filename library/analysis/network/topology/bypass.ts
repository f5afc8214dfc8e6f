import type { Network, ShuntPart } from "../../../model/network.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import {
  conductorsAt,
  type Edge,
  type NetworkGraph,
  networkGraph,
  reachedFrom,
  type Step,
} from "./network-graph.ts";
import type { Bank } from "./network-topology.ts";
import { portsOf } from "./ports.ts";
import { across } from "./spanning-forest.ts";

/** A conductor from a bank's own pole to another part, whose current does not pass the shunt. */
export interface Bypass {
  readonly shunt: ShuntPart;
  readonly conductor: number;
  /** The terminal at which it leaves the path between bank and shunt. */
  readonly leavesAt: number;
  /** Parts that feed or draw behind it, indices; empty if it only leads round the shunt. */
  readonly parts: readonly number[];
}

/**
 * Currents that the shunts at the banks do not measure. The shunt's own path lies between a bank's poles and its battery side.
 * A conductor bypasses the shunt if it leaves that path and leads to a part that feeds or draws, or to the shunt's other side.
 * A few walks for each shunt, over the terminals on its battery side and no further.
 */
export function bypassesOf(network: Network, banks: readonly Bank[]): readonly Bypass[] {
  const shunts = network.parts.filter((part) => part.kind === "shunt");
  return shunts.length === 0 ? [] : shunts.flatMap((shunt) => pastShunt(network, banks, shunt));
}

function pastShunt(network: Network, banks: readonly Bank[], shunt: ShuntPart): Bypass[] {
  // Other shunts stop the walk too: they measure the current that passes them.
  const unmeasured = ({ part }: Edge) => part < 0 || network.parts[part]?.kind !== "shunt";
  const graph = networkGraph(network);
  const reached = reachedFrom(graph, [shunt.terminals.batterySide], unmeasured);
  const nearest = nearestBanks(banks, reached);
  // Without one it does not measure a bank.
  if (nearest.size === 0) return [];

  const bankAt = bankByPole(banks);
  const way = new Set<number>();
  for (const pole of reached.keys()) {
    const bank = bankAt.get(pole);
    for (let at: number | undefined = bank && nearest.has(bank) ? pole : undefined; at !== undefined; ) {
      if (way.has(at)) break;
      way.add(at);
      at = reached.get(at)?.from;
    }
  }

  // The usual case: on the battery side there is only the bank.
  if (way.size === reached.size) return [];

  const batteries = new Set([...nearest].flatMap((bank) => bank.batteries));
  const pieces = piecesWithin(graph, reached, way, unmeasured);
  const behind = new Map<number, Set<number>>();
  const note = (terminal: number, parts: readonly number[]) => {
    const piece = pieces.get(terminal);
    if (piece === undefined) return;
    const known = behind.get(piece) ?? new Set();
    behind.set(piece, known);
    for (const part of parts) known.add(part);
  };
  note(shunt.terminals.systemSide, []);
  const partsAt = partsByPole(network);
  for (const terminal of pieces.keys()) {
    const parts = partsAt.get(terminal)?.filter((part) => !batteries.has(part)) ?? [];
    if (parts.length > 0) note(terminal, parts);
  }

  return [...way].flatMap((terminal) =>
    conductorsAt(graph, terminal).flatMap((conductor): Bypass[] => {
      const to = across(graph.terminals, conductor, terminal);
      const parts = behind.get(pieces.get(to) ?? -1);
      return way.has(to) || !parts
        ? []
        : [{ shunt, conductor, leavesAt: terminal, parts: [...parts].sort((a, b) => a - b) }];
    }),
  );
}

/** The components of the reached terminals without those of `way`; by terminal, the number of its component. */
function piecesWithin(
  graph: NetworkGraph,
  reached: ReadonlyMap<number, Step | undefined>,
  way: ReadonlySet<number>,
  isOpen: (edge: Edge) => boolean,
): ReadonlyMap<number, number> {
  const pieces = new Map<number, number>();
  for (const start of reached.keys()) {
    if (way.has(start) || pieces.has(start)) continue;
    const piece = reachedFrom(graph, [start], (edge, to) => isOpen(edge) && !way.has(to));
    for (const terminal of piece.keys()) pieces.set(terminal, start);
  }
  return pieces;
}

/** By terminal index: the parts that feed or draw there. */
const partsByPole = workedOutOnce((network: Network): ReadonlyMap<number, readonly number[]> => {
  const parts = new Map<number, number[]>();
  for (const { part, positive, negative } of network.parts.flatMap(portsOf)) {
    for (const pole of [positive, negative]) {
      const known = parts.get(pole);
      if (known) known.push(part.index);
      else parts.set(pole, [part.index]);
    }
  }
  return parts;
});

const bankByPole = workedOutOnce(
  (banks: readonly Bank[]): ReadonlyMap<number, Bank> =>
    new Map(
      banks.flatMap((bank) => [...bank.positives, ...bank.negatives].map((pole) => [pole, bank] as const)),
    ),
);

/** Those whose poles are reached by the fewest steps; several if they are equally near the shunt. */
function nearestBanks(
  banks: readonly Bank[],
  reached: ReadonlyMap<number, Step | undefined>,
): ReadonlySet<Bank> {
  const bankAt = bankByPole(banks);
  const nearest = new Set<Bank>();
  const steps = new Map<number, number>();
  let fewest = Number.POSITIVE_INFINITY;
  // In the walk, a step's start comes before its end.
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
