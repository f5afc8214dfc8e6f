import { resistanceOrNone } from "../part-properties.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { required } from "./part-property.ts";

/** Metal that carries return current: its bonding conductor ends at `bond`, loads return at `metal`. */
export const chassis = definePart("chassis", {
  called: { word: "chassis", saidBy: /chassis|hull|metal|frame/i },
  role: "metal",
  terminals: {
    bond: { side: "negative", words: "the bond" },
    metal: { side: "negative", words: "the metal" },
  },
  properties: {
    milliohm: required(resistanceOrNone(1_000), { words: "resistance" }),
  },
  inside: ({ milliohm = 0 }) => [{ between: ["bond", "metal"], ohm: milliohm / 1_000 }],
});

export interface ChassisPart extends PartOf<typeof chassis> {}
