import type { BoardUnit, LengthUnit } from "./length-unit.ts";
import type { Layout } from "./placement/layout.ts";
import type { PlanRecord } from "./record.ts";
import type { LengthProperty } from "./run.ts";

/** Inches if the plan writes the size of every surface in them; mm without a surface. */
export function boardUnitOf({ surfaces }: Pick<Layout, "surfaces"> = { surfaces: [] }): BoardUnit {
  return surfaces.length > 0 && surfaces.every(({ writtenIn }) => writtenIn === "in") ? "in" : "mm";
}

/** By property, the unit in which it states a length. */
const unitOfLength = {
  oneWayFt: "ft",
  positiveFt: "ft",
  negativeFt: "ft",
  lengthFt: "ft",
  oneWayM: "m",
  positiveM: "m",
  negativeM: "m",
  lengthM: "m",
} as const satisfies Readonly<Record<LengthProperty, LengthUnit>>;

/**
 * The unit of a plan's lengths: feet if at least as many runs are stated in feet as in metres; a plan that mixes them has a finding. If
 * none is stated, that of its boards: feet if the plan writes the size of each in inches.
 */
export function lengthUnitOf(records: readonly PlanRecord[], layout: Layout | undefined): LengthUnit {
  const stated = { ft: 0, m: 0 };
  for (const { word, input } of records) {
    const unit = word === "circuit" || word === "cable" ? statedUnitOf(input) : undefined;
    if (unit) stated[unit]++;
  }
  if (stated.ft + stated.m > 0) return stated.ft >= stated.m ? "ft" : "m";
  return boardUnitOf(layout) === "in" ? "ft" : "m";
}

function statedUnitOf(input: unknown): LengthUnit | undefined {
  if (typeof input !== "object" || input === null) return undefined;
  const values = input as Readonly<Record<string, unknown>>;
  for (const [property, unit] of lengthProperties) if (values[property] !== undefined) return unit;
  return undefined;
}

const lengthProperties = Object.entries(unitOfLength);
