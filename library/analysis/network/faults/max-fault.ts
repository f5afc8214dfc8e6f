import { disjointSets } from "../../../model/disjoint-sets.ts";
import { type Response, sparseInverse } from "../solver/selected-inverse.ts";
import type { NetworkGraph } from "../topology/network-graph.ts";
import type { NetPolarity } from "../topology/polarity.ts";
import {
  addedToShortA,
  batteriesOf,
  type FaultNetwork,
  isEstimated,
  sourceForMaxFault,
} from "./fault-network.ts";

/** The maximum currents for dead shorts to the bank's other pole, anywhere on one pole's side of a network. */
export interface MaxFaults {
  /** A short right at one end of a branch; undefined if that end is on the other side, or already shorted. */
  at(branch: number, end: "near" | "far"): FaultAtEnd | undefined;
  /** A short at a terminal, through a resistance; undefined if it is on the other side. */
  through(
    terminal: number,
    ohm: number,
  ): { readonly currentA: number; readonly estimated: boolean } | undefined;
}

interface FaultAtEnd {
  /** The current to that end from everything else: it passes a device at this end. */
  readonly fromElsewhere: Arriving;
  /** The current through the branch itself. */
  readonly throughBranch: Arriving;
}

export interface Arriving {
  readonly currentA: number;
  /**
   * Part indices, the greatest share first; those that add no current are left out. If more than {@link mostNamed} are in one
   * island, the first of those that push the most by themselves.
   */
  sources(): number[];
  /** Whether a battery contributes whose internal resistance is not stated. */
  isEstimated(): boolean;
}

/**
 * The other pole's side counts as one piece of metal, copper is at 20 °C, batteries are at their strongest, and every source
 * with a limit gives that limit. All is linear, so each source's share is computed on its own, and
 *
 *     I_k = Σ V_k / Z_kk     V_k voltage of the node before the short, V; Z_kk its own resistance to the reference, Ω
 *     V_a′ = V_a − Z_ak · I_k     any other node, during the short
 *
 * which is Thévenin's theorem, as in IEC 61660-1 (direct-current short circuits in auxiliary installations) but in steady
 * state: no inductance, no rise and fall.
 *
 * @param live The pole on whose side the shorts are. Nets between the batteries of a string are on both.
 */
export function maxFaults(
  wiring: NetworkGraph,
  faults: FaultNetwork,
  nets: readonly NetPolarity[],
  live: "positive" | "negative",
): MaxFaults | undefined {
  const { network } = wiring;
  const { nodeOf, coldOhm } = faults;
  const unknownOf = liveNodes(wiring, faults, nets, live);
  const unknown = (terminal: number) => unknownOf.of[nodeOf[terminal]!]!;

  const a: number[] = [];
  const b: number[] = [];
  const ohm: number[] = [];
  const join = (one: number, other: number, value: number) => {
    if (one === other) return;
    a.push(one);
    b.push(other);
    ohm.push(value);
  };
  const isLive = (terminal: number) => unknown(terminal) >= 0;
  wiring.branches.forEach(({ from, to }, branch) => {
    if (isLive(from)) join(unknown(from), unknown(to), coldOhm[branch]!);
  });
  for (const { a: one, b: other, ohm: value } of faults.joins) {
    if (unknownOf.of[one]! >= 0) join(unknownOf.of[one]!, unknownOf.of[other]!, value);
  }

  const sources: LiveSource[] = [];
  for (const battery of batteriesOf(network)) {
    const [into, outOf] = polesOf(battery.terminals, live);
    const { voltageV, ohm: internalOhm } = sourceForMaxFault(battery);
    // A battery across itself heats only itself and the cable that shorts it.
    if (unknown(into) === unknown(outOf)) continue;
    join(unknown(into), unknown(outOf), internalOhm);
    sources.push({
      part: battery.index,
      into: unknown(into),
      outOf: unknown(outOf),
      currentA: voltageV / internalOhm,
      estimated: isEstimated(battery),
    });
  }
  for (const { part, positive, negative } of wiring.sources) {
    const currentA = addedToShortA(network.parts[part]!);
    if (currentA === undefined) continue;
    const [into, outOf] = polesOf({ positive, negative }, live);
    if (unknown(into) === unknown(outOf)) continue;
    sources.push({ part, into: unknown(into), outOf: unknown(outOf), currentA, estimated: false });
  }
  // If no battery holds a voltage, a resistance far above any cable keeps the matrix regular.
  const held = disjointSets(unknownOf.count + 1);
  for (let at = 0; at < ohm.length; at++) held.union(a[at]! + 1, b[at]! + 1);
  for (let node = 0; node < unknownOf.count; node++) {
    if (held.find(node + 1) === held.find(0)) continue;
    join(node, -1, withoutBatteryOhm);
    held.union(node + 1, 0);
  }

  const inverse = sparseInverse(unknownOf.count, { a, b, ohm }, []);
  if (!inverse) return undefined;
  const together = voltagesBy(sources);
  const guessed = sources.filter(({ estimated }) => estimated);
  const guessedTogether = voltagesBy(guessed);
  const guessedOf = byIsland(guessed);
  const namedOf = byIsland(
    [...sources].sort((one, other) => other.currentA - one.currentA),
    mostAsked,
  );
  const responses = new Map<LiveSource, Response>();
  const responseOf = (source: LiveSource) => {
    let response = responses.get(source);
    if (!response) {
      response = inverse.response(intoNodes(source));
      responses.set(source, response);
    }
    return response;
  };

  /** For several sources at once: by superposition their currents add up. */
  function voltagesBy(pushing: readonly LiveSource[]): Response {
    const voltages = new Float64Array(unknownOf.count);
    for (const { node, currentA } of pushing.flatMap(intoNodes)) voltages[node]! += currentA;
    inverse!.solve(voltages);
    return (node) => voltages[node]!;
  }

  /** By island: the sources that push into a node of it; no more than `most` of each. */
  function byIsland(pushing: readonly LiveSource[], most = Number.POSITIVE_INFINITY) {
    const found = new Map<number, LiveSource[]>();
    for (const source of pushing) {
      for (const island of new Set(intoNodes(source).map(({ node }) => inverse!.islandOf(node)))) {
        const there = found.get(island);
        if (!there) found.set(island, [source]);
        else if (there.length < most) there.push(source);
      }
    }
    return found;
  }

  return {
    through(terminal, ohm) {
      const node = unknown(terminal);
      if (node < 0) return undefined;
      const currentA = together(node) / (inverse.entry(node, node) + ohm);
      const guessedA = guessedTogether(node) / (inverse.entry(node, node) + ohm);
      return { currentA, estimated: guessedA > Math.max(dustA, noticeableShare * currentA) };
    },
    at(branch, end) {
      const { from, to } = wiring.branches[branch]!;
      const node = unknown(end === "near" ? from : to);
      const other = unknown(end === "near" ? to : from);
      if (node < 0) return undefined;
      const ownOhm = inverse.entry(node, node);
      const mutualOhm = inverse.entry(node, other);
      const island = inverse.islandOf(node);
      const faultA = (voltageAt: Response) => voltageAt(node) / ownOhm;
      const throughA = (voltageAt: Response) =>
        node === other ? 0 : (voltageAt(other) - mutualOhm * faultA(voltageAt)) / coldOhm[branch]!;
      const arriving = (shareA: (voltageAt: Response) => number): Arriving => {
        const currentA = shareA(together);
        const leastA = Math.max(dustA, noticeableShare * currentA);
        return {
          currentA: currentA < dustA ? 0 : currentA,
          sources() {
            const named: { part: number; currentA: number }[] = [];
            for (const source of namedOf.get(island) ?? []) {
              const currentA = shareA(responseOf(source));
              if (currentA > leastA && named.push({ part: source.part, currentA }) === mostNamed) break;
            }
            return named
              .sort((one, two) => two.currentA - one.currentA || one.part - two.part)
              .map(({ part }) => part);
          },
          isEstimated() {
            const may = guessedOf.get(island) ?? [];
            // If their sum exceeds the least share times their number, one of them exceeds the least share.
            return (
              (may.length > 0 && shareA(guessedTogether) > may.length * leastA) ||
              may.some((source) => shareA(responseOf(source)) > leastA)
            );
          },
        };
      };
      return {
        fromElsewhere: arriving((voltageAt) => faultA(voltageAt) - throughA(voltageAt)),
        throughBranch: arriving(throughA),
      };
    },
  };
}

/** A milliampere, beside which rounding is negligible, or one part of a million, is no share of a short. */
const dustA = 1e-3;
const noticeableShare = 1e-6;

/** A longer list of sources helps no reader, and a list for each of thousands of fuses would name millions. */
const mostNamed = 16;

/** Maximum number of sources tried in search of {@link mostNamed} that contribute: those behind the short itself do not. */
const mostAsked = 4 * mostNamed;

/** Far above any cable: it takes less than a millionth of a charger's current. */
const withoutBatteryOhm = 1e5;

interface LiveSource {
  readonly part: number;
  /** Nodes; −1 is the reference. */
  readonly into: number;
  readonly outOf: number;
  readonly currentA: number;
  readonly estimated: boolean;
}

/** The currents of a source into the nodes at its ends, except the reference. */
function intoNodes({ into, outOf, currentA }: LiveSource) {
  return [
    { node: into, currentA },
    { node: outOf, currentA: -currentA },
  ].filter(({ node }) => node >= 0);
}

/** Seen from the other side, a source pushes out of its negative. */
function polesOf(
  { positive, negative }: { positive: number; negative: number },
  live: "positive" | "negative",
) {
  return live === "positive" ? ([positive, negative] as const) : ([negative, positive] as const);
}

/** By node of the fault network: its number among those of the live side; −1 for the reference, which is all the rest. */
function liveNodes(
  { network, componentOf }: NetworkGraph,
  { nodes, nodeOf }: FaultNetwork,
  nets: readonly NetPolarity[],
  live: "positive" | "negative",
): { readonly of: Int32Array; readonly count: number } {
  const of = new Int32Array(nodes).fill(-1);
  let count = 0;
  network.terminals.forEach((_, terminal) => {
    const side = nets[componentOf[terminal]!];
    const node = nodeOf[terminal]!;
    if (of[node] === -1 && (side === live || side === "middle")) of[node] = count++;
  });
  return { of, count };
}
