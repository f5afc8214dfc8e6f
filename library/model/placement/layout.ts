import type { ChannelWay } from "../../plan/channel.ts";
import type { WallMaterial } from "../../plan/compartment.ts";
import type { Leaving, MountingPosition } from "../../plan/place.ts";
import type { FixtureName, SurfaceOrientation } from "../../plan/surface.ts";
import type { PartWord } from "../parts/index.ts";

/**
 * Where things are: the surfaces, channels and compartments of a plan, the parts with their outlines, and the conductors between them. All
 * lengths are in mm; x runs to the right and y down, from the top left corner of a surface as one looks at it. Present only if the
 * plan has a surface, a channel or a compartment. A refused value leaves its object unplaced, and nothing else.
 */
export interface Layout {
  readonly compartments: readonly Compartment[];
  readonly surfaces: readonly Surface[];
  readonly channels: readonly Channel[];
  /** Every part, and the load that a circuit states itself, in the order of the plan. */
  readonly bodies: readonly Body[];
  /** Every conductor of the network, in the order of the plan; a circuit has two. */
  readonly leads: readonly Lead[];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Rectangle extends Point {
  readonly width: number;
  readonly height: number;
}

interface FromRecord {
  /** Index of the record that made it. */
  readonly record: number;
  readonly name: string;
}

/** The findings that the plan accepts for it: rule id to the reason. */
interface WithAccepted {
  readonly accept: Readonly<Record<string, string>>;
}

export interface Compartment extends FromRecord, WithAccepted, Surroundings {
  readonly walls?: readonly { readonly material: WallMaterial; readonly areaM2: number }[];
  readonly outsideC?: number;
  readonly inletCm2?: number;
  readonly outletCm2?: number;
}

/** As stated for it or for the place that it is in; absent if neither states it. */
export interface Surroundings {
  readonly ambientC?: number;
  readonly engineSpace?: boolean;
}

export interface Surface extends FromRecord, WithAccepted, Surroundings {
  readonly width: number;
  readonly height: number;
  /** The unit in which the plan writes its size; its drawing has the same. */
  readonly writtenIn: "mm" | "in";
  readonly orientation: SurfaceOrientation;
  /** Index in {@link Layout.compartments}. */
  readonly compartment?: number;
  readonly keepFree: readonly (Rectangle & { readonly name: string })[];
  readonly outOfReach: readonly Rectangle[];
  readonly fixtures: readonly Fixture[];
  readonly bareMetal: boolean;
  readonly openAbove: boolean;
  readonly bilgeWaterMm?: number;
  readonly carriesKg?: number;
}

export interface Fixture extends Rectangle {
  readonly fixture: FixtureName;
  readonly name: string;
  /** The distance to keep, as the plan states it, mm. */
  readonly distanceMm?: number;
  /** Its index in the list of the plan. */
  readonly index: number;
}

export interface Channel extends FromRecord, WithAccepted, Surroundings {
  readonly way: ChannelWay;
  readonly course: AlongSurface | Between;
  readonly inside?: ChannelInside;
  readonly fillPercent?: number;
  readonly bendRadiusMm?: number;
  readonly grommet?: boolean;
  readonly supportsEveryMm?: number;
  /** Index in {@link Layout.compartments}. */
  readonly compartment?: number;
}

interface AlongSurface {
  readonly kind: "along";
  /** Index in {@link Layout.surfaces}. */
  readonly surface: number;
  /** At least two. */
  readonly path: readonly Point[];
}

interface Between {
  readonly kind: "between";
  readonly from: PlaceOnSurface;
  /** Absent: a free end. */
  readonly to?: PlaceOnSurface;
  readonly lengthMm: number;
}

export interface PlaceOnSurface extends Point {
  readonly surface: number;
}

export type ChannelInside =
  | { readonly shape: "rectangle"; readonly width: number; readonly height: number }
  | { readonly shape: "round"; readonly diameter: number };

/** A part with its outline and place, as far as they are stated. */
export interface Body extends FromRecord {
  /** Its index in {@link Layout.bodies}. */
  readonly index: number;
  /** The DSL function that made it; "circuit" for the load that a circuit states itself. */
  readonly word: PartWord | "circuit";
  /** As it hangs upright; absent if not stated. */
  readonly size?: { readonly width: number; readonly height: number; readonly depth?: number };
  readonly place?: BodyPlace;
  /** The distances that it needs, as it is turned; each absent if not stated. */
  readonly air: Partial<Record<Side, number>>;
  readonly mountingPositions?: readonly MountingPosition[];
  readonly heatW?: number;
  readonly keepCool: boolean;
  readonly massKg?: number;
  readonly terminalsCovered?: boolean;
  /** Index in {@link Layout.bodies}: the part on a terminal of which it is mounted. */
  readonly mountedOn?: number;
  /** By the names of its terminals: the stated places, one for each stud or branch. In the coordinates of its surface if it is on one. */
  readonly terminals: Readonly<Record<string, readonly TerminalSpot[]>>;
}

export type Side = "left" | "right" | "top" | "bottom";

export type BodyPlace = BodyOnSurface | BodyAtEnd;

/** Clockwise, as one looks at the surface. */
export type QuarterTurn = 0 | 90 | 180 | 270;

export interface BodyOnSurface {
  readonly kind: "on surface";
  readonly surface: number;
  /** Its outline as it is turned; without width and height if its size is not stated. */
  readonly outline: Rectangle;
  readonly turnedDeg: QuarterTurn;
  readonly position: MountingPosition;
  /** The unit in which the plan states the place; absent if it follows from the part that it is mounted on. */
  readonly statedIn?: "mm" | "in";
}

interface BodyAtEnd {
  readonly kind: "at end";
  readonly channel: number;
  readonly beyondMm: number;
}

export interface TerminalSpot extends Point {
  /** The side towards which a conductor leaves it, as its part is turned; absent if not stated. */
  readonly leaves?: Leaving;
}

/** A conductor, with the terminals that it connects. */
export interface Lead extends FromRecord {
  /** Its index in {@link Layout.leads}. */
  readonly index: number;
  readonly role: "cable" | "positive" | "return";
  readonly from: LeadEnd;
  readonly to: LeadEnd;
  /** The channels that the plan names; absent if it names none. */
  readonly through?: readonly number[];
  /** It lies in one sheath with the other conductor of its circuit: both take one way. */
  readonly paired: boolean;
  /** Equal wires in parallel, of which each has its own insulation. */
  readonly wires: number;
  readonly outsideMm?: number;
}

export interface LeadEnd {
  /** Index in {@link Layout.bodies}. */
  readonly body: number;
  readonly terminal: string;
  /** Its stud or branch, counted from 0 in the order of the plan, among the conductors at this terminal. */
  readonly stud: number;
}
