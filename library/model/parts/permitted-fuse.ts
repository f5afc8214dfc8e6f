import { ratingOfDevice } from "../protection-properties.ts";
import { optional } from "./part-property.ts";

/** Of a device whose maker states the largest fuse for its feed. */
export const permittedFuse = {
  maxFuseA: optional(ratingOfDevice, {
    words: "largest fuse that its maker permits",
    details: "fuse at most",
  }),
};
