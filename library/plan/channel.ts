import type { PlannedCompartment } from "./compartment.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { SurfacePoint } from "./place.ts";
import type { AcceptedFindings } from "./rule-id.ts";
import type { PlannedSurface } from "./surface.ts";

/**
 * A way for conductors: trunking, conduit, a bundle along a beam, a hole. It runs along a surface (`on` and `path`), or from a place on a
 * surface to another one or to a free end (`from`, `to` and a length).
 *
 * Example: `channel({ on: board, path: [{ leftMm: 50, topMm: 400 }, { leftMm: 1_150, topMm: 400 }] })`
 *
 * @returns The channel as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function channel(input: ChannelInput): PlannedChannel {
  return frozenPlanData(input, "channel") as PlannedChannel;
}

/** The result of {@link channel}: its input, frozen. */
export type PlannedChannel = ChannelInput & {
  readonly kind: "channel";
  /** Number of the call that made it. */
  readonly id: number;
};

/** The input of {@link channel}: its way, and optional properties. */
export type ChannelInput = ChannelOptions & (AlongSurface | BetweenInMetres | BetweenInFeet);

interface AlongSurface {
  /**
   * The surface along which it runs. Give `on` and `path`, or `from` and a length.
   *
   * Example: `on: board, path: [{ leftMm: 50, topMm: 400 }, { leftMm: 1_150, topMm: 400 }]`
   */
  readonly on: PlannedSurface;
  /**
   * The points of that surface through which it runs, in their order. At least 2, at most 100. Give `on` and `path`, or `from` and a
   * length.
   *
   * Example: `on: board, path: [{ leftMm: 50, topMm: 400 }, { leftMm: 1_150, topMm: 400 }]`
   */
  readonly path: readonly SurfacePoint[];
  readonly from?: GiveOnlyOneOf.on_or_from;
  readonly to?: GiveOnlyOneOf.on_or_from;
  readonly lengthM?: GiveOnlyOneOf.on_or_from;
  readonly lengthFt?: GiveOnlyOneOf.on_or_from;
}

interface Between {
  /**
   * The place on a surface where it begins. Give `from` and a length, or `on` and `path`.
   *
   * Example: `from: { on: board, leftMm: 1_150, topMm: 400 }`
   */
  readonly from: PlaceOfEnd;
  /**
   * The place on a surface where it ends.
   *
   * Left out: taken as a free end, where parts state `endOf`.
   *
   * Example: `to: { on: floor, leftMm: 20, topMm: 300 }`
   */
  readonly to?: PlaceOfEnd;
  readonly on?: GiveOnlyOneOf.on_or_from;
  readonly path?: GiveOnlyOneOf.on_or_from;
}

interface BetweenInMetres extends Between {
  /**
   * Its length, m. From 0.001 to 300. Of a hole, the thickness of the wall. Give `lengthM` or `lengthFt`, not both; one of them is
   * needed with `from`.
   *
   * Example: `lengthM: 2.4`
   */
  readonly lengthM: number;
  readonly lengthFt?: GiveOnlyOneOf.lengthFt_or_lengthM;
}

interface BetweenInFeet extends Between {
  /**
   * Its length, in feet. From 0.003 to 1,000. Of a hole, the thickness of the wall. Give `lengthM` or `lengthFt`, not both; one of
   * them is needed with `from`.
   *
   * Example: `lengthFt: 8`
   */
  readonly lengthFt: number;
  readonly lengthM?: GiveOnlyOneOf.lengthFt_or_lengthM;
}

/** The place of an end of a channel on a surface. */
export type PlaceOfEnd = OnSurfaceOfEnd & SurfacePoint;

interface OnSurfaceOfEnd {
  /**
   * The surface where it ends, with the distances of that place from its left and top edge. Always needed.
   *
   * Example: `on: board`
   */
  readonly on: PlannedSurface;
}

/** The properties of a channel besides its way. Every property may be left out. */
interface ChannelOptions {
  /**
   * Name of the channel, in findings, drawings and the wire schedule. Shown up to 80 characters.
   *
   * Left out: taken as the name of the variable that holds it, or its place in the file.
   *
   * Example: `name: "Main trunking"`
   */
  readonly name?: string;
  /**
   * Findings that you accept for this channel: the rule's id, and your reason. They are then shown as accepted, with the reason,
   * everywhere.
   *
   * Left out: taken as none.
   *
   * Example: `accept: { "placement/channel-fill": "the maker permits 60 %" }`
   */
  readonly accept?: AcceptedFindings;
  /**
   * The kind of way: "trunking", "conduit", "bundle" (tied along a beam) or "hole".
   *
   * Left out: taken as "trunking".
   *
   * Example: `way: "conduit"`
   */
  readonly way?: ChannelWay;
  /**
   * Its inside: a width and a height, or a diameter, in millimetres or inches.
   *
   * Left out: taken as not known, and its fill is not judged.
   *
   * Example: `inside: { widthMm: 40, heightMm: 60 }`
   */
  readonly inside?: ChannelInside;
  /**
   * The share of its inside that conductors may fill, as its maker or your code states it, percent. Above 0, up to 100.
   *
   * Left out: taken as not known, and its fill is not judged: no public figure fits every kind.
   *
   * Example: `fillPercent: 40`
   */
  readonly fillPercent?: number;
  /**
   * Radius of its bends, to their inside, mm. From 0 to 2,000.
   *
   * Left out: taken as not known, and its bends are not judged.
   *
   * Example: `bendRadiusMm: 60`
   */
  readonly bendRadiusMm?: number;
  /**
   * Whether its edges are covered where conductors pass through a wall: a grommet in a hole.
   *
   * Left out: taken as not known; a hole is then named.
   *
   * Example: `grommet: true`
   */
  readonly grommet?: boolean;
  /**
   * Distance of the supports of a bundle along it, mm. Above 0, up to 10,000.
   *
   * Left out: taken as not known for a bundle, and the list for buying counts those that are needed; trunking and conduit support
   * their conductors throughout.
   *
   * Example: `supportsEveryMm: 300`
   */
  readonly supportsEveryMm?: number;
  /**
   * The compartment that it runs through, if it is not on a surface.
   *
   * Left out: taken as that of its surface, else as none.
   *
   * Example: `compartment: locker`
   */
  readonly compartment?: PlannedCompartment;
  /**
   * Temperature of the air around it on the hottest day in use, °C. -50 to 200.
   *
   * Left out: taken from its surface or compartment, else as that of the build.
   *
   * Example: `ambientC: 50`
   */
  readonly ambientC?: number;
  /**
   * Whether it is in an engine space, where conductors may carry less.
   *
   * Left out: taken from its surface or compartment, else as false.
   *
   * Example: `engineSpace: true`
   */
  readonly engineSpace?: boolean;
}

/** The kinds of channels. */
export type ChannelWay = "trunking" | "conduit" | "bundle" | "hole";

/** The inside of a channel. */
export type ChannelInside = RectangleInMm | RectangleInInches | RoundInMm | RoundInInches;

interface RectangleInMm {
  /**
   * Width of its inside, mm. Above 0, up to 1,000. Give `widthMm` and `heightMm`, or a diameter.
   *
   * Example: `widthMm: 40`
   */
  readonly widthMm: number;
  /**
   * Height of its inside, mm. Above 0, up to 1,000. Give `widthMm` and `heightMm`, or a diameter.
   *
   * Example: `heightMm: 60`
   */
  readonly heightMm: number;
}

interface RectangleInInches {
  /**
   * Width of its inside, in. Above 0, up to 40. Give `widthIn` and `heightIn`, or a diameter.
   *
   * Example: `widthIn: 1.5`
   */
  readonly widthIn: number;
  /**
   * Height of its inside, in. Above 0, up to 40. Give `widthIn` and `heightIn`, or a diameter.
   *
   * Example: `heightIn: 2.5`
   */
  readonly heightIn: number;
}

interface RoundInMm {
  /**
   * Diameter of its inside, mm. Above 0, up to 1,000. Give `diameterMm`, or a width and a height.
   *
   * Example: `diameterMm: 25`
   */
  readonly diameterMm: number;
}

interface RoundInInches {
  /**
   * Diameter of its inside, in. Above 0, up to 40. Give `diameterIn`, or a width and a height.
   *
   * Example: `diameterIn: 1`
   */
  readonly diameterIn: number;
}
