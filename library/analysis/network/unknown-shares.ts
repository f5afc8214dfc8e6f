import type { Network, Scenario } from "../../model/network.ts";
import { passesCurrentOn } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import { positionsKey, stateIn, switchesOf } from "../../model/switch-positions.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { SolvedScenario } from "../network-result.ts";
import type { Blocks } from "./topology/blocks.ts";
import { networkGraph } from "./topology/network-graph.ts";
import { portsOf } from "./topology/ports.ts";
import { blocksWhile, isSharedByUnknown, withSources } from "./topology/source-blocks.ts";

/**
 * Currents that divide by lengths of which one is unknown: between two cables side by side, or the leads of two batteries. How they
 * divide is unknown too, so each of the ways counts as if it carried everything.
 *
 * The graph is passive between the poles of its batteries, so no way in a block carries more than enters the block: the sum over the
 * devices on its other side, those that draw or those that charge, if that is more.
 */
export interface UnknownShares {
  /** A solution with the greatest current that each conductor and each part may carry. The same object if no share is unknown. */
  atMost(result: SolvedScenario): SolvedScenario;
  /** The conductors of unknown length on which it depends how a current divides that a conductor carries; empty if it is known. */
  sharesCurrentBy(scenario: Scenario, conductor: number): readonly number[];
  /** The same for a battery, or a part that passes current on, by its part index. */
  partSharesCurrentBy(scenario: Scenario, part: number): readonly number[];
  /** The conductors, and the batteries and parts that pass current on, whose share some scenario leaves unknown. */
  undivided(): Undivided;
  /** The conductors of unknown length that decide the current of a conductor, by their indices: itself, or others in its block. */
  decidedBy(scenario: Scenario, conductor: number): readonly number[];
}

export const unknownSharesOf: (network: Network) => UnknownShares = workedOutOnce((network: Network) => {
  const isUnknown = (edge: number) =>
    edge < network.conductors.length && network.conductors[edge]!.lengthM === undefined;
  if (!hasUnknownLength(network)) {
    const none = { conductors: new Set<number>(), parts: new Set<number>() };
    return {
      atMost: (result) => result,
      sharesCurrentBy: () => [],
      partSharesCurrentBy: () => [],
      undivided: () => none,
      decidedBy: () => [],
    };
  }
  const wiring = networkGraph(network);
  const all = withSources(wiring);
  const switches = switchesOf(network);
  const known = new Map<string, SharedBlocks>();
  const sharedIn = (scenario: Scenario): SharedBlocks => {
    const key = positionsKey(switches, scenario);
    let shared = known.get(key);
    if (!shared) {
      const states = new Map(switches.map((part) => [part.index, stateIn(scenario, part)] as const));
      const blocks = blocksWhile(states, wiring, all);
      shared = { blocks, shared: blocks.all.filter((block) => isSharedByUnknown(network, block)) };
      known.set(key, shared);
    }
    return shared;
  };
  const within = (block: readonly number[]) => ({
    conductors: block.filter((edge) => edge < network.conductors.length),
    batteries: block.flatMap((edge) => {
      const source = all.sources[edge - wiring.edges.length];
      return source !== undefined && network.parts[source]!.kind === "battery" ? [source] : [];
    }),
    passing: block
      .flatMap((edge) => [all.graph.a[edge]!, all.graph.b[edge]!])
      .map((terminal) => network.terminals[terminal]!.part)
      .filter((part) => passesCurrentOn(network.parts[part]!)),
  });
  let undivided: Undivided | undefined;
  const findUndivided = (): Undivided => {
    const found = network.scenarios.flatMap((scenario) => sharedIn(scenario).shared.map(within));
    return {
      conductors: new Set(found.flatMap(({ conductors }) => conductors)),
      parts: new Set(found.flatMap(({ batteries, passing }) => [...batteries, ...passing])),
    };
  };
  return {
    atMost(result) {
      const { blocks, shared } = sharedIn(network.scenarios[result.scenario]!);
      if (shared.length === 0) return result;
      const [conductorA, partA] = [[...result.conductorA], [...result.partA]];
      for (const block of shared) {
        const { drawnA, fedA } = currentsAcross(network, result, blocks, block[0]!);
        const mostA = Math.max(drawnA, fedA);
        const { conductors, batteries, passing } = within(block);
        for (const conductor of conductors) conductorA[conductor] = raised(conductorA[conductor]!, mostA);
        for (const battery of batteries)
          partA[battery] = raised(partA[battery]!, partA[battery]! < 0 ? fedA : drawnA);
        for (const part of passing) partA[part] = raised(partA[part]!, mostA);
      }
      return { ...result, conductorA, partA };
    },
    sharesCurrentBy: (scenario, conductor) =>
      sharedIn(scenario)
        .shared.filter((block) => block.includes(conductor))
        .flatMap((block) => block.filter(isUnknown)),
    partSharesCurrentBy: (scenario, part) =>
      sharedIn(scenario).shared.flatMap((block) => {
        const { batteries, passing } = within(block);
        return batteries.includes(part) || passing.includes(part) ? block.filter(isUnknown) : [];
      }),
    undivided: () => (undivided ??= findUndivided()),
    decidedBy(scenario, conductor) {
      const block = sharedIn(scenario).shared.find((edges) => edges.includes(conductor));
      return block ? block.filter(isUnknown) : [conductor].filter(isUnknown);
    },
  };
});

export function hasUnknownLength({ conductors }: Network): boolean {
  return conductors.some(({ lengthM }) => lengthM === undefined);
}

/**
 * Whether the share of a battery, by its part index, in the current of its bank depends on an unknown length, or the current through a
 * part that passes current on.
 */
export function isShareUnknown(network: Network, scenario: number, part: number): boolean {
  return unknownSharesOf(network).partSharesCurrentBy(network.scenarios[scenario]!, part).length > 0;
}

interface Undivided {
  readonly conductors: ReadonlySet<number>;
  readonly parts: ReadonlySet<number>;
}

interface SharedBlocks {
  readonly blocks: Blocks;
  /** Those in which a current divides by an unknown length. */
  readonly shared: readonly (readonly number[])[];
}

/** The sums of the currents that devices draw and feed across the block of an edge, A. */
function currentsAcross(
  network: Network,
  { partA, inputA }: SolvedScenario,
  blocks: Blocks,
  edge: number,
): { readonly drawnA: number; readonly fedA: number } {
  let [drawnA, fedA] = [0, 0];
  for (const part of network.parts) {
    if (part.kind === "battery") continue;
    for (const { positive, negative, does } of portsOf(part)) {
      const ownA = partA[part.index]!;
      const currentA =
        does === "feeds" ? Math.max(0, ownA) : Math.max(inputA[part.index]!, isConverter(part) ? 0 : -ownA);
      if (!(currentA > 0) || !blocks.between(positive, negative).includes(edge)) continue;
      if (does === "feeds") fedA += currentA;
      else drawnA += currentA;
    }
  }
  return { drawnA, fedA };
}

/** It draws its input current alone. */
function isConverter(part: Network["parts"][number]): boolean {
  return descriptorOf(part).role === "converter";
}

/** With its sign. */
function raised(currentA: number, mostA: number): number {
  return Math.abs(currentA) >= mostA ? currentA : currentA < 0 ? -mostA : mostA;
}
