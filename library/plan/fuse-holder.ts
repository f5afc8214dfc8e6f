import type { DevicePartOptions } from "./device-part-options.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { FuseFamily } from "./sizes.ts";
import type { EitherTerminal } from "./terminal.ts";

/**
 * A fuse in a holder of its own: between two cables, or directly on a terminal, such as a battery's.
 *
 * Example: `fuseHolder({ ratingA: 200, family: "UL 248-15 Class T", on: house.positive })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function fuseHolder(input: FuseHolderInput): PlannedFuseHolder {
  return frozenPlanData(input, "fuseHolder", terminals) as PlannedFuseHolder;
}

const terminals = ["line", "load"] as const;

/** The result of {@link fuseHolder}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedFuseHolder {
  readonly kind: "fuseHolder";
  /** Number of the call that made it. */
  readonly id: number;
  /** Towards the source. */
  readonly line: EitherTerminal;
  /** Towards the load. */
  readonly load: EitherTerminal;
}

/** The input of {@link fuseHolder}. */
export interface FuseHolderInput extends DevicePartOptions {
  /**
   * Family of the fuse, named by its standard. The family must be made in this rating.
   *
   * Left out: taken as any family, and a rating is accepted if any family is made in it.
   *
   * Example: `family: "ISO 8820-5 Type SF 51"`
   */
  readonly family?: Exclude<FuseFamily, "circuit breaker">;
  /**
   * Rated current of the fuse holder, A, as marked on it: the largest fuse that it takes. Above 0, up to 6,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `holderRatedA: 60`
   */
  readonly holderRatedA?: number;
}
