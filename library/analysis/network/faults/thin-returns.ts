import { disjointSets } from "../../../model/disjoint-sets.ts";
import type { Network, NetworkConductor, ProtectiveDevice } from "../../../model/network.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import { ampacityOf } from "../../ampacity.ts";
import { holdsOneOf } from "../../first-index.ts";
import { groupedBy } from "../../grouped-by.ts";
import type { NetworkResult } from "../../network-result.ts";
import { returnTerminal } from "../topology/internal-connections.ts";
import { type Branch, type NetworkGraph, networkGraph } from "../topology/network-graph.ts";
import { portsOf } from "../topology/ports.ts";
import { type Graph, type SpanningForest, spanningForest } from "../topology/spanning-forest.ts";

/** A return that a device on the positive side lets carry more than its ampacity for long. */
export interface ThinReturn {
  readonly conductor: NetworkConductor;
  readonly ampacityA: number;
  /** The device that limits a fault whose whole current returns through the conductor. */
  readonly device: ProtectiveDevice;
}

interface Judged {
  readonly network: Network;
  /** Of its topology, only the polarity of the conductors counts. */
  readonly result: NetworkResult;
}

/** The returns that are thinner than the devices of their positives permit (IEC 60364-4-43, 433.1, for the whole loop). */
export function thinReturns(judged: Judged): ThinReturn[] {
  return limitedReturns(judged).flatMap(({ conductor, device }) => {
    const ampacity = ampacityOf(conductor.run);
    if (!ampacity.judged || device.ratingA <= ampacity.ampacityA) return [];
    return [{ conductor, ampacityA: ampacity.ampacityA, device }];
  });
}

/** A return, thin or not, and the device that limits a fault whose whole current returns through it. */
export type LimitedReturn = Pick<ThinReturn, "conductor" | "device">;

/**
 * The returns whose whole current a device on the positive side limits.
 *
 * A fault between the poles at a place of the positive side draws for long the rating of the greatest device through which a bank
 * reaches that place; of several devices in line, the least counts. Its current returns with that of the loads behind the place.
 * A return that begins at a load or panel is judged by the place of that, and by the places of other loads whose returns end at its
 * negative terminal; one that begins at a bus, by each place all of whose loads return through it. It must be the only link to the
 * bank's side: where returns share the current, their shares are unknown. Places that a bank reaches past no device are left out.
 *
 * A return between two banks, as with a charger of common negative, carries the share of those on one of its sides in a fault on the other.
 */
export const limitedReturns = workedOutOnce(({ network, result }: Judged): readonly LimitedReturn[] => {
  const wiring = networkGraph(network);
  const known = knownReturns.get(wiring.sections) ?? findLimited(wiring, result.topology.conductorSides);
  knownReturns.set(wiring.sections, known);
  return known.map(({ index, device }) => ({ conductor: network.conductors[index]!, device }));
});

/** The same by the index of the return. */
interface LimitedAt {
  readonly index: number;
  readonly device: ProtectiveDevice;
}

/** Loads change neither the sections nor these. */
const knownReturns = new WeakMap<Graph, readonly LimitedAt[]>();

function findLimited(
  wiring: NetworkGraph,
  sides: NetworkResult["topology"]["conductorSides"],
): readonly LimitedAt[] {
  const { network, graph, pointOf, sources } = wiring;
  const banks = sources.filter(({ limitA }) => limitA === Number.POSITIVE_INFINITY);
  const returnsFrom = (feeding: NetworkGraph["sources"]) =>
    spanningForest(
      graph,
      feeding.map(({ negative }) => pointOf[negative]!),
      (conductor) => sides[conductor] === "negative" || sides[conductor] === "parallel-link",
    );
  const returns = returnsFrom(banks);
  const bankOrders = Int32Array.from(banks, ({ negative }) => returns.order[pointOf[negative]!]!).sort();
  const limits = limitsBySection(wiring);
  const atPoint = limitsAtPoles(wiring, limits);
  const all = network.conductors.flatMap((conductor, index): Behind[] => {
    const child = returns.behind[index]!;
    // The return of a circuit is as thick as its positive, which is judged by itself.
    if (conductor.role !== "cable" || sides[index] !== "negative" || child === -1) return [];
    return [{ index, begins: child, fromOrder: returns.order[child]!, toOrder: returns.last[child]! }];
  });
  const isLink = ({ fromOrder, toOrder }: Behind) => holdsOneOf(bankOrders, fromOrder, toOrder);
  const behind = all.filter((one) => !isLink(one));
  // Of a return that begins at poles, the places behind them: the loads before them also return in other ways.
  const beyond = behind.map((one) =>
    atPoint.has(one.begins) ? { ...one, fromOrder: one.fromOrder + 1 } : one,
  );
  const ofPlaces = new Map(
    greatestDevices(beyond, faultPlaces(wiring, limits, banks, returns)).map(({ index, device }) => [
      index,
      device,
    ]),
  );
  const ofSides = limitedLinks(wiring, banks, { returns, returnsFrom }, all.filter(isLink));
  return [
    ...behind.flatMap(({ index, begins }) => {
      const device = greater(atPoint.get(begins), ofPlaces.get(index));
      return device ? [{ index, device }] : [];
    }),
    ...ofSides,
  ];
}

/** The returns between two banks, each with the greatest device through which the banks of one side feed a place of the other. */
function limitedLinks(
  wiring: NetworkGraph,
  banks: NetworkGraph["sources"],
  {
    returns: { order },
    returnsFrom,
  }: {
    /** From all banks. */
    readonly returns: SpanningForest;
    readonly returnsFrom: (feeding: NetworkGraph["sources"]) => SpanningForest;
  },
  links: readonly Behind[],
): readonly LimitedAt[] {
  if (links.length === 0 || banks.length > mostBatteries) return [];
  const bySides = groupedBy(links, ({ fromOrder, toOrder }) =>
    banks
      .map(({ negative }) => order[wiring.pointOf[negative]!]!)
      .map((at) => Number(fromOrder <= at && at <= toOrder))
      .join(""),
  );
  if (bySides.size > mostSides) return [];
  return [...bySides].flatMap(([sides, alike]) =>
    ["0", "1"].flatMap((side) => {
      const feeding = banks.filter((_, bank) => sides[bank] === side);
      // Walked from the banks that feed the fault, all that lies beyond a link is on its other side.
      const returns = returnsFrom(feeding);
      const starts = feeding.map(({ positive }) => wiring.sectionOf[positive]!);
      const places = faultPlaces(wiring, limitingDevices(wiring, starts), feeding, returns);
      const beyond = alike.map(({ index }): Behind => {
        const begins = returns.behind[index]!;
        return { index, begins, fromOrder: returns.order[begins]!, toOrder: returns.last[begins]! };
      });
      return greatestDevices(beyond, places);
    }),
  );
}

/** Our choice, to bound the work: each way in which returns divide the batteries takes two walks of the network. */
const mostSides = 16;
const mostBatteries = 64;

/** A place on the positive side: the device that limits a fault there, and the returns of the loads behind it. */
interface FaultPlace extends Orders {
  readonly device: ProtectiveDevice;
}

/** The first and the last of some points, by their numbers in the walk over the returns. */
interface Orders {
  readonly fromOrder: number;
  readonly toOrder: number;
}

function faultPlaces(
  wiring: NetworkGraph,
  limits: readonly (ProtectiveDevice | undefined)[],
  banks: NetworkGraph["sources"],
  returns: SpanningForest,
): readonly FaultPlace[] {
  const { network, sections, sectionOf, pointOf } = wiring;
  const starts = banks.map(({ positive }) => sectionOf[positive]!);
  const supply = spanningForest(sections, starts, () => true);
  const fromOrder = new Int32Array(sections.nodes).fill(network.terminals.length);
  const toOrder = new Int32Array(sections.nodes).fill(-1);
  for (const { positive, negative } of polesOf(wiring)) {
    const section = sectionOf[positive]!;
    const order = returns.order[pointOf[negative]!]!;
    // A load without a way back returns nowhere: below every number.
    fromOrder[section] = Math.min(fromOrder[section]!, order);
    toOrder[section] = Math.max(toOrder[section]!, order);
  }
  // From the leaves to the roots.
  const reached = [...supply.order.keys()].filter((section) => supply.order[section] !== -1);
  reached.sort((one, other) => supply.order[other]! - supply.order[one]!);
  for (const section of reached) {
    const edge = supply.cameBy[section]!;
    if (edge === -1) continue;
    const parent = sections.a[edge] === section ? sections.b[edge]! : sections.a[edge]!;
    fromOrder[parent] = Math.min(fromOrder[parent]!, fromOrder[section]!);
    toOrder[parent] = Math.max(toOrder[parent]!, toOrder[section]!);
  }
  return reached.flatMap((section) => {
    const device = limits[section];
    const [from, to] = [fromOrder[section]!, toOrder[section]!];
    return device && from >= 0 && to >= 0 ? [{ device, fromOrder: from, toOrder: to }] : [];
  });
}

/** By the point of a negative pole: the device that limits a fault at its positive pole; undefined if nothing limits it. */
function limitsAtPoles(
  wiring: NetworkGraph,
  limits: readonly (ProtectiveDevice | undefined)[],
): ReadonlyMap<number, ProtectiveDevice | undefined> {
  const { pointOf, sectionOf } = wiring;
  const atPoint = new Map<number, ProtectiveDevice | undefined>();
  for (const { positive, negative } of polesOf(wiring)) {
    const point = pointOf[negative]!;
    atPoint.set(point, greater(atPoint.get(point), limits[sectionOf[positive]!]));
  }
  return atPoint;
}

/** Every pair of poles that current returns from: those of loads, converters and charging sources, and of panels. */
function polesOf({
  network,
}: NetworkGraph): readonly { readonly positive: number; readonly negative: number }[] {
  return network.parts.flatMap((part): readonly { positive: number; negative: number }[] => {
    if (part.kind === "battery") return [];
    if (part.kind !== "fusePanel") return portsOf(part);
    const { feed: positive } = part.terminals;
    const negative = returnTerminal(part, positive);
    return negative === undefined ? [] : [{ positive, negative }];
  });
}

/**
 * The device that limits the current which the banks send to a terminal for long; undefined if a bank reaches it past no device, or not
 * at all.
 */
export function deviceLimiting(network: Network, terminal: number): ProtectiveDevice | undefined {
  const wiring = networkGraph(network);
  return limitsBySection(wiring)[wiring.sectionOf[terminal]!];
}

/** Loads change neither the sections nor these. */
const knownLimits = new WeakMap<Graph, readonly (ProtectiveDevice | undefined)[]>();

function limitsBySection(wiring: NetworkGraph): readonly (ProtectiveDevice | undefined)[] {
  const known = knownLimits.get(wiring.sections);
  if (known) return known;
  const banks = wiring.sources.filter(({ limitA }) => limitA === Number.POSITIVE_INFINITY);
  const limits = limitingDevices(
    wiring,
    banks.map(({ positive }) => wiring.sectionOf[positive]!),
  );
  knownLimits.set(wiring.sections, limits);
  return limits;
}

/**
 * By section: the device that limits the current that the banks send there for long; undefined if a bank reaches it past no
 * device, or not at all. The sections are joined from the branch with the greatest device to the one with the least.
 */
function limitingDevices(
  { sections, branches }: NetworkGraph,
  starts: readonly number[],
): readonly (ProtectiveDevice | undefined)[] {
  const limits = new Array<ProtectiveDevice | undefined>(sections.nodes);
  const sets = disjointSets(sections.nodes);
  const members = Array.from({ length: sections.nodes }, (_, section) => [section]);
  const isFed = new Uint8Array(sections.nodes);
  for (const start of starts) isFed[start] = 1;
  const least = branches.map(leastDevice);
  const ratingA = (branch: number) => least[branch]?.ratingA ?? Number.POSITIVE_INFINITY;
  const byRating = [...branches.keys()].sort((one, other) => ratingA(other) - ratingA(one));
  for (const branch of byRating) {
    const [a, b] = [sets.find(sections.a[branch]!), sets.find(sections.b[branch]!)];
    if (a === b) continue;
    if (isFed[a] !== isFed[b])
      for (const section of members[isFed[a] ? b : a]!) limits[section] = least[branch];
    const kept = sets.union(a, b);
    const joined = kept === a ? b : a;
    for (const section of members[joined]!) members[kept]!.push(section);
    members[joined] = [];
    isFed[kept] = isFed[a]! | isFed[b]!;
  }
  return limits;
}

function leastDevice({ near, far }: Branch): ProtectiveDevice | undefined {
  if (!near || !far) return near ?? far ?? undefined;
  return far.ratingA < near.ratingA ? far : near;
}

/** A return conductor, and the numbers of the points behind it in the walk over the returns. */
interface Behind extends Orders {
  /** Index of the conductor. */
  readonly index: number;
  /** The point at its end towards the loads. */
  readonly begins: number;
}

/**
 * For each return: of the places all of whose loads lie behind it, the device with the greatest rating. The returns are taken from
 * the greatest first number to the least, and the places that then lie behind enter a tree of maxima over their last number
 * (P. Fenwick, "A new data structure for cumulative frequency tables", 1994).
 */
function greatestDevices(returns: readonly Behind[], places: readonly FaultPlace[]): readonly LimitedAt[] {
  const byFirst = (one: Orders, other: Orders) => other.fromOrder - one.fromOrder;
  const waiting = [...places].sort(byFirst);
  const greatest: (ProtectiveDevice | undefined)[] = [];
  const size = 2 + [...returns, ...places].reduce((last, { toOrder }) => Math.max(last, toOrder), 0);
  let entered = 0;
  return [...returns].sort(byFirst).flatMap(({ index, fromOrder, toOrder }) => {
    for (; entered < waiting.length && waiting[entered]!.fromOrder >= fromOrder; entered++) {
      const { device, toOrder: last } = waiting[entered]!;
      for (let at = last + 1; at < size; at += at & -at) greatest[at] = greater(greatest[at], device);
    }
    let device: ProtectiveDevice | undefined;
    for (let at = toOrder + 1; at > 0; at -= at & -at) device = greater(device, greatest[at]);
    return device ? [{ index, device }] : [];
  });
}

function greater(one: ProtectiveDevice | undefined, other: ProtectiveDevice | undefined) {
  if (!one || !other) return one ?? other;
  return other.ratingA > one.ratingA ? other : one;
}
