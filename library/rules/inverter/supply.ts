import { ampacityTables } from "../../analysis/ampacity.ts";
import { inverterSupplyA, inverterSurgeA } from "../../analysis/supply-current.ts";
import { inverterEfficiency, lowestCellVoltage } from "../../standards/device-practice.ts";
import { ratingBetweenLoadAndConductor } from "../../standards/protection-rules.ts";
import { type SupplyValues, supplyFindings, supplyMessage } from "../fixes/supply-way.ts";
import { defineRule } from "../rule.ts";

export const inverterSupply = defineRule<SupplyValues>({
  id: "inverter/supply",
  title: "Inverter supply undersized",
  formerTitles: ["Supply too weak for the inverter"],
  severity: "warning",
  why: "An inverter draws more current as the battery voltage falls: its supply must carry the current just before it cuts off.",
  sources: [
    inverterEfficiency.source,
    lowestCellVoltage.source,
    ratingBetweenLoadAndConductor,
    ...ampacityTables,
  ],
  fixable: true,
  acceptable: true,
  restsOn: "currents",
  neverFolded: true,
  // Needs the currents on the inverter's supply path at its cut-off voltage, and the ampacity of each run there. A surge that a
  // fuse may not withstand for seconds is advice.
  check: (plan) =>
    supplyFindings(plan, {
      parts: ({ network }) => network.parts.filter((part) => part.kind === "inverter"),
      takes: inverterSupplyA,
      surges: inverterSurgeA,
    }),
  message: supplyMessage,
});
