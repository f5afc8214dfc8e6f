import { busBarSides } from "../allowed-values.ts";
import { rating } from "../part-properties.ts";
import { count, oneOf } from "../property.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { input, optional } from "./part-property.ts";
import { ratingOfBusOrPanel } from "./silences.ts";
import { terminalRating } from "./terminal-rating.ts";

export const busBar = definePart("busBar", {
  called: { word: "bus bar", saidBy: /bus/i },
  role: "passes current on",
  terminals: { stud: { side: "either", words: "a stud" } },
  collectsAt: ["stud"],
  sides: ({ side }) => [["stud", side ?? "either"]],
  properties: {
    ratedA: optional(rating, {
      words: "rating",
      summary: true,
      limitOf: { current: "carries", words: "rating", judgedBy: "bus/rating" },
      silentWithout: ratingOfBusOrPanel,
    }),
    studs: optional(count({ from: 1, upTo: 200 }), {
      words: "studs",
      details: "studs",
      silentWithout: "Number of studs of a bus bar",
    }),
    ...terminalRating,
    side: input(oneOf(busBarSides, "is neither side of the system")),
  },
});

export interface BusBarPart extends PartOf<typeof busBar> {}
