import { disjointSets } from "../../../model/disjoint-sets.ts";
import { longestM, shortestM } from "../../../model/length-limits.ts";
import type { BatteryPart, Network, NetworkConductor, Part } from "../../../model/network.ts";
import { givesEnergy } from "../../../model/part-roles.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import { solarCurrentFactors } from "../../../standards/solar-factors.ts";
import { ampacityOf } from "../../ampacity.ts";
import { resistanceAt, wireResistance } from "../../resistance.ts";
import type { NetworkGraph } from "../topology/network-graph.ts";

/** A network during a dead short: nodes, and the resistances between them. Loads are left out. */
export interface FaultNetwork {
  readonly nodes: number;
  /** By terminal. Terminals on one piece of metal are one node. */
  readonly nodeOf: Int32Array;
  /** Inside shunts, metal and the like, whose resistance does not follow the temperature of copper. */
  readonly joins: readonly { readonly a: number; readonly b: number; readonly ohm: number }[];
  /** By branch, Ω: at 20 °C, and at the maximum temperature of its insulation. */
  readonly coldOhm: Float64Array;
  readonly hotOhm: Float64Array;
}

/** Built once for each graph. Conductors of unknown length have the shortest there may be: no real fault is greater. */
export const faultNetwork: (wiring: NetworkGraph) => FaultNetwork = workedOutOnce((wiring: NetworkGraph) =>
  build(wiring, shortestM),
);

/** The same with the longest there may be, which shows the faults that depend on an unknown length. */
export const faultNetworkAtLongest: (wiring: NetworkGraph) => FaultNetwork = workedOutOnce(
  (wiring: NetworkGraph) => build(wiring, longestM),
);

function build({ network, branches, sectionJoins: joins }: NetworkGraph, unknownM: number): FaultNetwork {
  const merged = disjointSets(network.terminals.length);
  for (const { a, b, ohm } of joins) if (ohm < leastOhm) merged.union(a, b);
  const nodeOf = new Int32Array(network.terminals.length);
  const numbers = new Int32Array(network.terminals.length).fill(-1);
  let nodes = 0;
  for (let terminal = 0; terminal < nodeOf.length; terminal++) {
    const set = merged.find(terminal);
    if (numbers[set] === -1) numbers[set] = nodes++;
    nodeOf[terminal] = numbers[set]!;
  }
  return {
    nodes,
    nodeOf,
    joins: joins.flatMap(({ a, b, ohm }) => (ohm < leastOhm ? [] : [{ a: nodeOf[a]!, b: nodeOf[b]!, ohm }])),
    coldOhm: ohmOfBranches(coldOhmOf),
    hotOhm: ohmOfBranches(hotOhmOf),
  };

  function ohmOfBranches(ohmOf: (conductor: NetworkConductor, unknownM: number) => number): Float64Array {
    return Float64Array.from(branches, ({ ohm = 0 }, index) => {
      const conductor = network.conductors[index];
      return conductor ? ohmOf(conductor, unknownM) : Math.max(leastDeviceOhm, ohm);
    });
  }
}

/** A nano-ohm. A smaller resistance counts as none, or as this much: no real connection has less. */
const leastOhm = 1e-9;

/** A micro-ohm, far below any real fuse or contact. Through less, floating-point accuracy would leave no current. */
const leastDeviceOhm = 1e-6;

/** At 20 °C, for the maximum fault. */
function coldOhmOf(conductor: NetworkConductor, unknownM: number): number {
  return Math.max(leastOhm, ohmAt(conductor, 20, unknownM));
}

/** At the insulation's rating (the table's column), or as hot as the place if that is hotter: for the minimum fault. */
function hotOhmOf(conductor: NetworkConductor, unknownM: number): number {
  const { columnC, ambientC } = ampacityOf(conductor.run);
  return Math.max(leastOhm, ohmAt(conductor, Math.max(columnC, ambientC), unknownM));
}

function ohmAt({ run, lengthM }: NetworkConductor, temperatureC: number, unknownM: number): number {
  const wire = wireResistance(run.conductor);
  // The model accepts only sizes in the tables.
  if (!wire) throw new Error(`No resistance for ${JSON.stringify(run.conductor)}.`);
  return (resistanceAt(wire.ohmPerM20C, temperatureC) * (lengthM ?? unknownM)) / run.conductor.parallel;
}

/** A battery as a voltage behind a resistance. */
export interface TheveninSource {
  readonly voltageV: number;
  readonly ohm: number;
}

/**
 * For the maximum fault: fully charged, behind the resistance that follows from the stated short-circuit current, else
 * behind the low end of its internal resistance.
 *
 *     R = E / I_k     E rest voltage when full, V; I_k short-circuit current as the maker states it, A
 */
export function sourceForMaxFault({ fullV, shortCircuitA, internal }: BatteryPart): TheveninSource {
  const ohm = shortCircuitA === undefined ? internal.lowOhm : fullV / shortCircuitA;
  return { voltageV: fullV, ohm: Math.max(leastOhm, ohm) };
}

/**
 * For the minimum fault: at the nominal voltage of its system (2 V a lead-acid cell, 3 V a cell of LiFePO4), behind the high end of
 * its internal resistance.
 */
export function sourceForMinFault({ systemV, fullV, shortCircuitA, internal }: BatteryPart): TheveninSource {
  const ohm =
    shortCircuitA === undefined ? internal.highOhm : Math.max(internal.highOhm, fullV / shortCircuitA);
  return { voltageV: systemV, ohm: Math.max(leastOhm, ohm) };
}

/** True if the plan states neither the internal resistance nor the short-circuit current. */
export function isEstimated({ internal, shortCircuitA }: BatteryPart): boolean {
  return !internal.stated && shortCircuitA === undefined;
}

/**
 * The fault contribution of a source other than a battery, A: the rating of a charger or an alternator; for solar modules the
 * short-circuit current in the brightest sun, 1.25 times the rated one (NFPA 70, 690.8(A)(1)).
 */
export function addedToShortA(part: Part): number | undefined {
  if (!givesEnergy(part)) return undefined;
  switch (part.kind) {
    case "alternator":
      return part.ratedA;
    case "shoreCharger":
    case "dcDcCharger":
    case "solarController":
      return part.outputA;
    case "solarArray":
      return solarCurrentFactors.irradiance * part.shortCircuitA * part.parallel;
    case "battery":
      return undefined;
    default:
      return part satisfies never;
  }
}

export function batteriesOf({ parts }: Network): BatteryPart[] {
  return parts.filter((part) => part.kind === "battery");
}
