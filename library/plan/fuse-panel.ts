import type { TestedBehindInput } from "./device-in-short.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { AwgSize, FuseFamily, Mm2Size } from "./sizes.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";
import type { TerminalRating } from "./terminal-rating.ts";
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

/** The result of {@link fusePanel}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedFusePanel {
  readonly kind: "fusePanel";
  /** Number of the call that made it. */
  readonly id: number;
  /** The end of its feeder. */
  readonly feed: PositiveTerminal;
  /** The start of branches: any of its positions. */
  readonly branch: PositiveTerminal;
  /** Its return bus. */
  readonly negative: NegativeTerminal;
}

/** The input of {@link fusePanel}. */
export interface FusePanelInput extends PartOptions, TerminalRating {
  /**
   * Number of branches that it has room for. A whole number, 1 to 200. Always needed.
   *
   * Example: `positions: 12`
   */
  readonly positions: number;
  /**
   * Maximum current that its feed may carry, and its negative bus, A. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `ratedA: 100`
   */
  readonly ratedA?: number;
  /**
   * Maximum current that one branch may carry, A. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `branchRatedA: 30`
   */
  readonly branchRatedA?: number;
  /**
   * Family of the fuses that its positions take, named by its standard, or `"circuit breaker"`. Each fuse at its branches is of
   * this family, unless its own `family` is stated.
   *
   * Left out: taken as not known, and each circuit states the family of its fuse, or none.
   *
   * Example: `branchFamily: "ISO 8820-3 Type C"`
   */
  readonly branchFamily?: FuseFamily;
  /**
   * Whether it has a return bus, its terminal `negative`.
   *
   * Left out: taken as true.
   *
   * Example: `negativeBus: false`
   */
  readonly negativeBus?: boolean;
  /**
   * A combination that its maker tested: behind a device of this family, rated at most this, each of its branch fuses interrupts
   * this current.
   *
   * Left out: taken as none, and its branch fuses are judged by their own interrupting ratings.
   *
   * Example: `testedBehind: { family: "UL 248-15 Class T", ratingA: 200, interruptingA: 10_000 }`
   */
  readonly testedBehind?: TestedBehindInput;
  /**
   * How conductors are fastened at its branches, and their returns at its return bus, if that differs from its feed. Other
   * conductors at that bus, such as the feeder's return, are fastened as at the feed. Written like `termination`.
   *
   * Left out: taken as `termination`.
   *
   * Example: `termination: "M6", branchTermination: "#8"`
   */
  readonly branchTermination?: Termination;
  /**
   * The largest conductor that its branches take, AWG: 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0", "2/0", "3/0" or "4/0". Each of
   * several wires in parallel counts by itself. Give `branchLargestGauge` or `branchLargestMm2`, not both.
   *
   * Left out: taken from its terminals.
   *
   * Example: `branchLargestGauge: 6`
   */
  readonly branchLargestGauge?: AwgSize;
  /**
   * The same as a cross-section, mm²: 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120 or 150.
   * Give `branchLargestGauge` or `branchLargestMm2`, not both.
   *
   * Left out: taken from its terminals.
   *
   * Example: `branchLargestMm2: 16`
   */
  readonly branchLargestMm2?: Mm2Size;
  /**
   * Tightening torque of its branches, and of their returns at its bus, as its maker states it, N·m. Above 0, up to 200.
   *
   * Left out: taken as `torqueNm`; if `branchTermination` is given, as not known.
   *
   * Example: `branchTermination: "#8", branchTorqueNm: 1.4`
   */
  readonly branchTorqueNm?: number;
}
