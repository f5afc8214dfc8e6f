import { rating } from "../part-properties.ts";
import { notBelow } from "./contradiction.ts";
import { optional, required } from "./part-property.ts";
import { terminalRating } from "./terminal-rating.ts";

/** The properties of a disconnect, relay or selector switch. */
export const ratedContacts = {
  ratedA: required(rating, {
    words: "rating",
    summary: true,
    limitOf: { current: "carries", words: "rating", judgedBy: "disconnect/rating" },
  }),
  momentaryA: optional(rating, { words: "rating for seconds", details: "for seconds" }),
  ...terminalRating,
};

/** A switch carries for seconds at least its rating for hours. */
export function contradictingContacts({
  ratedA = 0,
  momentaryA,
}: {
  readonly ratedA?: number | undefined;
  readonly momentaryA?: number | undefined;
}) {
  return notBelow("momentaryA", momentaryA, { what: "its rating", value: ratedA, unit: "A" });
}
