import { alternatorShare } from "../../standards/charging-practice.ts";
import { current } from "../part-properties.ts";
import { amount, yesOrNo } from "../property.ts";
import { nominalOfCharger, outputVoltage } from "./charging.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { defaulted, required } from "./part-property.ts";
import { feeds, poles } from "./poles.ts";

export const alternator = definePart("alternator", {
  called: { word: "alternator", saidBy: /alternator/i },
  role: "source",
  chargesWith: "engine",
  terminals: poles,
  ports: feeds,
  hasDataSheet: true,
  properties: {
    ratedA: required(current, {
      words: "rating",
      summary: true,
      limitOf: {
        current: "gives",
        words: "may give continuously",
        forHours: "continuousPercent",
        judgedBy: "alternator/overload",
      },
    }),
    outputV: outputVoltage(),
    /** Output that it may deliver for hours, in percent of its rating. */
    continuousPercent: defaulted(
      amount("a share of the rating", "%", { from: 1, upTo: 100 }),
      alternatorShare.continuousPercent,
      {
        words: "continuous share of its rating",
        source: alternatorShare.source,
        assumed: { words: "its continuous output", behind: " of its rating" },
      },
    ),
    selfLimiting: defaulted(yesOrNo(), true, {
      words: "limits its current",
      assumed: { words: "greatest current", as: ["its rating: it limits its current"] },
    }),
  },
  determinesV: ({ outputV }) => nominalOfCharger(outputV),
});

export interface AlternatorPart extends PartOf<typeof alternator> {}
