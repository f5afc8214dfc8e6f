/** The unit in which people who measure in it read the lengths of a plan. */
export type LengthUnit = "ft" | "m";

/** The unit for lengths on boards: bends, gaps and distances. */
export type BoardUnit = "in" | "mm";
