import type { PlannedCompartment } from "./compartment.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { FlatSize, SurfaceArea } from "./place.ts";
import type { AcceptedFindings } from "./rule-id.ts";

/**
 * A surface that equipment is fastened to: a board, a wall, a floor, the underside of a lid. Places on it are measured from its top
 * left corner, as you look at it.
 *
 * Example: `surface({ name: "Board behind the bench", size: { widthMm: 1_200, heightMm: 800 } })`
 *
 * @returns The surface as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function surface(input: SurfaceInput): PlannedSurface {
  return frozenPlanData(input, "surface") as PlannedSurface;
}

/** The result of {@link surface}: its input, frozen. */
export type PlannedSurface = SurfaceInput & {
  readonly kind: "surface";
  /** Number of the call that made it. */
  readonly id: number;
};

/** The input of {@link surface}: its size, and optional properties. */
export interface SurfaceInput {
  /**
   * Name of the surface, in findings and drawings. Shown up to 80 characters.
   *
   * Left out: taken as the name of the variable that holds it, or its place in the file.
   *
   * Example: `name: "Board behind the bench"`
   */
  readonly name?: string;
  /**
   * Findings that you accept for this surface: the rule's id, and your reason. They are then shown as accepted, with the reason,
   * everywhere.
   *
   * Left out: taken as none.
   *
   * Example: `accept: { "placement/conductor-clearance": "a heat shield is between them" }`
   */
  readonly accept?: AcceptedFindings;
  /**
   * Its width and height, in millimetres or inches. Always needed.
   *
   * Example: `size: { widthMm: 1_200, heightMm: 800 }`
   */
  readonly size: FlatSize;
  /**
   * The way that it lies: "vertical", "floor" or "ceiling". The top edge of a vertical surface is up.
   *
   * Left out: taken as "vertical".
   *
   * Example: `orientation: "floor"`
   */
  readonly orientation?: SurfaceOrientation;
  /**
   * The compartment that it is in.
   *
   * Left out: taken as none: it is in the open air of the room.
   *
   * Example: `compartment: locker`
   */
  readonly compartment?: PlannedCompartment;
  /**
   * Rectangles that must stay free: the line of a bed frame, a wheel arch, a hatch. At most 100.
   *
   * Left out: taken as none.
   *
   * Example: `keepFree: [{ leftMm: 0, topMm: 300, widthMm: 1_200, heightMm: 40, name: "bed frame" }]`
   */
  readonly keepFree?: readonly KeptFree[];
  /**
   * Rectangles that a hand does not reach once the build is finished. A fuse or breaker in one is reported. At most 100.
   *
   * Left out: taken as none.
   *
   * Example: `outOfReach: [{ leftMm: 900, topMm: 0, widthMm: 300, heightMm: 800 }]`
   */
  readonly outOfReach?: readonly SurfaceArea[];
  /**
   * Other things at this surface from which parts or conductors keep a distance: sources of heat, fuel and gas lines, a compass. At
   * most 100.
   *
   * Left out: taken as none.
   *
   * Example: `fixtures: [{ fixture: "fuel line", leftMm: 0, topMm: 700, widthMm: 1_200, heightMm: 12 }]`
   */
  readonly fixtures?: readonly FixtureInput[];
  /**
   * Temperature of the air at it on the hottest day in use, °C. -50 to 200. It applies to the conductors on it.
   *
   * Left out: taken from its compartment, else as that of the build.
   *
   * Example: `ambientC: 45`
   */
  readonly ambientC?: number;
  /**
   * Whether it is in an engine space, where conductors may carry less.
   *
   * Left out: taken from its compartment, else as false.
   *
   * Example: `engineSpace: true`
   */
  readonly engineSpace?: boolean;
  /**
   * Whether it is of bare metal, or bare metal lies against it: a terminal without a cover may touch it.
   *
   * Left out: taken as false.
   *
   * Example: `bareMetal: true`
   */
  readonly bareMetal?: boolean;
  /**
   * Whether tools or other objects can fall onto it.
   *
   * Left out: taken as false.
   *
   * Example: `openAbove: true`
   */
  readonly openAbove?: boolean;
  /**
   * Height of the expected bilge water above its bottom edge, mm. From 0 to 20,000. Of a floor, above the floor itself.
   *
   * Left out: taken as none.
   *
   * Example: `bilgeWaterMm: 120`
   */
  readonly bilgeWaterMm?: number;
  /**
   * The greatest mass that it carries, kg. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not judged.
   *
   * Example: `carriesKg: 40`
   */
  readonly carriesKg?: number;
}

/** The way that a surface lies. */
export type SurfaceOrientation = "vertical" | "floor" | "ceiling";

/** A rectangle that must stay free. */
export type KeptFree = SurfaceArea & NamedThing;

interface NamedThing {
  /**
   * Its name, in findings and drawings. Shown up to 80 characters.
   *
   * Left out: taken as its kind: "a place kept free".
   *
   * Example: `name: "bed frame"`
   */
  readonly name?: string;
}

/** A thing at a surface from which parts or conductors keep a distance. */
export type FixtureInput = SurfaceArea & NamedThing & FixtureKind;

interface FixtureKind {
  /**
   * The kind of thing: "source of heat", "fuel line", "fuel tank", "gas line", "petrol engine" or "compass". Always needed. A fuel tank
   * includes filters and fittings; a petrol engine stands for any source of petrol vapour.
   *
   * Example: `fixture: "compass"`
   */
  readonly fixture: FixtureName;
  /**
   * The distance to keep from it, mm. From 0 to 10,000. A compass states its own safe distance.
   *
   * Left out: taken from the published distance for its kind; for a compass as not known, and not judged.
   *
   * Example: `distanceMm: 500`
   */
  readonly distanceMm?: number;
}

/** The kinds of fixtures. */
export type FixtureName =
  | "source of heat"
  | "fuel line"
  | "fuel tank"
  | "gas line"
  | "petrol engine"
  | "compass";
