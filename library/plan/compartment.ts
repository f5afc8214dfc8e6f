import { frozenPlanData } from "./frozen-copy.ts";
import type { AcceptedFindings } from "./rule-id.ts";

/**
 * A closed space with equipment or batteries in it: a locker, an engine space, a battery box. Surfaces in it share its air.
 *
 * Example: `compartment({ name: "Bench locker", walls: [{ material: "painted steel", areaM2: 1.2 }], outsideC: 35 })`
 *
 * @returns The compartment as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function compartment(input: CompartmentInput): PlannedCompartment {
  return frozenPlanData(input, "compartment") as PlannedCompartment;
}

/** The result of {@link compartment}: its input, frozen. */
export type PlannedCompartment = CompartmentInput & {
  readonly kind: "compartment";
  /** Number of the call that made it. */
  readonly id: number;
};

/** The input of {@link compartment}. Every property may be left out. */
export interface CompartmentInput {
  /**
   * Name of the compartment, in findings and drawings. Shown up to 80 characters.
   *
   * Left out: taken as the name of the variable that holds it, or its place in the file.
   *
   * Example: `name: "Bench locker"`
   */
  readonly name?: string;
  /**
   * Findings that you accept for this compartment: the rule's id, and your reason. They are then shown as accepted, with the reason,
   * everywhere.
   *
   * Left out: taken as none.
   *
   * Example: `accept: { "placement/battery-ventilation": "a fan runs while the charger does" }`
   */
  readonly accept?: AcceptedFindings;
  /**
   * Temperature of the air in it on the hottest day in use, °C. -50 to 200. It applies to the channels and conductors in it.
   *
   * Left out: taken as that of the build.
   *
   * Example: `ambientC: 45`
   */
  readonly ambientC?: number;
  /**
   * Whether it is an engine space, where conductors may carry less.
   *
   * Left out: taken as false.
   *
   * Example: `engineSpace: true`
   */
  readonly engineSpace?: boolean;
  /**
   * Its walls through which heat leaves, without the sides that lie against another wall: each with its `material` and `areaM2`.
   * At most 20.
   *
   * Left out: taken as not known, and the temperature in it is not judged.
   *
   * Example: `walls: [{ material: "painted steel", areaM2: 1.2 }]`
   */
  readonly walls?: readonly WallInput[];
  /**
   * Temperature of the air outside of it on the hottest day in use, °C. -50 to 200.
   *
   * Left out: taken as not known, and only the rise of the temperature in it is worked out.
   *
   * Example: `outsideC: 35`
   */
  readonly outsideC?: number;
  /**
   * Free area of its openings low down, through which air enters, cm². From 0 to 10,000.
   *
   * Left out: taken as not known, and the ventilation of batteries in it is not judged.
   *
   * Example: `inletCm2: 40`
   */
  readonly inletCm2?: number;
  /**
   * Free area of its openings at the top, through which air leaves, cm². From 0 to 10,000.
   *
   * Left out: taken as not known, and the ventilation of batteries in it is not judged.
   *
   * Example: `outletCm2: 40`
   */
  readonly outletCm2?: number;
}

/** A wall of a compartment. */
export interface WallInput {
  /**
   * Its material: "painted steel", "stainless steel", "plastic", "aluminium" or "wood". Always needed. No public figure exists for
   * wood, and a compartment with a wall of wood is not judged.
   *
   * Example: `material: "painted steel"`
   */
  readonly material: WallMaterial;
  /**
   * Its area, m², without the sides that lie against another wall. Above 0, up to 100. Always needed.
   *
   * Example: `areaM2: 1.2`
   */
  readonly areaM2: number;
}

/** The materials of walls. */
export type WallMaterial = "painted steel" | "stainless steel" | "plastic" | "aluminium" | "wood";
