import { whenItRuns } from "./allowed-values.ts";
import { current, efficiency, ofEveryPart, partTable, workingVoltage } from "./part-properties.ts";
import { amount, oneOf, yesOrNo } from "./property.ts";
import type { ValuesOf } from "./property-table.ts";

/* Allowed values of each property of parts that charge from the engine or from the shore. */

const dcDcCharger = {
  ...ofEveryPart,
  outputA: current,
  outputV: workingVoltage,
  efficiencyPercent: efficiency,
  inputMaxA: current,
  inputMinV: workingVoltage,
  isolated: yesOrNo(),
  runs: oneOf(whenItRuns, "is not a time at which it runs"),
};
export type DcDcChargerValues = ValuesOf<typeof dcDcCharger>;
export const dcDcChargerProperties = partTable("dcDcCharger", dcDcCharger, { needed: ["outputA"] });

const alternator = {
  ...ofEveryPart,
  ratedA: current,
  outputV: workingVoltage,
  continuousPercent: amount("a share of the rating", "%", { from: 1, upTo: 100 }),
  selfLimiting: yesOrNo(),
};
export type AlternatorValues = ValuesOf<typeof alternator>;
export const alternatorProperties = partTable("alternator", alternator, { needed: ["ratedA"] });

const shoreCharger = { ...ofEveryPart, outputA: current, outputV: workingVoltage };
export type ShoreChargerValues = ValuesOf<typeof shoreCharger>;
export const shoreChargerProperties = partTable("shoreCharger", shoreCharger, { needed: ["outputA"] });
