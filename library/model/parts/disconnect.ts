import { rating } from "../part-properties.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { required } from "./part-property.ts";

export const disconnect = definePart("disconnect", {
  called: { word: "disconnect", saidBy: /disconnect|switch|isolator/i },
  role: "passes current on",
  terminals: {
    line: { side: "either", words: "the line side" },
    load: { side: "either", words: "the load side" },
  },
  opens: "by hand",
  inSeries: true,
  properties: {
    ratedA: required(rating, {
      words: "rating",
      summary: true,
      limitOf: { current: "carries", words: "rating", judgedBy: "disconnect/rating" },
    }),
  },
  inside: (_, { closed }) => (closed ? [{ between: ["line", "load"], ohm: 0 }] : []),
});

export interface DisconnectPart extends PartOf<typeof disconnect> {}
