import { grouped } from "../grouped.ts";
import type { AmountUnit } from "../property-table.ts";
import type { Refusal } from "../run.ts";

/** Another value of the same part or its system, which limits a value. */
export interface Bound {
  /** "its continuous power" */
  readonly what: string;
  readonly value: number;
  readonly unit: AmountUnit;
}

/** Refuses a value below another one. */
export function notBelow(property: string, value: number | undefined, bound: Bound): Refusal[] {
  if (value === undefined || value >= bound.value) return [];
  const least = `${grouped(bound.value)} ${bound.unit}`;
  return [
    {
      path: [property],
      given: String(value),
      wrong: `is below ${bound.what}, ${least}`,
      allowed: `${least} or more`,
    },
  ];
}

/** Refuses a maximum voltage of a device below its minimum. */
export function notBelowMinimum(
  property: string,
  maximumV: number | undefined,
  minimumV: number | undefined,
): Refusal[] {
  return notBelow(property, maximumV, { what: "its minimum voltage", value: minimumV ?? 0, unit: "V" });
}

/** Refuses a value above another one. */
export function notAbove(property: string, value: number | undefined, bound: Bound): Refusal[] {
  if (value === undefined || value <= bound.value) return [];
  const most = `${grouped(bound.value)} ${bound.unit}`;
  return [
    {
      path: [property],
      given: String(value),
      wrong: `is above ${bound.what}, ${most}`,
      allowed: `up to ${most}`,
    },
  ];
}
