import type { PartPlace } from "./part-place.ts";
import type { AirSpace, BodySize, MountingPosition, TerminalPlaces } from "./place.ts";
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
  /**
   * Its outline as it hangs upright, and its depth, in millimetres or inches.
   *
   * Left out: taken as not known: whether it fits is not judged.
   *
   * Example: `size: { widthMm: 220, heightMm: 140, depthMm: 90 }`
   */
  readonly size?: BodySize;
  /**
   * Its place: a surface, with the distance of its left and top edge from those of the surface, in millimetres or inches; or the free
   * end of a channel. Conductors without a length take it from the places of their parts.
   *
   * Left out: taken as not known, and it is listed as not yet placed.
   *
   * Example: `at: { on: board, leftMm: 120, topMm: 80 }`
   */
  readonly at?: PartPlace;
  /**
   * The distance that it needs to everything else on each side as it hangs upright, as its maker states it, in millimetres or inches.
   *
   * Left out: taken as not known, and not judged: no public figure exists.
   *
   * Example: `air: { topMm: 100, bottomMm: 100 }`
   */
  readonly air?: AirSpace;
  /**
   * The positions in which its maker permits it: "upright", "left side up", "right side up", "upside down", "on its back" or
   * "face down". On a floor, a battery stands upright and is seen from above; other parts lie on their backs.
   *
   * Left out: taken as not known, and not judged.
   *
   * Example: `mountingPositions: ["upright", "on its back"]`
   */
  readonly mountingPositions?: readonly MountingPosition[];
  /**
   * The places of its terminals on its front as it hangs upright, by their names, each with the side towards which a conductor leaves it.
   * Of a terminal with several studs or branches, a list with each: conductors take them in the order of the plan.
   *
   * Left out: taken as its middle, from which conductors leave towards any side.
   *
   * Example: `terminalsAt: { positive: { leftMm: 40, topMm: 10, leaves: "up" } }`
   */
  readonly terminalsAt?: TerminalPlaces;
  /**
   * Heat that it gives off at its greatest load, W. From 0 to 100,000.
   *
   * Left out: taken from its efficiency, if it has one; else as not known.
   *
   * Example: `heatW: 60`
   */
  readonly heatW?: number;
  /**
   * Whether it must stay cool: no part that gives off heat is then below it or close beside it.
   *
   * Left out: taken as not known, and not judged.
   *
   * Example: `keepCool: true`
   */
  readonly keepCool?: boolean;
  /**
   * Its mass, kg. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not counted.
   *
   * Example: `massKg: 4.2`
   */
  readonly massKg?: number;
  /**
   * Whether its live terminals are covered by a boot, cap or lid.
   *
   * Left out: taken as not known, and named only where bare metal or falling objects are stated.
   *
   * Example: `terminalsCovered: true`
   */
  readonly terminalsCovered?: boolean;
}
