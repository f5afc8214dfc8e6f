import type { AcceptedFindings } from "./rule-id.ts";
import type { AwgSize, Mm2Size } from "./sizes.ts";
import type { Termination } from "./termination.ts";

/** The properties of every part. Every property may be left out. */
export interface PartOptions {
  /**
   * Name of the part, in findings, lists and drawings. Shown up to 80 characters.
   *
   * Left out: taken as the name of the variable that holds the part, or its place in the file.
   *
   * Example: `name: "House bank"`
   */
  readonly name?: string;
  /**
   * Source of its numbers, in your own words, for others to look them up.
   *
   * Left out: taken as not stated.
   *
   * Example: `source: "data sheet p. 3"`
   */
  readonly source?: string;
  /**
   * Findings that you accept for this part: the rule's id, and your reason. They are then shown as accepted, with
   * the reason, everywhere. An empty reason is an error.
   *
   * Left out: taken as none.
   *
   * Example: `accept: { "disconnect/missing": "the plug is pulled by hand" }`
   */
  readonly accept?: AcceptedFindings;
  /**
   * How conductors are fastened to its terminals: by a ring on a stud or screw ("#6", "#8", "#10", "1/4 in", "5/16 in",
   * "3/8 in", "1/2 in", "M3.5", "M4", "M5", "M6", "M8", "M10", "M12"), in a "screw clamp", or on a "6.3 mm tab".
   *
   * Left out: taken as not known, and lists give the usual fitting, marked so.
   *
   * Example: `termination: "M8"`
   */
  readonly termination?: Termination;
  /**
   * The largest conductor that its terminals take, AWG: 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0", "2/0", "3/0" or "4/0". Each of
   * several wires in parallel counts by itself. Give `largestGauge` or `largestMm2`, not both.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `largestGauge: 6`
   */
  readonly largestGauge?: AwgSize;
  /**
   * The same as a cross-section, mm²: 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120 or 150.
   * Give `largestGauge` or `largestMm2`, not both.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `largestMm2: 16`
   */
  readonly largestMm2?: Mm2Size;
  /**
   * Tightening torque of its terminals, as its maker states it, N·m. Above 0, up to 200.
   *
   * Left out: taken as not known, and lists leave it empty: no value is right for every part.
   *
   * Example: `torqueNm: 9`
   */
  readonly torqueNm?: number;
  /**
   * Price, in the `currency` of `build`. From 0 to 1,000,000.
   *
   * Left out: taken as not known, and lists leave it empty.
   *
   * Example: `price: 45`
   */
  readonly price?: number;
}
