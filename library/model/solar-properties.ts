import { current, efficiency, ofEveryPart, partTable, workingVoltage } from "./part-properties.ts";
import { amount, count, yesOrNo } from "./property.ts";
import type { ValuesOf } from "./property-table.ts";

/* Allowed values of each property of parts that charge from the sun. */

/** For one panel, or a whole array entered as one. */
const panelVoltage = amount("a voltage", "V", { above: 0, upTo: 500 });
const panelCurrent = amount("a current", "A", { above: 0, upTo: 100 });

const fuse = amount("a rating", "A", { above: 0, upTo: 1_000 });

/** The minimum is colder than any campsite; the maximum is warmer than the coldest day anywhere. */
export const coldestDay = amount("a temperature", "°C", { from: -60, upTo: 50 });

const solarArray = {
  ...ofEveryPart,
  openCircuitV: panelVoltage,
  shortCircuitA: panelCurrent,
  maxPowerV: panelVoltage,
  maxPowerA: panelCurrent,
  // Silicon and thin film lie between -0.24 and -0.35 (from memory); 0.3 without the minus sign is a slip.
  openCircuitPercentPerC: amount("a change", "% per °C", { from: -2, upTo: 0 }),
  lowestC: coldestDay,
  series: count({ from: 1, upTo: 50 }),
  parallel: count({ from: 1, upTo: 50 }),
  maxSeriesFuseA: fuse,
  stringFuseA: fuse,
};
export type SolarArrayValues = ValuesOf<typeof solarArray>;
export const solarArrayProperties = partTable("solarArray", solarArray, {
  needed: ["openCircuitV", "shortCircuitA", "maxPowerV", "maxPowerA"],
});

const solarController = {
  ...ofEveryPart,
  maxInputV: amount("a voltage", "V", { above: 0, upTo: 1_000 }),
  outputA: current,
  outputV: workingVoltage,
  tracking: yesOrNo(),
  efficiencyPercent: efficiency,
};
export type SolarControllerValues = ValuesOf<typeof solarController>;
export const solarControllerProperties = partTable("solarController", solarController, {
  needed: ["maxInputV", "outputA"],
});
