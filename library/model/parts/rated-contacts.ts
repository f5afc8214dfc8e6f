import { rating } from "../part-properties.ts";
import { required } from "./part-property.ts";
import { terminalRating } from "./terminal-rating.ts";

/** The properties of a disconnect, relay or selector switch. */
export const ratedContacts = {
  ratedA: required(rating, {
    words: "rating",
    summary: true,
    limitOf: { current: "carries", words: "rating", judgedBy: "disconnect/rating" },
  }),
  ...terminalRating,
};
