import { awgSizes, mm2Sizes } from "./allowed-values.ts";
import { colour, label } from "./bench-properties.ts";
import { feet, insulation, metres } from "./circuit-properties.ts";
import { accept, ambient } from "./part-properties.ts";
import { wayOfRun } from "./placement/place-properties.ts";
import { count, oneOf, text, yesOrNo } from "./property.ts";
import { propertyTable, type ValuesOf } from "./property-table.ts";
import { protection } from "./protection-properties.ts";
import { terminal } from "./terminal-property.ts";

const properties = {
  name: text("a name, as text"),
  from: terminal,
  to: terminal,
  lengthFt: feet,
  lengthM: metres,
  gauge: oneOf(awgSizes, "is not one of the sizes"),
  mm2: oneOf(mm2Sizes, "is not one of the sizes"),
  protect: protection,
  protectFarEnd: protection,
  insulationC: insulation,
  engineSpace: yesOrNo(),
  ambientC: ambient,
  bundledWith: count({ from: 0, upTo: 200 }),
  sheathed: yesOrNo(),
  parallel: count({ from: 1, upTo: 8 }),
  continuous: yesOrNo(),
  accept,
  colour,
  label,
  ...wayOfRun,
};

export type CableValues = ValuesOf<typeof properties>;

/** Allowed values of each property of `cable`. */
export const cableProperties = propertyTable(properties, {
  word: "cable",
  unknown: "is not a property of cable",
  needed: ["from", "to"],
  choices: [{ ways: [["lengthFt"], ["lengthM"]] }, { ways: [["gauge"], ["mm2"]], needed: "a size" }],
});
