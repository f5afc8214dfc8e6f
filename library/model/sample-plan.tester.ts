import type { Network } from "./network.ts";
import type { PlanModel } from "./plan-model.ts";
import { readModel } from "./read-model.ts";
import type { PlanRecord, Word } from "./record.ts";
import type { InvalidValue } from "./run.ts";

/*
 * For tests: the model of the results of DSL functions, passed in the order of their calls. The functions number their calls,
 * so each test begins with `continueNumberingAt(0)`.
 */

export interface Made {
  readonly kind: Word;
  readonly id: number;
}

export function modelOf(...made: readonly Made[]): PlanModel {
  return readModel(recordsOf(made));
}

export function recordsOf(made: readonly Made[]): readonly PlanRecord[] {
  return made.map((input, index): PlanRecord => {
    if (input.id !== index)
      throw new Error(`${input.kind} ${input.id} is not handed over in the order of calls`);
    return { word: input.kind, input: { ...input }, fallbackName: `${input.kind} ${index}` };
  });
}

/** The network of a plan that must be valid. */
export function networkOf(...made: readonly Made[]): Network {
  const { network, networkUnread, unjudged, invalid } = modelOf(...made);
  if (!network || networkUnread || unjudged.length > 0 || invalid.length > 0)
    throw new Error(`not in order: ${JSON.stringify({ networkUnread, unjudged, invalid }, null, 1)}`);
  return network;
}

/**
 * The errors in a network, a line each: "2: to is a busBar, which has no two poles". The network must remain unread, or be read without a
 * circuit.
 */
export function complaints(...made: readonly Made[]): readonly string[] {
  const { networkUnread, withoutCircuits, invalid } = modelOf(...made);
  if (!networkUnread && withoutCircuits.length === 0) throw new Error("the whole network was read");
  return invalid.map(complaint);
}

function complaint({ record, path, given, wrong, stopsNetwork, leavesOutCircuit }: InvalidValue): string {
  if (!stopsNetwork && !leavesOutCircuit) throw new Error(`${wrong} does not stop the network`);
  return [`${record}: ${path.join(".")}`.trim(), given && `(${given})`, wrong].filter(Boolean).join(" ");
}

/** Passes a value that the types would refuse, as a plan in JavaScript could. */
export const loosely = (given: unknown) => given as never;

export const heavy = { lengthFt: 3, gauge: 2 } as const;
export const light = { oneWayFt: 10, gauge: 12, protect: 10 } as const;
