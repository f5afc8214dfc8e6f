import { workingVoltage } from "./part-properties.ts";
import { amount, text, yesOrNo } from "./property.ts";
import { propertyTable, type ValuesOf } from "./property-table.ts";
import { references, terminals } from "./terminal-property.ts";

const share = (of: string) => amount(`a share of ${of}`, "%", { from: 0, upTo: 100 });
const switched = references("loads, sources, switches and circuits of this plan");

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
