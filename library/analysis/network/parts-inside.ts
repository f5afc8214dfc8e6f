import type { Network, Part } from "../../model/network.ts";
import { solarCurrentFactors } from "../../standards/solar-factors.ts";
import { twoPolesOf } from "./two-poles.ts";

/** What joins two terminals inside a part, whatever its state: a disconnect counts as closed. */
export interface InnerJoin {
  readonly a: number;
  readonly b: number;
  /** 0: one piece of metal. */
  readonly ohm: number;
}

/** A part, or one side of it, that can push current into the network. */
export interface Source {
  readonly part: number;
  /** Terminal indices. */
  readonly positive: number;
  readonly negative: number;
  /** The most it pushes for longer than a moment, A; Infinity where nothing in it sets a limit. */
  readonly limitA: number;
}

/**
 * All joins inside parts. Not through loads, sources and converters; but the negatives of a DC-DC charger that is not
 * isolated are one.
 */
export function innerJoins({ parts }: Network): InnerJoin[] {
  const joins: InnerJoin[] = [];
  for (const part of parts) {
    if (part.kind === "fusePanel") joins.push({ a: part.terminals.feed, b: part.terminals.branch, ohm: 0 });
    if (part.kind === "disconnect") joins.push({ a: part.terminals.line, b: part.terminals.load, ohm: 0 });
    if (part.kind === "shunt") {
      joins.push({ a: part.terminals.batterySide, b: part.terminals.systemSide, ohm: part.ohm });
    }
    if (part.kind === "chassis") {
      joins.push({ a: part.terminals.bond, b: part.terminals.metal, ohm: part.ohm });
    }
    if (part.kind === "dcDcCharger" && !part.isolated) {
      joins.push({ a: part.terminals.inputNegative, b: part.terminals.outputNegative, ohm: 0 });
    }
    if (part.kind === "part") {
      for (const { between, ohm } of part.joins) joins.push({ a: between[0], b: between[1], ohm });
    }
  }
  return joins;
}

/** All sources, in the order of their parts. */
export function sourcesOf({ parts }: Network): Source[] {
  return parts.flatMap((part) =>
    twoPolesOf(part).flatMap(({ does, positive, negative }) =>
      does === "feeds" ? [{ part: part.index, positive, negative, limitA: limitOf(part) }] : [],
    ),
  );
}

/**
 * A battery, and an alternator that does not limit itself, set no limit. A panel gives 1.25 times its rated short-circuit
 * current in the brightest sun, and conductors are chosen for 1.25 times that (NFPA 70, 690.8).
 */
function limitOf(part: Part): number {
  switch (part.kind) {
    case "alternator":
      return part.selfLimiting ? part.ratedA : Number.POSITIVE_INFINITY;
    case "shoreCharger":
    case "dcDcCharger":
    case "solarController":
      return part.outputA;
    case "solarArray": {
      const { irradiance, continuous } = solarCurrentFactors;
      return irradiance * continuous * part.shortCircuitA * part.parallel;
    }
    default:
      return Number.POSITIVE_INFINITY;
  }
}

/**
 * The negative terminal that belongs to a positive one of the same part: where current comes back that goes in there.
 * A fuse panel's belongs to its feed and its branches. Undefined for what only passes current on.
 */
export function returnTerminal(part: Part, positive: number): number | undefined {
  if (part.kind === "fusePanel") {
    return part.hasNegativeBus && positive !== part.terminals.negative ? part.terminals.negative : undefined;
  }
  return twoPolesOf(part).find((pair) => pair.positive === positive)?.negative;
}
