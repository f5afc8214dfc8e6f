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
  const units = records.flatMap(({ word, input }) =>
    word === "circuit" || word === "cable" ? (statedUnitOf(input) ?? []) : [],
  );
  const inFeet = units.filter((unit) => unit === "ft").length;
  if (units.length > 0) return 2 * inFeet >= units.length ? "ft" : "m";
  return boardUnitOf(layout) === "in" ? "ft" : "m";
}

function statedUnitOf(input: unknown): LengthUnit | undefined {
  if (typeof input !== "object" || input === null) return undefined;
  const values = input as Readonly<Record<string, unknown>>;
  const stated = Object.entries(unitOfLength).find(([property]) => values[property] !== undefined);
  return stated?.[1];
}
