import type { PlannedChannel } from "./channel.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { SurfacePoint } from "./place.ts";
import type { PlannedSurface } from "./surface.ts";

/** The place of a part: on a surface, or at the free end of a channel. */
export type PartPlace = PlaceOnSurface | PlaceAtEnd;

type PlaceOnSurface = OnSurface & SurfacePoint;

interface OnSurface {
  /**
   * The surface that it is on. Give `on` with the distance of its left and top edge from those of the surface, or `endOf`.
   *
   * Example: `on: board`
   */
  readonly on: PlannedSurface;
  /**
   * By how much it is turned clockwise, as you look at it, degrees: 0, 90, 180 or 270. The left and top edge are those of the part as
   * it then hangs.
   *
   * Left out: taken as 0, upright.
   *
   * Example: `turnedDeg: 90`
   */
  readonly turnedDeg?: 0 | 90 | 180 | 270;
  readonly endOf?: GiveOnlyOneOf.on_or_endOf;
  readonly beyondM?: GiveOnlyOneOf.on_or_endOf;
  readonly beyondFt?: GiveOnlyOneOf.on_or_endOf;
}

type PlaceAtEnd = EndInMetres | EndInFeet;

interface EndInMetres extends EndOfChannel {
  /**
   * Length of its conductors beyond that end, m. From 0 to 300. Give `beyondM` or `beyondFt`, not both.
   *
   * Left out: taken as 0.
   *
   * Example: `beyondM: 0.4`
   */
  readonly beyondM?: number;
  readonly beyondFt?: GiveOnlyOneOf.beyondM_or_beyondFt;
}

interface EndInFeet extends EndOfChannel {
  /**
   * Length of its conductors beyond that end, in feet. From 0 to 1,000. Give `beyondM` or `beyondFt`, not both.
   *
   * Example: `beyondFt: 1.5`
   */
  readonly beyondFt: number;
  readonly beyondM?: GiveOnlyOneOf.beyondM_or_beyondFt;
}

interface EndOfChannel {
  /**
   * The channel at whose end it is, if it is far from any surface that you describe: a lamp at the bow, an aerial on the mast. The end
   * is the last point of its `path`, or the place where it leads `to`. Give `endOf`, or `on` with the place on that surface.
   *
   * Example: `endOf: mastConduit`
   */
  readonly endOf: PlannedChannel;
  readonly on?: GiveOnlyOneOf.on_or_endOf;
  readonly turnedDeg?: GiveOnlyOneOf.on_or_endOf;
}
