import { workingVoltage } from "./part-properties.ts";
import { amount, listOf, text, yesOrNo } from "./property.ts";
import { propertyTable, type ValuesOf } from "./property-table.ts";
import { reference, references, terminals } from "./terminal-property.ts";

const share = (of: string) => amount(`a share of ${of}`, "%", { from: 0, upTo: 100 });
const switched = references("loads, sources, switches and circuits of this plan");

const chargeOfBattery = propertyTable(
  { battery: reference("a battery of this plan"), percent: share("a full charge") },
  { unknown: "is not a property of a charge", needed: ["battery", "percent"], choices: [] },
);

const properties = {
  name: text("a name, as text"),
  on: switched,
  off: switched,
  starting: references("motors of this plan"),
  selected: terminals("inputs of selector switches"),
  engine: yesOrNo(),
  shore: yesOrNo(),
  sunPercent: share("full sun"),
  chargePercent: share("a full charge"),
  charges: listOf(chargeOfBattery, {
    allowed: "a list of up to 200 batteries with their charge, such as [{ battery: house, percent: 20 }]",
    most: 200,
  }),
  bankV: workingVoltage,
};

export type ScenarioValues = ValuesOf<typeof properties>;

/** Allowed values of each property of `scenario`. */
export const scenarioProperties = propertyTable(properties, {
  word: "scenario",
  unknown: "is not a property of scenario",
  needed: ["name"],
  choices: [{ ways: [["on"], ["off"]] }, { ways: [["chargePercent"], ["bankV"]] }],
});
