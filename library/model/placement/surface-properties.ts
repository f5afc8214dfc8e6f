import { accept, ambient } from "../part-properties.ts";
import { amount, listOf, ofPlaces, oneOf, text, yesOrNo } from "../property.ts";
import { propertyTable, type ValuesOf } from "../property-table.ts";
import { reference } from "../terminal-property.ts";
import { fixture, flatSize, keptFree, surfaceArea } from "./place-properties.ts";

const orientations = ["vertical", "floor", "ceiling"] as const;
const most = 100;
const area = "[{ leftMm: 0, topMm: 300, widthMm: 1_200, heightMm: 40 }]";

const properties = {
  name: text("a name, as text"),
  accept,
  size: flatSize,
  orientation: ofPlaces(oneOf(orientations, "is not one of the orientations")),
  compartment: ofPlaces(reference("a compartment of this plan, such as locker")),
  keepFree: ofPlaces(
    listOf(keptFree.table, { allowed: `a list of up to ${most} rectangles, such as ${area}`, most }),
  ),
  outOfReach: ofPlaces(
    listOf(surfaceArea.table, { allowed: `a list of up to ${most} rectangles, such as ${area}`, most }),
  ),
  fixtures: ofPlaces(
    listOf(fixture.table, {
      allowed: `a list of up to ${most} fixtures, such as [{ fixture: "compass", leftMm: 0, topMm: 0, widthMm: 120, heightMm: 120 }]`,
      most,
    }),
  ),
  ambientC: ofPlaces(ambient),
  engineSpace: ofPlaces(yesOrNo()),
  bareMetal: ofPlaces(yesOrNo()),
  openAbove: ofPlaces(yesOrNo()),
  bilgeWaterMm: ofPlaces(amount("a height", "mm", { from: 0, upTo: 20_000 })),
  carriesKg: ofPlaces(amount("a mass", "kg", { above: 0, upTo: 10_000 })),
};

export type SurfaceValues = ValuesOf<typeof properties>;

/** Allowed values of each property of `surface`. */
export const surfaceProperties = propertyTable(properties, {
  word: "surface",
  unknown: "is not a property of surface",
  needed: ["size"],
  choices: [],
});
