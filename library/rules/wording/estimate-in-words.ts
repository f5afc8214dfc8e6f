import type { Estimate } from "../../model/estimate.ts";
import { formatRounded } from "./format-number.ts";

/**
 * " (estimated: 12.8 V at rest, usual resistance)": the figures behind a result that the plan does not state, after the number
 * that depends on them. Empty if it states them all.
 */
export function estimateInWords(estimate: Estimate | undefined): string {
  if (!estimate) return "";
  const { lowestV, restV, belowList, undivided, internalResistance } = estimate;
  const figures = [
    ...(lowestV === undefined ? [] : [`drawn at ${formatRounded(lowestV)} V`]),
    ...(restV === undefined
      ? []
      : [`${formatRounded(restV)} V at rest${belowList ? ", below the published list" : ""}`]),
    ...(internalResistance ? ["usual resistance"] : []),
    ...(undivided ? ["all of it on this way, because a length is not known"] : []),
  ];
  return ` (estimated: ${figures.join(", ")})`;
}
