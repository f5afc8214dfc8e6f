import { accept, ambient } from "../part-properties.ts";
import { amount, listOf, ofPlaces, oneOf, text, yesOrNo } from "../property.ts";
import { propertyTable, type ValuesOf } from "../property-table.ts";

const materials = ["painted steel", "stainless steel", "plastic", "aluminium", "wood"] as const;

const wall = propertyTable(
  {
    material: ofPlaces(oneOf(materials, "is not one of the materials")),
    areaM2: ofPlaces(amount("an area", "m²", { above: 0, upTo: 100 })),
  },
  { unknown: "is not a property of a wall", needed: ["material", "areaM2"], choices: [] },
);

const opening = ofPlaces(amount("an area", "cm²", { from: 0, upTo: 10_000 }));

const properties = {
  name: text("a name, as text"),
  accept,
  ambientC: ofPlaces(ambient),
  engineSpace: ofPlaces(yesOrNo()),
  walls: ofPlaces(
    listOf(wall, {
      allowed: 'a list of up to 20 walls, such as [{ material: "painted steel", areaM2: 1.2 }]',
      most: 20,
    }),
  ),
  outsideC: ofPlaces(ambient),
  inletCm2: opening,
  outletCm2: opening,
};

export type CompartmentValues = ValuesOf<typeof properties>;

/** Allowed values of each property of `compartment`. */
export const compartmentProperties = propertyTable(properties, {
  word: "compartment",
  unknown: "is not a property of compartment",
  choices: [],
});
