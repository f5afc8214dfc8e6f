import { terminalC } from "../part-properties.ts";
import { optional } from "./part-property.ts";

/** Of a part whose maker marks the temperature rating of its terminals. */
export const terminalRating = {
  terminalC: optional(terminalC, { words: "temperature rating of its terminals" }),
};
