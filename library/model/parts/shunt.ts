import { shuntVoltage } from "../../standards/device-practice.ts";
import { amount } from "../property.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { defaulted, required } from "./part-property.ts";

export const shunt = definePart("shunt", {
  called: { word: "shunt", saidBy: /shunt/i },
  role: "passes current on",
  terminals: {
    batterySide: { side: "either", words: "the battery side" },
    systemSide: { side: "either", words: "the system side" },
  },
  inSeries: true,
  properties: {
    // Both determine its resistance. Less than 1 A is not a shunt in a supply, and could be an ohm.
    ratedA: required(amount("a rating", "A", { from: 1, upTo: 10_000 }), {
      words: "rating",
      summary: true,
      limitOf: { current: "carries", words: "rating" },
    }),
    // Commercial shunts drop 50 or 75 mV; 100 mV and 60 mV are known too.
    ratedMV: defaulted(amount("a voltage", "mV", { from: 1, upTo: 1_000 }), shuntVoltage.ratedMV, {
      words: "voltage at the rated current",
      details: true,
      source: shuntVoltage.source,
    }),
  },
  inside: ({ ratedA = Number.POSITIVE_INFINITY, ratedMV = 0 }) => [
    { between: ["batterySide", "systemSide"], ohm: ratedMV / 1_000 / ratedA },
  ],
});

export interface ShuntPart extends PartOf<typeof shunt> {}
