import { chemistries } from "./allowed-values.ts";
import { current, nominalVoltage, ofEveryPart, partTable } from "./part-properties.ts";
import { amount, oneOf } from "./property.ts";
import type { ValuesOf } from "./property-table.ts";

const properties = {
  ...ofEveryPart,
  chemistry: oneOf(chemistries, "is not a chemistry that the tables know"),
  // A whole bank entered as one battery still stays below this, and the cell of a torch above a tenth.
  capacityAh: amount("a capacity", "Ah", { from: 0.1, upTo: 10_000 }),
  nominalV: nominalVoltage,
  // A bank that has more than a few ohms is worn out; one of less than 10 µΩ would give a million amperes at 12 V.
  internalMilliohm: amount("a resistance", "mΩ", { from: 0.01, upTo: 10_000 }),
  // More than any fuse of the families can interrupt, UL 248-15 (from memory). Less than 1 A is a resistance of many ohms.
  shortCircuitA: amount("a current", "A", { from: 1, upTo: 200_000 }),
  maxDischargeA: current,
  maxChargeA: current,
};

export type BatteryValues = ValuesOf<typeof properties>;

/** What each property of `battery` may be. */
export const batteryProperties = partTable("battery", properties, { needed: ["chemistry", "capacityAh"] });
