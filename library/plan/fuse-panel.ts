import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";
import type { Termination } from "./termination.ts";

/**
 * A fuse panel: a feed, and fused branches. The fuse of a branch belongs to the circuit that leaves it: its `protect`.
 *
 * Example: `fusePanel({ positions: 12, ratedA: 100, branchRatedA: 30 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function fusePanel(input: FusePanelInput): PlannedFusePanel {
  return frozenPlanData(input, "fusePanel", terminals) as PlannedFusePanel;
}

const terminals = ["feed", "branch", "negative"] as const;

/** What {@link fusePanel} gives back: what it was given, frozen, and the terminals. */
export interface PlannedFusePanel extends FusePanelInput {
  readonly kind: "fusePanel";
  /** The number of the call that made it. */
  readonly id: number;
  /** Where its feeder lands. */
  readonly feed: PositiveTerminal;
  /** Where branches leave: any of its positions. */
  readonly branch: PositiveTerminal;
  /** Its bus for the returns. */
  readonly negative: NegativeTerminal;
}

/** What {@link fusePanel} is given. */
export interface FusePanelInput extends PartOptions {
  /**
   * How many branches it has room for. A whole number, 1 to 200. Always needed.
   *
   * Example: `positions: 12`
   */
  readonly positions: number;
  /**
   * The most that its feed may carry, A. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `ratedA: 100`
   */
  readonly ratedA?: number;
  /**
   * The most that one branch may carry, A. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `branchRatedA: 30`
   */
  readonly branchRatedA?: number;
  /**
   * Whether it has a bus for the returns, its terminal `negative`.
   *
   * Left out: taken as true.
   *
   * Example: `negativeBus: false`
   */
  readonly negativeBus?: boolean;
  /**
   * How conductors are fastened at its branches, and their returns at its bus for the returns, where that is not as at its
   * feed. Whatever else ends at that bus, as the feeder's return does, is fastened as at the feed. Written like `termination`.
   *
   * Left out: taken as `termination`.
   *
   * Example: `termination: "M6", branchTermination: "#8"`
   */
  readonly branchTermination?: Termination;
  /**
   * What its maker says that its branches, and their returns at its bus, are tightened with, N·m. Above 0, up to 200.
   *
   * Left out: taken as `torqueNm`; where `branchTermination` is given, as not known.
   *
   * Example: `branchTermination: "#8", branchTorqueNm: 1.4`
   */
  readonly branchTorqueNm?: number;
}
