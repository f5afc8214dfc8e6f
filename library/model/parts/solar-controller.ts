import { solarControllerEfficiency } from "../../standards/device-practice.ts";
import { current, efficiency } from "../part-properties.ts";
import { amount, yesOrNo } from "../property.ts";
import { nominalOfCharger, outputVoltage } from "./charging.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { defaulted, required } from "./part-property.ts";
import { permittedFuse } from "./permitted-fuse.ts";
import { feeds, poles } from "./poles.ts";

export const solarController = definePart("solarController", {
  called: { word: "solar controller", saidBy: /controller/i },
  role: "converter",
  chargesWith: "sun",
  terminals: {
    solarPositive: { side: "positive", words: "the solar input's positive terminal", label: "sun" },
    solarNegative: { side: "negative", words: "the solar input's negative terminal", label: "sun" },
    ...poles,
  },
  ports: [{ does: "draws", positive: "solarPositive", negative: "solarNegative" }, ...feeds],
  hasDataSheet: true,
  properties: {
    maxInputV: required(amount("a voltage", "V", { above: 0, upTo: 1_000 }), {
      words: "maximum input voltage",
      details: "input",
    }),
    outputA: required(current, {
      words: "output current",
      summary: true,
      limitOf: { current: "gives", words: "rated", heldByItself: true },
    }),
    outputV: outputVoltage(),
    tracking: defaulted(yesOrNo(), true, {
      words: "tracks the maximum power point",
      details: "tracking",
      assumed: { words: "its draw from the modules", as: ["their maximum power"] },
    }),
    efficiencyPercent: defaulted(efficiency, solarControllerEfficiency.percent, {
      words: "efficiency",
      source: solarControllerEfficiency.source,
    }),
    ...permittedFuse,
  },
  determinesV: ({ outputV }) => nominalOfCharger(outputV),
});

export interface SolarControllerPart extends PartOf<typeof solarController> {}
