import type { GiveOnlyOneOf } from "./give-only-one-of.ts";

/*
 * Places and sizes. Each is one object with one unit, millimetres or inches: pairs of properties for both units in the functions
 * themselves multiply with one another in the compiler, and a plan of 300 calls would take ten times as long to check.
 */

/** A point of a surface, from its top left corner as you look at it. */
export type SurfacePoint = PointInMillimetres | PointInInches;

interface PointInMillimetres {
  /**
   * Distance from the left edge of the surface, mm. From 0 to 20,000. Give `leftMm` and `topMm`, or `leftIn` and `topIn`.
   *
   * Example: `leftMm: 120`
   */
  readonly leftMm: number;
  /**
   * Distance from the top edge of the surface, mm. From 0 to 20,000. Give `leftMm` and `topMm`, or `leftIn` and `topIn`.
   *
   * Example: `topMm: 80`
   */
  readonly topMm: number;
  readonly leftIn?: GiveOnlyOneOf.millimetres_or_inches;
  readonly topIn?: GiveOnlyOneOf.millimetres_or_inches;
}

interface PointInInches {
  /**
   * Distance from the left edge of the surface, in. From 0 to 800. Give `leftMm` and `topMm`, or `leftIn` and `topIn`.
   *
   * Example: `leftIn: 5`
   */
  readonly leftIn: number;
  /**
   * Distance from the top edge of the surface, in. From 0 to 800. Give `leftMm` and `topMm`, or `leftIn` and `topIn`.
   *
   * Example: `topIn: 3`
   */
  readonly topIn: number;
  readonly leftMm?: GiveOnlyOneOf.millimetres_or_inches;
  readonly topMm?: GiveOnlyOneOf.millimetres_or_inches;
}

/** A width and a height. */
export type FlatSize = FlatSizeInMillimetres | FlatSizeInInches;

interface FlatSizeInMillimetres {
  /**
   * Width, mm. Above 0, up to 20,000. Give `widthMm` and `heightMm`, or `widthIn` and `heightIn`.
   *
   * Example: `widthMm: 1_200`
   */
  readonly widthMm: number;
  /**
   * Height, mm; of a floor or ceiling, the other side. Above 0, up to 20,000. Give `widthMm` and `heightMm`, or `widthIn` and
   * `heightIn`.
   *
   * Example: `heightMm: 800`
   */
  readonly heightMm: number;
  readonly widthIn?: GiveOnlyOneOf.millimetres_or_inches;
  readonly heightIn?: GiveOnlyOneOf.millimetres_or_inches;
}

interface FlatSizeInInches {
  /**
   * Width, in. Above 0, up to 800. Give `widthMm` and `heightMm`, or `widthIn` and `heightIn`.
   *
   * Example: `widthIn: 48`
   */
  readonly widthIn: number;
  /**
   * Height, in; of a floor or ceiling, the other side. Above 0, up to 800. Give `widthMm` and `heightMm`, or `widthIn` and `heightIn`.
   *
   * Example: `heightIn: 32`
   */
  readonly heightIn: number;
  readonly widthMm?: GiveOnlyOneOf.millimetres_or_inches;
  readonly heightMm?: GiveOnlyOneOf.millimetres_or_inches;
}

/** The outline of a part as it hangs upright, and its depth. */
export type BodySize = (FlatSizeInMillimetres & DepthInMillimetres) | (FlatSizeInInches & DepthInInches);

interface DepthInMillimetres {
  /**
   * Depth, from the surface to its front, mm. Above 0, up to 20,000.
   *
   * Left out: taken as not known, and not drawn.
   *
   * Example: `depthMm: 90`
   */
  readonly depthMm?: number;
  readonly depthIn?: GiveOnlyOneOf.millimetres_or_inches;
}

interface DepthInInches {
  /**
   * Depth, from the surface to its front, in. Above 0, up to 800.
   *
   * Left out: taken as not known, and not drawn.
   *
   * Example: `depthIn: 3.5`
   */
  readonly depthIn?: number;
  readonly depthMm?: GiveOnlyOneOf.millimetres_or_inches;
}

/** A rectangle of a surface. */
export type SurfaceArea = SurfacePoint & FlatSize;

/** The distance that a part needs to everything else, on each of its sides as it hangs upright. */
export type AirSpace = AirInMillimetres | AirInInches;

interface AirInMillimetres {
  /**
   * On its left, mm. From 0 to 2,000.
   *
   * Left out: taken as none stated on that side, and not judged.
   *
   * Example: `leftMm: 50`
   */
  readonly leftMm?: number;
  /**
   * On its right, mm. From 0 to 2,000.
   *
   * Left out: taken as none stated on that side, and not judged.
   *
   * Example: `rightMm: 50`
   */
  readonly rightMm?: number;
  /**
   * Above it, mm. From 0 to 2,000.
   *
   * Left out: taken as none stated on that side, and not judged.
   *
   * Example: `topMm: 100`
   */
  readonly topMm?: number;
  /**
   * Below it, mm. From 0 to 2,000.
   *
   * Left out: taken as none stated on that side, and not judged.
   *
   * Example: `bottomMm: 100`
   */
  readonly bottomMm?: number;
  readonly leftIn?: GiveOnlyOneOf.millimetres_or_inches;
  readonly rightIn?: GiveOnlyOneOf.millimetres_or_inches;
  readonly topIn?: GiveOnlyOneOf.millimetres_or_inches;
  readonly bottomIn?: GiveOnlyOneOf.millimetres_or_inches;
}

interface AirInInches {
  /**
   * On its left, in. From 0 to 80.
   *
   * Left out: taken as none stated on that side, and not judged.
   *
   * Example: `leftIn: 2`
   */
  readonly leftIn?: number;
  /**
   * On its right, in. From 0 to 80.
   *
   * Left out: taken as none stated on that side, and not judged.
   *
   * Example: `rightIn: 2`
   */
  readonly rightIn?: number;
  /**
   * Above it, in. From 0 to 80.
   *
   * Left out: taken as none stated on that side, and not judged.
   *
   * Example: `topIn: 4`
   */
  readonly topIn?: number;
  /**
   * Below it, in. From 0 to 80.
   *
   * Left out: taken as none stated on that side, and not judged.
   *
   * Example: `bottomIn: 4`
   */
  readonly bottomIn?: number;
  readonly leftMm?: GiveOnlyOneOf.millimetres_or_inches;
  readonly rightMm?: GiveOnlyOneOf.millimetres_or_inches;
  readonly topMm?: GiveOnlyOneOf.millimetres_or_inches;
  readonly bottomMm?: GiveOnlyOneOf.millimetres_or_inches;
}

/** The place of a terminal on the front of its part, from the part's top left corner as it hangs upright. */
export type TerminalPlace = SurfacePoint & LeavesTowards;

interface LeavesTowards {
  /**
   * The side of the part towards which a lug leaves the terminal, as the part hangs upright: "left", "right", "up", "down" or
   * "front".
   *
   * Left out: taken as not known: the conductor may leave towards any side, and the room for its lug is not judged.
   *
   * Example: `leaves: "down"`
   */
  readonly leaves?: Leaving;
}

/** The side towards which a conductor leaves a terminal. */
export type Leaving = "left" | "right" | "up" | "down" | "front";

/**
 * The position of a part as its maker permits it: "upright", with its left or right side up ("left side up", "right side up"),
 * "upside down", on a floor ("on its back"; a battery stands there, "upright") or under a ceiling ("face down").
 */
export type MountingPosition =
  | "upright"
  | "left side up"
  | "right side up"
  | "upside down"
  | "on its back"
  | "face down";

/** The places of the terminals of a part, by their names; of one with several studs or branches, a list with each of them. */
export type TerminalPlaces = Readonly<Record<string, TerminalPlace | readonly TerminalPlace[]>>;
