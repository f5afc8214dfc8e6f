import type { SizeInput } from "./circuit.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { ProtectionInput } from "./protection.ts";
import type { AcceptedFindings } from "./rule-id.ts";
import type { RunOptions } from "./run-options.ts";
import type {
  BatteryNegative,
  BatteryPositive,
  EitherTerminal,
  NegativeTerminal,
  PositiveTerminal,
  Terminal,
} from "./terminal.ts";

/**
 * One conductor between two terminals, with its protection. The return conductor is another cable.
 * Give one size (`gauge` or `mm2`), and one length (`lengthFt` or `lengthM`): without it, its drop is not judged.
 *
 * Example: `cable({ from: house.positive, to: panel.feed, lengthFt: 4, gauge: 2, protect: 100 })`
 *
 * @returns The cable as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function cable<From extends Terminal>(input: CableInput<From>): PlannedCable {
  return frozenPlanData(input, "cable") as PlannedCable;
}

/** The result of {@link cable}: its input, frozen. */
export type PlannedCable = CableInput & {
  readonly kind: "cable";
  /** Number of the call that made it. */
  readonly id: number;
};

/** The input of {@link cable}: two terminals, one size, at most one length, and optional properties. */
export type CableInput<From extends Terminal = Terminal> = CableEnds<From> &
  CableOptions &
  CableLength &
  SizeInput;

/** How long the conductor is, in feet or in metres; it may be left out. */
export type CableLength = LengthInMetres | LengthInFeet;

/** The two terminals. */
export interface CableEnds<From extends Terminal = Terminal> {
  /**
   * The terminal where it begins, such as `house.positive`. The `protect` of a cable is near this end. Always needed.
   *
   * Example: `from: house.positive`
   */
  readonly from: From;
  /**
   * The terminal where it ends, of the same polarity, positive or negative, as `from`. Only a cable between two batteries in
   * series connects opposite poles. Always needed.
   *
   * Example: `to: panel.feed`
   */
  readonly to: FarEnd<From>;
}

/** The terminals to which a cable from a terminal may lead. */
type FarEnd<From> = From extends BatteryPositive
  ? PositiveTerminal | EitherTerminal | BatteryNegative
  : From extends BatteryNegative
    ? NegativeTerminal | EitherTerminal | BatteryPositive
    : From extends PositiveTerminal
      ? PositiveTerminal | EitherTerminal
      : From extends NegativeTerminal
        ? NegativeTerminal | EitherTerminal
        : Terminal;

interface LengthInFeet {
  /**
   * Length of the conductor, in feet. From 0.03 to 1,000. Give `lengthFt` or `lengthM`, not both.
   *
   * Left out: taken as not known. Its voltage drop, that of every device behind it and the least short-circuit current there are
   * then not judged.
   *
   * Example: `lengthFt: 4`
   */
  readonly lengthFt?: number;
  readonly lengthM?: GiveOnlyOneOf.lengthFt_or_lengthM;
}

interface LengthInMetres {
  /**
   * Length of the conductor, in metres. From 0.01 to 300. Give `lengthFt` or `lengthM`, not both.
   *
   * Left out: taken as not known. Its voltage drop, that of every device behind it and the least short-circuit current there are
   * then not judged.
   *
   * Example: `lengthM: 1.2`
   */
  readonly lengthM: number;
  readonly lengthFt?: GiveOnlyOneOf.lengthFt_or_lengthM;
}

/** The properties of a cable besides its terminals, length and size. Every property may be left out. */
export interface CableOptions extends RunOptions {
  /**
   * Name of the cable, in findings, lists and labels. Shown up to 80 characters.
   *
   * Left out: taken as the name of the variable that holds the cable, or its place in the file.
   *
   * Example: `name: "Panel feeder"`
   */
  readonly name?: string;
  /**
   * The fuse or breaker in it, near `from`: its rating in A, above 0 and up to 6,000, or an object with
   * `ratingA`, `family`, `distanceIn` or `distanceMm`, and `interruptingA`. The distance is measured from the `from` end.
   *
   * Left out: taken as none there.
   *
   * Example: `protect: { ratingA: 100, family: "UL 248-15 Class T", distanceIn: 6 }`
   */
  readonly protect?: number | ProtectionInput;
  /**
   * The fuse or breaker in it, near `to`. Written like `protect`; the distance is measured from the `to` end.
   *
   * Left out: taken as none there.
   *
   * Example: `protectFarEnd: 100`
   */
  readonly protectFarEnd?: number | ProtectionInput;
  /**
   * Whether it lies with others in one sheath over their insulation, all the way, as in a multi-conductor cable.
   * Sizes down to 18 AWG or 0.75 mm² are then allowed instead of 16 AWG or 1 mm², and protection up to 40 in from the
   * source instead of 7 in.
   *
   * Left out: taken as false.
   *
   * Example: `sheathed: true`
   */
  readonly sheathed?: boolean;
  /**
   * Number of other loaded conductors in the same bundle, sheath or duct. A whole number, 0 to 200. The more there are, the
   * less each may carry.
   *
   * Left out: taken as the cable's own other wires: 0, or more with `parallel`.
   *
   * Example: `bundledWith: 1`
   */
  readonly bundledWith?: number;
  /**
   * Whether its current flows for three hours or longer at a time. Protection then aims at 125 % of that current.
   *
   * Left out: taken from `build`, else as true.
   *
   * Example: `continuous: false`
   */
  readonly continuous?: boolean;
  /**
   * Findings that you accept for this cable: the rule's id, and your reason. They are then shown as accepted, with
   * the reason, everywhere. An empty reason is an error.
   *
   * Left out: taken as none.
   *
   * Example: `accept: { "protection/distance": "in a conduit all the way" }`
   */
  readonly accept?: AcceptedFindings;
}
