import { current } from "../part-properties.ts";
import { byMonth } from "../use-properties.ts";
import { nominalOfCharger, outputVoltage } from "./charging.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { optional, required } from "./part-property.ts";
import { permittedFuse } from "./permitted-fuse.ts";
import { feeds, poles } from "./poles.ts";

export const shoreCharger = definePart("shoreCharger", {
  called: { word: "shore charger", saidBy: /charger/i },
  role: "source",
  chargesWith: "shore",
  terminals: poles,
  ports: feeds,
  hasDataSheet: true,
  properties: {
    outputA: required(current, {
      words: "output current",
      summary: true,
      limitOf: { current: "gives", words: "rated", heldByItself: true },
    }),
    outputV: outputVoltage(),
    /* The balance of energy alone reads it. */
    averageWByMonth: optional(byMonth("each an average power", "W", 5_000)),
    ...permittedFuse,
  },
  compared: ({ averageWByMonth }) =>
    averageWByMonth === undefined
      ? []
      : [
          {
            id: "averageWByMonth",
            words: "average power from January to December",
            value: [`${averageWByMonth.join(", ")} W`],
          },
        ],
  determinesV: ({ outputV }) => nominalOfCharger(outputV),
});

export interface ShoreChargerPart extends PartOf<typeof shoreCharger> {}
