import { internalConnections } from "../../../model/internal-connections.ts";
import type { Network, Part } from "../../../model/network.ts";
import { givesEnergy, type PartWithRole } from "../../../model/part-roles.ts";
import { asClosed, type PartState } from "../../../model/parts/define-part.ts";
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

/** All connections inside parts, in the order of the parts. Every switch is closed if no states are given. */
export function internalConnectionsOf(
  { parts }: Network,
  stateOf: (part: Part) => PartState = () => asClosed,
): InternalConnection[] {
  return parts.flatMap((part) =>
    internalConnections(part, stateOf(part)).map(({ between: [a, b], ohm }) => ({ a, b, ohm })),
  );
}

/** All sources, in the order of their parts. */
export function sourcesOf({ parts }: Network): Source[] {
  return parts
    .filter(givesEnergy)
    .flatMap((part) =>
      portsOf(part).flatMap(({ does, positive, negative }) =>
        does === "feeds" ? [{ part: part.index, positive, negative, limitA: limitOf(part) }] : [],
      ),
    );
}

/**
 * A battery, and an alternator that does not limit itself, set no limit. A solar module gives 1.25 times its rated short-circuit
 * current in the brightest sun, and conductors are chosen for 1.25 times that (NFPA 70, 690.8).
 */
function limitOf(part: PartWithRole<"source" | "converter">): number {
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
  }
}

/**
 * The negative terminal that belongs to a positive one of the same part: current that enters there returns here.
 * A fuse panel's belongs to its feed and its branches. Undefined for parts that only pass current on.
 */
export function returnTerminal(part: Part, positive: number): number | undefined {
  if (part.kind === "fusePanel") {
    return part.negativeBus && positive !== part.terminals.negative ? part.terminals.negative : undefined;
  }
  return portsOf(part).find((pair) => pair.positive === positive)?.negative;
}
