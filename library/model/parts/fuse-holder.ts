import { fuseFamilies } from "../allowed-values.ts";
import { oneOf } from "../property.ts";
import { ratingOfDevice } from "../protection-properties.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { type DeviceFigures, deviceFigures, inLine, ofEveryDevice } from "./device-in-line.ts";
import { optional } from "./part-property.ts";

const families = fuseFamilies.filter((family) => family !== "circuit breaker");

export const fuseHolder = definePart("fuseHolder", {
  called: { word: "fuse holder", saidBy: /fuse/i },
  ...inLine,
  properties: {
    ...ofEveryDevice,
    family: optional(oneOf(families, "is not a family of fuses"), { words: "family", details: true }),
    holderRatedA: optional(ratingOfDevice, { words: "rating of the holder", details: "holder" }),
  },
  figures: (stated, context): DeviceFigures => deviceFigures(stated, context),
});

export interface FuseHolderPart extends PartOf<typeof fuseHolder> {}
