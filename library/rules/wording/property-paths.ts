import type { PropertyPath } from "../../model/record.ts";
import type { Run } from "../../model/run.ts";
import { withUnit } from "./format-number.ts";

/**
 * Where in a plan the values of a circuit are written: the same size is `gauge` in one plan and `mm2` in another.
 * Findings sit on these places, fixes set them, and messages name them.
 */

export function sizePath(circuit: Run): PropertyPath {
  return [circuit.conductor.system === "awg" ? "gauge" : "mm2"];
}

/** Where no load is stated, the size: it is what the current that was worked out is held against. */
export function loadPath(circuit: Run): PropertyPath {
  if (!circuit.statesLoad) return sizePath(circuit);
  return [circuit.loadW === undefined ? "load" : "loadW"];
}

/** The rating of the protection at the near end; `["protect"]` also where none is stated yet. */
export function ratingPath(circuit: Run): PropertyPath {
  return circuit.protection?.writtenAs === "object" ? ["protect", "ratingA"] : ["protect"];
}

/** The rating of the protection at the far end; `["protectFarEnd"]` also where none is stated yet. */
export function farEndRatingPath(circuit: Run): PropertyPath {
  return circuit.protectionFarEnd?.writtenAs === "object" ? ["protectFarEnd", "ratingA"] : ["protectFarEnd"];
}

/** A length along the conductors as text, in the unit in which the plan states this circuit's lengths: "30 ft", "9 m". */
export function lengthInWords(circuit: Run, lengthM: number): string {
  return givenInFeet(circuit) ? withUnit(lengthM / metresPerFoot, "ft") : withUnit(lengthM, "m");
}

export function givenInFeet(circuit: Run): boolean {
  return Object.keys(circuit.lengthsGiven).some((property) => property.endsWith("Ft"));
}

/** Exact by definition (international foot, 1959). */
export const metresPerFoot = 0.3048;
