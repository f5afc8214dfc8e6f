import { cutOffVoltage, dcDcChargerEfficiency } from "../../standards/device-practice.ts";
import { whenItRuns } from "../allowed-values.ts";
import { current, efficiency, withstoodVoltage, workingVoltage } from "../part-properties.ts";
import { oneOf, yesOrNo } from "../property.ts";
import {
  boosterDropLimit,
  chargedWith,
  comparedDropLimit,
  cutOffV,
  nominalOfCharger,
  outputVoltage,
  supplyDropLimit,
} from "./charging.ts";
import { notAbove, notBelowMinimum } from "./contradiction.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { defaulted, input, optional, required } from "./part-property.ts";
import { permittedFuse } from "./permitted-fuse.ts";
import { maximumOfDevice } from "./silences.ts";

export const dcDcCharger = definePart("dcDcCharger", {
  called: { word: "DC-DC charger", saidBy: /charger/i },
  role: "converter",
  chargesWith: "engine",
  terminals: {
    inputPositive: { side: "positive", words: "the input's positive terminal", label: "in" },
    inputNegative: { side: "negative", words: "the input's negative terminal", label: "in" },
    outputPositive: { side: "positive", words: "the output's positive terminal", label: "out" },
    outputNegative: { side: "negative", words: "the output's negative terminal", label: "out" },
  },
  ports: [
    { does: "draws", positive: "inputPositive", negative: "inputNegative" },
    { does: "feeds", positive: "outputPositive", negative: "outputNegative" },
  ],
  hasDataSheet: true,
  properties: {
    outputA: required(current, {
      words: "output current",
      summary: true,
      limitOf: { current: "gives", words: "rated", heldByItself: true },
    }),
    outputV: outputVoltage("outputPositive", "outputNegative"),
    efficiencyPercent: defaulted(efficiency, dcDcChargerEfficiency.percent, {
      words: "efficiency",
      source: dcDcChargerEfficiency.source,
    }),
    inputMaxA: optional(current, {
      words: "maximum input current",
      limitOf: { current: "takes", words: "may take" },
    }),
    /** Minimum input voltage for its full output. */
    inputMinV: defaulted(
      workingVoltage,
      ({ nominalV }) => cutOffV(nominalV("inputPositive", "inputNegative")),
      { words: "minimum input voltage for its full output", source: cutOffVoltage.source },
    ),
    inputMaxV: optional(withstoodVoltage, {
      words: "maximum input voltage",
      silentWithout: maximumOfDevice,
    }),
    /** False: both negatives are connected inside. */
    isolated: defaulted(yesOrNo(), false, {
      words: "input and output isolated",
      details: "isolated",
      assumed: { words: "negatives of input and output", as: ["one inside"] },
    }),
    ...permittedFuse,
    runs: input(oneOf(whenItRuns, "is not a time at which it runs")),
  },
  worksFrom: "inputMinV",
  worksUpTo: "inputMaxV",
  /** The drop limit, and the lowest voltage at which it draws, are for the supply path to its input. */
  figures: ({ inputMinV, runs }, { build, nominalV, lowestV, taken }) => {
    const input = ["inputPositive", "inputNegative"] as const;
    const runsAlways = runs === "always";
    return taken.includes("inputMinV")
      ? { runsAlways, ...supplyDropLimit(build), lowestV: lowestV(...input) }
      : {
          runsAlways,
          ...boosterDropLimit(inputMinV, { build, nominalV: nominalV(...input) }),
          lowestV: inputMinV,
        };
  },
  inside: ({ isolated }) => (isolated ? [] : [{ between: ["inputNegative", "outputNegative"], ohm: 0 }]),
  determinesV: ({ outputV }) => nominalOfCharger(outputV),
  voltagesTooHigh: ({ inputMinV }, nominalV) =>
    notAbove(
      "inputMinV",
      inputMinV,
      chargedWith("the charging voltage of its input side", nominalV("inputPositive", "inputNegative")),
    ),
  contradictions: ({ inputMinV, inputMaxV }) => notBelowMinimum("inputMaxV", inputMaxV, inputMinV),
  compared: (part) => [comparedDropLimit(part)],
});

export interface DcDcChargerPart extends PartOf<typeof dcDcCharger> {}
