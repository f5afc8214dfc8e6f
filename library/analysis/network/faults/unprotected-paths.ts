import { disjointSets } from "../../../model/disjoint-sets.ts";
import { metresPerInch } from "../../../model/length-limits.ts";
import type { ConductorEnd, NetworkConductor } from "../../../model/network.ts";
import { ampacityOf } from "../../ampacity.ts";
import { firstIndex } from "../../first-index.ts";
import { protectionDistanceLimit } from "../../protection-distance.ts";
import { withoutDust } from "../../rounding-dust.ts";
import { breadthFirst, pathTo } from "../topology/breadth-first.ts";
import type { Branch, NetworkGraph } from "../topology/network-graph.ts";
import type { ConductorPolarity, UnprotectedPath } from "../topology/network-topology.ts";
import { edgesAt, type SpanningForest, spanningForest } from "../topology/spanning-forest.ts";

/**
 * For every positive conductor and each of its ends without a device: the sources that arrive there, can push more than
 * the ampacity, and pass no device on the path that is rated at or below that. A device of the conductor's own counts as
 * present at its end at any rating: too great a rating is another matter.
 *
 * Another conductor lets a fault pass if its smallest device is rated above the ampacity in question. So the search goes from
 * the greatest ampacity to the least: ever more conductors let faults pass, and the sets of connected points only grow. This
 * one pass finds the conductors that may be reached at all. The network is walked only for the ampacities of those.
 */
export function unprotectedPaths(
  wiring: NetworkGraph,
  sides: readonly ConductorPolarity[],
): UnprotectedPath[] {
  const { network, branches, sections: graph, sources, sectionOf: pointOf } = wiring;
  const passesA = Float64Array.from(branches, greatestThatPasses);
  const pushA = new Float64Array(graph.nodes);
  for (const { positive, limitA } of sources) {
    pushA[pointOf[positive]!] = Math.max(pushA[pointOf[positive]!]!, limitA);
  }
  const joined = disjointSets(graph.nodes);
  const byRating = [...passesA.keys()].sort((a, b) => passesA[b]! - passesA[a]!);
  let opened = 0;
  const paths: UnprotectedPath[] = [];
  for (const { ampacityA, conductors } of byAmpacity(network.conductors, sides)) {
    for (; opened < byRating.length && passesA[byRating[opened]!]! > ampacityA; opened++) {
      const [a, b] = [joined.find(graph.a[byRating[opened]!]!), joined.find(graph.b[byRating[opened]!]!)];
      pushA[joined.union(a, b)] = Math.max(pushA[a]!, pushA[b]!);
    }
    const reached = conductors.filter((conductor) =>
      bareEnds(network.conductors[conductor]!).some(
        (end) => pushA[joined.find(pointAt(wiring, conductor, end))]! > ampacityA,
      ),
    );
    if (reached.length > 0) for (const path of pathsAt(wiring, passesA, ampacityA, reached)) paths.push(path);
  }
  return paths.sort((a, b) => a.conductor - b.conductor);
}

/** The least rating of a branch's devices: they do not protect conductors of lower ampacity. */
function greatestThatPasses({ near, far }: Branch): number {
  return Math.min(near?.ratingA ?? Number.POSITIVE_INFINITY, far?.ratingA ?? Number.POSITIVE_INFINITY);
}

/** Positive conductors that can be judged, from the greatest ampacity to the least, those with the same one together. */
function byAmpacity(conductors: readonly NetworkConductor[], sides: readonly ConductorPolarity[]) {
  const levels = new Map<number, number[]>();
  conductors.forEach(({ run, near, far }, index) => {
    if (sides[index] !== "positive" || (near && far)) return;
    const ampacity = ampacityOf(run);
    if (!ampacity.judged) return;
    const level = levels.get(ampacity.ampacityA);
    if (level) level.push(index);
    else levels.set(ampacity.ampacityA, [index]);
  });
  return [...levels]
    .map(([ampacityA, conductors]) => ({ ampacityA, conductors }))
    .sort((a, b) => b.ampacityA - a.ampacityA);
}

function bareEnds({ near, far }: NetworkConductor): ConductorEnd[] {
  return [...(near ? [] : (["near"] as const)), ...(far ? [] : (["far"] as const))];
}

function pointAt({ sections: graph }: NetworkGraph, conductor: number, end: ConductorEnd): number {
  return end === "near" ? graph.a[conductor]! : graph.b[conductor]!;
}

/** The paths to conductors of one ampacity. Current to an end through the conductor itself does not count there. */
function pathsAt(
  wiring: NetworkGraph,
  passesA: Float64Array,
  ampacityA: number,
  conductors: readonly number[],
): UnprotectedPath[] {
  const { network, branches, sections: graph, sources, sectionOf: pointOf } = wiring;
  const pushing = sources.filter(({ limitA }) => limitA > ampacityA);
  const starts = pushing.map(({ positive }) => pointOf[positive]!);
  const isOpen = (branch: number) => passesA[branch]! > ampacityA;
  const forest = spanningForest(graph, starts, isOpen);
  const inOrder = [...pushing].sort(
    (a, b) => forest.order[pointOf[a.positive]!]! - forest.order[pointOf[b.positive]!]! || a.part - b.part,
  );
  const orders = Int32Array.from(inOrder, ({ positive }) => forest.order[pointOf[positive]!]!);
  /** By position in the walk: how many of the sources before it are no solar arrays. */
  const othersBefore = new Int32Array(inOrder.length + 1);
  inOrder.forEach(({ part }, at) => {
    othersBefore[at + 1] = othersBefore[at]! + (network.parts[part]!.kind === "solarArray" ? 0 : 1);
  });
  const nearest = breadthFirst(graph, starts, isOpen);
  const around = (conductor: number, point: number) => {
    const isOpenElsewhere = (other: number) => other !== conductor && isOpen(other);
    return pathTo(graph, breadthFirst(graph, starts, isOpenElsewhere), point);
  };
  return conductors.flatMap((conductor) => {
    const arriving = bareEnds(network.conductors[conductor]!).flatMap((end) => {
      const point = pointAt(wiring, conductor, end);
      const found = arrivingAt(forest, orders, point, conductor);
      return found.length > 0 ? [{ end, point, found }] : [];
    });
    if (arriving.length === 0 || isLead(wiring, conductor, arriving, ampacityA)) return [];
    const found = merged(arriving.flatMap((arrival) => arrival.found));
    const known = arriving
      .map(({ point }) => pathTo(graph, nearest, point))
      .filter((way) => !way.includes(conductor));
    // The other end's shortest path leads through the conductor only if the nearer end has a device of its own.
    const ways = known.length > 0 ? known : arriving.map(({ point }) => around(conductor, point));
    const way = ways.reduce((best, candidate) => (candidate.length < best.length ? candidate : best));
    return [
      {
        conductor,
        ends: arriving.map(({ end }) => end),
        sources: firstOf(found, mostNamed)
          .map((at) => inOrder[at]!.part)
          .sort((a, b) => a - b),
        sourceCount: found.reduce((sum, { from, to }) => sum + to - from + 1, 0),
        fromPanelsAlone: found.every(({ from, to }) => othersBefore[from] === othersBefore[to + 1]),
        way: way.filter((branch) => branch < network.conductors.length),
        tooGreat: [...way, conductor].flatMap((on) => devicesAbove(branches[on]!, ampacityA)),
      },
    ];
  });
}

/**
 * Whether a conductor only leads from a source to a device that is a part of its own and protects it, and is no longer than the
 * distance within which a device must be (33 CFR 183.455(b), 183.460(a)).
 */
function isLead(
  wiring: NetworkGraph,
  index: number,
  arriving: readonly { readonly end: ConductorEnd }[],
  ampacityA: number,
): boolean {
  const [from, both] = arriving;
  const { run, lengthM } = wiring.network.conductors[index]!;
  if (!from || both) return false;
  // One of unknown length is not judged: conductor/no-length reports it.
  if (
    lengthM !== undefined &&
    withoutDust(lengthM / metresPerInch) > protectionDistanceLimit(run, from.end).maxIn
  )
    return false;
  const other = pointAt(wiring, index, from.end === "near" ? "far" : "near");
  const beyond = edgesAt(wiring.sections, other).filter((branch) => branch !== index);
  return (
    beyond.length > 0 &&
    beyond.every((branch) => branch >= wiring.network.conductors.length) &&
    beyond.reduce((sumA, branch) => sumA + (wiring.branches[branch]!.near?.ratingA ?? 0), 0) <= ampacityA
  );
}

/**
 * The sources that reach a point other than through one conductor. If that conductor is the only link between two sides of
 * its tree, those on the point's own side; else all of the tree. `orders` are the sources' numbers in the walk, ascending;
 * the result is ranges of positions in it, none of them empty.
 */
function arrivingAt(forest: SpanningForest, orders: Int32Array, point: number, conductor: number): Range[] {
  const { order, last, root, behind } = forest;
  if (order[point] === -1) return [];
  const tree: Range = { from: order[root[point]!]!, to: last[root[point]!]! };
  const child = behind[conductor]!;
  if (child === -1) return within(orders, tree);
  const below: Range = { from: order[child]!, to: last[child]! };
  if (order[point]! >= below.from && order[point]! <= below.to) return within(orders, below);
  return [
    ...within(orders, { from: tree.from, to: below.from - 1 }),
    ...within(orders, { from: below.to + 1, to: tree.to }),
  ];
}

/** Ranges that overlap or touch as one, ascending. */
function merged(ranges: readonly Range[]): Range[] {
  const ascending = [...ranges].sort((a, b) => a.from - b.from);
  const apart: Range[] = [];
  for (const range of ascending) {
    const before = apart.at(-1);
    if (!before || range.from > before.to + 1) apart.push(range);
    else apart[apart.length - 1] = { from: before.from, to: Math.max(before.to, range.to) };
  }
  return apart;
}

function firstOf(ranges: readonly Range[], most: number): number[] {
  const first: number[] = [];
  for (const { from, to } of ranges) {
    for (let at = from; at <= to && first.length < most; at++) first.push(at);
  }
  return first;
}

/** A longer list helps no reader, and a list for each of thousands of cables would name millions. */
const mostNamed = 16;

/** Numbers of the walk, or positions in a list, both ends included. */
interface Range {
  readonly from: number;
  readonly to: number;
}

/** The positions of numbers that lie in a range. */
function within(orders: Int32Array, { from, to }: Range): Range[] {
  const found = {
    from: firstIndex(orders, (order) => order >= from),
    to: firstIndex(orders, (order) => order > to) - 1,
  };
  return found.to >= found.from ? [found] : [];
}

function devicesAbove({ near, far }: Branch, ampacityA: number): number[] {
  return [near, far].flatMap((device) => (device && device.ratingA > ampacityA ? [device.index] : []));
}
