import { ampacityTables } from "../../analysis/ampacity.ts";
import { chargerInputA } from "../../analysis/supply-current.ts";
import { chargingVoltage } from "../../standards/charging-practice.ts";
import { dcDcChargerEfficiency, lowestCellVoltage } from "../../standards/device-practice.ts";
import { ratingBetweenLoadAndConductor } from "../../standards/protection-rules.ts";
import { type SupplyValues, supplyFindings, supplyMessage } from "../fixes/supply-way.ts";
import { defineRule } from "../rule.ts";

export const inputCurrent = defineRule<SupplyValues>({
  id: "charger/input-current",
  title: "Charger supply undersized at low input voltage",
  formerTitles: ["Charger takes more at low input voltage"],
  severity: "warning",
  why: "At low input voltage a DC-DC charger draws more current than it gives, so an input sized for its output blows its fuse or runs hot.",
  sources: [
    dcDcChargerEfficiency.source,
    lowestCellVoltage.source,
    chargingVoltage.source,
    ratingBetweenLoadAndConductor,
    ...ampacityTables,
  ],
  fixable: true,
  acceptable: true,
  // Needs the currents on the charger's supply path at the minimum input voltage for full output, and the ampacities.
  check: (plan) =>
    supplyFindings(plan, {
      parts: ({ network }) => network.parts.filter((part) => part.kind === "dcDcCharger"),
      takes: chargerInputA,
    }),
  message: supplyMessage,
});
