import type { Join, Network, Part } from "../../../model/network.ts";
import { partTraits } from "../../../model/part-roles.ts";
import { solarCurrentFactors } from "../../../standards/solar-factors.ts";
import { portsOf } from "./ports.ts";

/** A connection of two terminals inside a part, in any state of the part: a disconnect counts as closed. */
export interface InternalConnection {
  readonly a: number;
  readonly b: number;
  /** 0: one piece of metal. */
  readonly ohm: number;
}

/** A part, or one side of it, that can feed current into the network. */
export interface Source {
  readonly part: number;
  /** Terminal indices. */
  readonly positive: number;
  readonly negative: number;
  /** Its maximum current for longer than a moment, A; Infinity if it has no internal limit. */
  readonly limitA: number;
}

/**
 * The connections between terminals inside a part. None through loads, sources and converters; but the negatives of a DC-DC
 * charger that is not isolated are one. Fuses and contacts have no resistance.
 */
export function internalConnections(part: Part): readonly Join[] {
  if (part.kind === "part") return part.joins;
  const { joins } = partTraits[part.kind];
  if (joins === "stated in the plan" || ("isolated" in part && part.isolated)) return [];
  const terminals: Readonly<Record<string, number>> = part.terminals;
  const ohm = "ohm" in part ? part.ohm : 0;
  return joins.map(([one, other]) => ({ between: [terminals[one]!, terminals[other]!], ohm }));
}

/** All connections inside parts, in the order of the parts. */
export function internalConnectionsOf({ parts }: Network): InternalConnection[] {
  return parts.flatMap((part) =>
    internalConnections(part).map(({ between: [a, b], ohm }) => ({ a, b, ohm })),
  );
}

/** All sources, in the order of their parts. */
export function sourcesOf({ parts }: Network): Source[] {
  return parts.flatMap((part) =>
    portsOf(part).flatMap(({ does, positive, negative }) =>
      does === "feeds" ? [{ part: part.index, positive, negative, limitA: limitOf(part) }] : [],
    ),
  );
}

/**
 * A battery, and an alternator that does not limit itself, set no limit. A solar module gives 1.25 times its rated short-circuit
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
    case "battery":
      return Number.POSITIVE_INFINITY;
    case "inverter":
    case "load":
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "shunt":
    case "chassis":
    case "part":
      // Not a source, so its limit is never used.
      return 0;
  }
}

/**
 * The negative terminal that belongs to a positive one of the same part: current that enters there returns here.
 * A fuse panel's belongs to its feed and its branches. Undefined for parts that only pass current on.
 */
export function returnTerminal(part: Part, positive: number): number | undefined {
  if (part.kind === "fusePanel") {
    return part.hasNegativeBus && positive !== part.terminals.negative ? part.terminals.negative : undefined;
  }
  return portsOf(part).find((pair) => pair.positive === positive)?.negative;
}
