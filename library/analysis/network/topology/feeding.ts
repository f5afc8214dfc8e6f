import type { Network, Part } from "../../../model/network.ts";
import { type PartWithRole, passesCurrentOn } from "../../../model/part-roles.ts";
import { workedOutOnce } from "../../worked-out-once.ts";
import { componentsOf } from "./adjacency.ts";
import { type Port, portsOf } from "./ports.ts";

/** Whether every part that feeds or draws is joined so that current can flow, whatever is switched on. */
export interface Feeding {
  /** What draws without a source at its positive terminal, by what it hangs on. */
  readonly unfed: readonly DeadEnd[];
  /** What is fed, but has no way back to the source that feeds it. */
  readonly withoutReturn: readonly DeadEnd[];
  /** Sources with nothing at their positive terminal that could draw. */
  readonly feedNothing: readonly Port[];
}

/** One piece of metal that leads nowhere, and what hangs on it with its positive or its negative terminal. */
export interface DeadEnd {
  /** Of the piece, the part that spreads it the furthest: a panel rather than a bus bar; absent where only wires are joined. */
  readonly hub: Part | undefined;
  /** All parts of the piece that only pass current on, the hub among them. */
  readonly passing: readonly Part[];
  /** Never empty. */
  readonly hanging: readonly Port[];
  /** A source that has its other pole there: a load wired the wrong way round, a return that leads to another bank. */
  readonly wrongSource: Part | undefined;
}

/** One walk over the network, and a few over the list of its parts. Two rules ask. */
export const feedingOf: (network: Network) => Feeding = workedOutOnce(workOut);

function workOut(network: Network): Feeding {
  const pieces = componentsOf(network);
  const pieceOf = (terminal: number) => pieces[terminal] ?? -1;
  const poles = network.parts.flatMap(portsOf);
  const feeding = poles.filter(({ does }) => does === "feeds");
  const positives = byPiece(feeding, ({ positive }) => pieceOf(positive));
  const negatives = byPiece(feeding, ({ negative }) => pieceOf(negative));
  const passingOn = passingByPiece(network, pieceOf);
  const islandOf = islands(feeding, pieceOf);
  const ends = endsByPiece(poles, pieceOf);

  // A source whose negative is alone is told of only where what it feeds has a way back to another one.
  const alone: Port[] = [];
  const stranded = new Set<number>();
  const unfed: Grouped = new Map();
  const withoutReturn: Grouped = new Map();
  const feedNothing: Port[] = [];
  for (const pole of poles) {
    const [plus, minus] = [pieceOf(pole.positive), pieceOf(pole.negative)];
    const others = (list: readonly Port[] = []) => list.find(({ part }) => part !== pole.part)?.part;
    if (pole.does === "feeds") {
      // Alone on its piece: nobody is there to draw, or to bring anything back.
      if (!ends.shared(plus, pole)) feedNothing.push(pole);
      else if (!ends.shared(minus, pole)) alone.push(pole);
    } else if (!others(positives.get(plus))) {
      group(unfed, plus, pole, others(negatives.get(plus)));
    } else if (plus === minus || islandOf(plus) !== islandOf(minus)) {
      group(withoutReturn, minus, pole, others(negatives.get(minus)) ?? others(positives.get(minus)));
      stranded.add(plus);
    }
  }
  for (const pole of alone) {
    if (!stranded.has(pieceOf(pole.positive))) group(withoutReturn, pieceOf(pole.negative), pole, undefined);
  }
  const asDeadEnds = (grouped: Grouped) =>
    [...grouped.values()].map(({ piece, hanging, wrongSource }): DeadEnd => {
      const passing = [...(passingOn.get(piece) ?? [])];
      return { hub: hubOf(passing), passing, hanging, wrongSource };
    });
  return { unfed: asDeadEnds(unfed), withoutReturn: asDeadEnds(withoutReturn), feedNothing };
}

/** By the piece, and by whether a source has its other pole there. */
type Grouped = Map<string, Group>;

interface Group extends Pick<DeadEnd, "wrongSource"> {
  readonly piece: number;
  readonly hanging: Port[];
}

function group(grouped: Grouped, piece: number, pole: Port, wrongSource: Part | undefined): void {
  const key = `${piece} ${wrongSource ? "wrong" : "none"}`;
  const there = grouped.get(key);
  if (there) there.hanging.push(pole);
  else grouped.set(key, { piece, hanging: [pole], wrongSource });
}

function byPiece(poles: readonly Port[], pieceOf: (pole: Port) => number): ReadonlyMap<number, Port[]> {
  const map = new Map<number, Port[]>();
  for (const pole of poles) {
    const piece = pieceOf(pole);
    const there = map.get(piece);
    if (there) there.push(pole);
    else map.set(piece, [pole]);
  }
  return map;
}

/** Whether a piece holds the end of anything but this one pair of poles; the two pairs of a charger are one part. */
function endsByPiece(poles: readonly Port[], pieceOf: (terminal: number) => number) {
  const first = new Map<number, Part>();
  const several = new Set<number>();
  for (const { part, positive, negative } of poles) {
    for (const piece of [pieceOf(positive), pieceOf(negative)]) {
      const there = first.get(piece);
      if (there === undefined) first.set(piece, part);
      else if (there !== part) several.add(piece);
    }
  }
  return {
    shared: (piece: number, { part }: Port) => several.has(piece) || first.get(piece) !== part,
  };
}

/** Pieces with a source between them belong together: current that leaves one of them can come back by the other. */
function islands(feeding: readonly Port[], pieceOf: (terminal: number) => number) {
  const parent = new Map<number, number>();
  const rootOf = (piece: number): number => {
    let root = piece;
    for (let next = parent.get(root); next !== undefined; next = parent.get(root)) root = next;
    // Shortens the way for the next question, so that long chains of batteries stay linear.
    for (let at = piece; at !== root; ) {
      const next = parent.get(at) as number;
      parent.set(at, root);
      at = next;
    }
    return root;
  };
  for (const { positive, negative } of feeding) {
    const [a, b] = [rootOf(pieceOf(positive)), rootOf(pieceOf(negative))];
    if (a !== b) parent.set(a, b);
  }
  return rootOf;
}

type PassingPart = PartWithRole<"passes current on" | "metal">;

/** The lowest comes first. */
const hubRank: Readonly<Record<PassingPart["kind"], number>> = {
  chassis: 0,
  fusePanel: 1,
  disconnect: 2,
  shunt: 3,
  busBar: 4,
  part: 5,
};

function hubOf(passing: readonly PassingPart[]): PassingPart | undefined {
  const rank = ({ kind }: PassingPart) => hubRank[kind];
  return passing.length === 0 ? undefined : passing.reduce((a, b) => (rank(b) < rank(a) ? b : a));
}

function passingByPiece(
  network: Network,
  pieceOf: (terminal: number) => number,
): ReadonlyMap<number, ReadonlySet<PassingPart>> {
  const passing = new Map<number, Set<PassingPart>>();
  for (const part of network.parts) {
    if (!passesCurrentOn(part)) continue;
    for (const terminal of Object.values<number>(part.terminals)) {
      const there = passing.get(pieceOf(terminal));
      if (there) there.add(part);
      else passing.set(pieceOf(terminal), new Set([part]));
    }
  }
  return passing;
}
