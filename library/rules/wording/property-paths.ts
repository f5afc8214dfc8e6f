import type { PropertyPath } from "../../model/plain-values.ts";
import type { Run } from "../../model/run.ts";

/**
 * The places of a circuit's values in a plan: the same size is `gauge` in one plan and `mm2` in another. Findings are on these
 * places, fixes set them, and messages name them.
 */

export function sizePath(circuit: Run): PropertyPath {
  return [circuit.conductor.system === "awg" ? "gauge" : "mm2"];
}

/** The size if no load is stated: the computed current is compared with it. */
export function loadPath(circuit: Run): PropertyPath {
  if (!circuit.statesLoad) return sizePath(circuit);
  return [circuit.loadW === undefined ? "load" : "loadW"];
}

/** The rating of the protection at the near end; also `["protect"]` if none is stated yet. */
export function ratingPath(circuit: Run): PropertyPath {
  return circuit.protection?.writtenAs === "object" ? ["protect", "ratingA"] : ["protect"];
}

/** The rating of the protection at the far end; also `["protectFarEnd"]` if none is stated yet. */
export function farEndRatingPath(circuit: Run): PropertyPath {
  return circuit.protectionFarEnd?.writtenAs === "object" ? ["protectFarEnd", "ratingA"] : ["protectFarEnd"];
}
