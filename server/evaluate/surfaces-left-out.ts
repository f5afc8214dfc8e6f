import { displayName } from "../../library/model/display-name.ts";
import { isObject } from "../../library/model/plain-values.ts";
import type { CheckedPlan } from "./checked-plan.ts";

/** The names of the surfaces that a refused value keeps out of the layout: no drawing has them. */
export function surfacesLeftOut({
  records,
  judgement,
}: Pick<CheckedPlan, "records" | "judgement">): readonly string[] {
  const read = new Set(judgement.placement?.layout.surfaces.map(({ record }) => record));
  return records.flatMap(({ word, input, fallbackName }, record) => {
    if (word !== "surface" || read.has(record)) return [];
    const stated = isObject(input) && typeof input.name === "string" ? displayName(input.name) : "";
    return [stated || displayName(fallbackName)];
  });
}
