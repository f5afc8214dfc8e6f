import { joinedBy } from "../../../model/disjoint-sets.ts";
import type { Network, Part } from "../../../model/network.ts";
import { type PartWithRole, passesCurrentOn } from "../../../model/part-roles.ts";
import { descriptorOf } from "../../../model/parts/index.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import { groupedBy } from "../../grouped-by.ts";
import { networkGraph } from "./network-graph.ts";
import { type Port, portsOf } from "./ports.ts";
import { graphOf, spanningForest } from "./spanning-forest.ts";

/** Whether every part that feeds or draws has a complete current path. Independent of scenarios: disconnects count as closed. */
export interface Feeding {
  /** Ports that draw without a source at their positive terminal, grouped by the component they are connected to. */
  readonly unfed: readonly DeadEnd[];
  /** Ports that are fed, but have no path back to the source that feeds them. */
  readonly withoutReturn: readonly DeadEnd[];
  /** Sources whose positive terminal is connected to no part that could draw. */
  readonly feedNothing: readonly Port[];
}

/** A dead-end component, and the ports with their positive or their negative terminal on it. */
export interface DeadEnd {
  /**
   * The part of the component that spreads it the furthest: a panel rather than a bus bar; absent if only wires are
   * connected.
   */
  readonly hub: Part | undefined;
  /** All parts of the component that only pass current on, the hub among them. */
  readonly passing: readonly Part[];
  /** Never empty. */
  readonly hanging: readonly Port[];
  /** A source with its other pole there: a load with reversed polarity, a return that leads to another bank. */
  readonly wrongSource: Part | undefined;
  /** Of a charger whose output has no return: a source or a load that it would feed. */
  readonly fed?: Part;
}

/** One walk over the network, and a few over the list of its parts. Cached: two rules use it. */
export const feedingOf: (network: Network) => Feeding = workedOutOnce(workOut);

function workOut(network: Network): Feeding {
  const { componentOf, components } = networkGraph(network);
  const pieceOf = (terminal: number) => componentOf[terminal]!;
  const poles = network.parts.flatMap(portsOf);
  const feeding = poles.filter(({ does }) => does === "feeds");
  const positives = groupedBy(feeding, ({ positive }) => pieceOf(positive));
  const negatives = groupedBy(feeding, ({ negative }) => pieceOf(negative));
  const passingOn = passingByPiece(network, pieceOf);
  // Components with a source between them belong together: current that leaves one of them can return by the other.
  const islands = joinedBy(
    components,
    feeding.map(({ positive, negative }) => ({ a: pieceOf(positive), b: pieceOf(negative) })),
  );
  const ends = endsByPiece(poles, pieceOf);

  // A source with an unconnected negative is reported only if the parts it feeds have a path back to another one.
  const alone: Port[] = [];
  const stranded = new Set<number>();
  const unfed: Grouped = new Map();
  const withoutReturn: Grouped = new Map();
  const feedNothing: Port[] = [];
  for (const pole of poles) {
    const [plus, minus] = [pieceOf(pole.positive), pieceOf(pole.negative)];
    const others = (list: readonly Port[] = []) => list.find(({ part }) => part !== pole.part)?.part;
    if (pole.does === "feeds") {
      // Alone on its component: no other part is there to draw, or to return current.
      if (!ends.shared(plus, pole)) feedNothing.push(pole);
      else if (!ends.shared(minus, pole)) alone.push(pole);
    } else if (!others(positives.get(plus))) {
      group(unfed, plus, pole, others(negatives.get(plus)));
    } else if (plus === minus || islands.find(plus) !== islands.find(minus)) {
      group(withoutReturn, minus, pole, others(negatives.get(minus)) ?? others(positives.get(minus)));
      stranded.add(plus);
    }
  }
  for (const pole of alone) {
    if (!stranded.has(pieceOf(pole.positive))) group(withoutReturn, pieceOf(pole.negative), pole, undefined);
  }
  const reported = new Set([...unfed.values(), ...withoutReturn.values()].flatMap(({ hanging }) => hanging));
  const isReported = (piece: number) =>
    [...reported].some((pole) => pieceOf(pole.positive) === piece || pieceOf(pole.negative) === piece);
  for (const pole of withoutLoop(poles, pieceOf, components)) {
    const [plus, minus] = [pieceOf(pole.positive), pieceOf(pole.negative)];
    if (pole.does !== "feeds" || feedNothing.includes(pole) || isReported(plus) || isReported(minus))
      continue;
    const otherAt = (piece: number) =>
      poles.find(
        ({ part, positive, negative }) =>
          part !== pole.part && (pieceOf(positive) === piece || pieceOf(negative) === piece),
      )?.part;
    group(withoutReturn, minus, pole, otherAt(minus), otherAt(plus));
  }
  const asDeadEnds = (grouped: Grouped) =>
    [...grouped.values()].map(({ piece, hanging, wrongSource, fed }): DeadEnd => {
      const passing = [...(passingOn.get(piece) ?? [])];
      return { hub: hubOf(passing), passing, hanging, wrongSource, ...(fed && { fed }) };
    });
  return { unfed: asDeadEnds(unfed), withoutReturn: asDeadEnds(withoutReturn), feedNothing };
}

/** By the component, and by whether a source has its other pole there. */
type Grouped = Map<string, Group>;

interface Group extends Pick<DeadEnd, "wrongSource" | "fed"> {
  readonly piece: number;
  readonly hanging: Port[];
}

function group(grouped: Grouped, piece: number, pole: Port, wrongSource: Part | undefined, fed?: Part): void {
  const key = `${piece} ${wrongSource ? "wrong" : "none"} ${fed?.index ?? ""}`;
  const there = grouped.get(key);
  if (there) there.hanging.push(pole);
  else grouped.set(key, { piece, hanging: [pole], wrongSource, ...(fed && { fed }) });
}

/**
 * The ports that are the only link between two parts of the plan, such as the output of a charger whose negative is connected with
 * the other system alone. Current flows in closed loops, and none leads through them.
 */
function withoutLoop(
  poles: readonly Port[],
  pieceOf: (terminal: number) => number,
  components: number,
): readonly Port[] {
  const ends = (terminalOf: (pole: Port) => number) =>
    Int32Array.from(poles, (pole) => pieceOf(terminalOf(pole)));
  const graph = graphOf(
    components,
    ends(({ positive }) => positive),
    ends(({ negative }) => negative),
  );
  const { behind } = spanningForest(graph, new Int32Array(components).keys(), () => true);
  return poles.filter((_, edge) => behind[edge]! >= 0);
}

/** Whether a component holds a port of any other part; the two ports of a charger are one part. */
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

type PassingPart = PartWithRole<"passes current on" | "metal">;

/** The part with the lowest rank comes first: metal, fuse panels, switches, other parts in one line, joints. */
function hubRank(part: PassingPart): number {
  const { role, poles, opens, inSeries } = descriptorOf(part);
  if (role === "metal") return 0;
  if (poles) return 1;
  if (opens === "by hand") return 2;
  if (inSeries) return 3;
  return opens === "unknown" ? 5 : 4;
}

function hubOf(passing: readonly PassingPart[]): PassingPart | undefined {
  return passing.length === 0 ? undefined : passing.reduce((a, b) => (hubRank(b) < hubRank(a) ? b : a));
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
