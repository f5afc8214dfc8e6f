import { chemistries } from "./allowed-values.ts";
import { current, nominalVoltage, ofEveryPart, partTable } from "./part-properties.ts";
import { amount, oneOf } from "./property.ts";
import type { ValuesOf } from "./property-table.ts";

const properties = {
  ...ofEveryPart,
  chemistry: oneOf(chemistries, "is not a chemistry in the tables"),
  // A whole bank entered as one battery is still below the maximum, and the cell of a torch above the minimum.
  capacityAh: amount("a capacity", "Ah", { from: 0.1, upTo: 10_000 }),
  nominalV: nominalVoltage,
  // A bank of more than a few ohms is worn out; one below 10 µΩ would deliver a million amperes at 12 V.
  internalMilliohm: amount("a resistance", "mΩ", { from: 0.01, upTo: 10_000 }),
  // No fuse of the families can interrupt more, UL 248-15 (from memory). Less than 1 A means a resistance of many ohms.
  shortCircuitA: amount("a current", "A", { from: 1, upTo: 200_000 }),
  maxDischargeA: current,
  maxChargeA: current,
};

export type BatteryValues = ValuesOf<typeof properties>;

/** Allowed values of each property of `battery`. */
export const batteryProperties = partTable("battery", properties, { needed: ["chemistry", "capacityAh"] });
