import { ofBench } from "./bench-properties.ts";
import { insulation, voltage } from "./circuit-properties.ts";
import { ambient, coldestDay, dropPercent } from "./part-properties.ts";
import { oneOf, text, yesOrNo } from "./property.ts";
import { propertyTable, type ValuesOf } from "./property-table.ts";

/** For the first kind 33 CFR 183, Subpart I is law: 183.401(a). */
const kindsOfBuild = ["boat with petrol engine", "boat", "vehicle", "building"] as const;

const properties = {
  name: text("a name, as text"),
  voltage,
  installedIn: oneOf(kindsOfBuild, "is not a kind of build"),
  ambientC: ambient,
  lowestC: coldestDay,
  insulationC: insulation,
  engineSpace: yesOrNo(),
  continuous: yesOrNo(),
  criticalDropPercent: dropPercent,
  dropPercent,
  bundledInChannels: yesOrNo(),
  ...ofBench,
};

export type BuildValues = ValuesOf<typeof properties>;

/** Allowed values of each property of `build`. */
export const buildProperties = propertyTable(properties, {
  word: "build",
  unknown: "is not a property of build",
  choices: [{ ways: [["endSlackMm"], ["endSlackIn"]] }],
});
