import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { EitherTerminal } from "./terminal.ts";

/**
 * Any other part at which conductors end: its terminals, and the connections inside it. A socket, a terminal block, a filter.
 * Each terminal has the name that you give it: `socket.in`.
 *
 * Example: `part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"] }] })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function part<const Name extends string>(input: OtherPartInput<Name>): PlannedOtherPart<Name> {
  return frozenPlanData(input, "part", "its own") as PlannedOtherPart<Name>;
}

/** The result of {@link part}, frozen. Its type shows the terminals only, although it holds the input too. */
export type PlannedOtherPart<Name extends string = string> = {
  readonly kind: "part";
  /** Number of the call that made it. */
  readonly id: number;
} & { readonly [Terminal in Name]: EitherTerminal };

/** A part with a `positive` and a `negative` terminal; a circuit may therefore end at it. */
export interface PartWithPoles {
  readonly kind: "part";
  /** Number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: EitherTerminal;
  /** Its minus. */
  readonly negative: EitherTerminal;
}

/** The input of {@link part}. */
export interface OtherPartInput<Name extends string = string> extends PartOptions {
  /**
   * The names of its terminals, as texts, 1 to 100 of them. Always needed.
   *
   * Example: `terminals: ["in", "out"]`
   */
  readonly terminals: readonly Name[];
  /**
   * The connections inside it: pairs of terminals, each with its resistance in milliohms (0 if left out).
   *
   * Left out: taken as none.
   *
   * Example: `joins: [{ between: ["in", "out"], milliohm: 2 }]`
   */
  readonly joins?: readonly JoinInput<NoInfer<Name>>[];
  /**
   * Maximum current that it may carry, A. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `ratedA: 80`
   */
  readonly ratedA?: number;
}

/** Two terminals of a part that are connected inside it. */
export interface JoinInput<Name extends string = string> {
  /**
   * The two terminals, by their names. Always needed.
   *
   * Example: `between: ["in", "out"]`
   */
  readonly between: readonly [Name, Name];
  /**
   * Resistance between them, milliohms. 0, or from 0.001 to 1,000,000.
   *
   * Left out: taken as 0: one piece of metal.
   *
   * Example: `milliohm: 2`
   */
  readonly milliohm?: number;
}
