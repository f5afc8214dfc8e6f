import { accept, ambient } from "../part-properties.ts";
import { amount, listOf, ofPlaces, oneOf, text, yesOrNo } from "../property.ts";
import type { PropertyTable } from "../property-table.ts";
import { propertyTable, type ValuesOf } from "../property-table.ts";
import type { Refusal } from "../run.ts";
import { reference } from "../terminal-property.ts";
import { pathPoint, placeOnSurface } from "./place-properties.ts";

const ways = ["trunking", "conduit", "bundle", "hole"] as const;
const wide = { above: 0, upTo: 1_000 };
const wideIn = { above: 0, upTo: 40 };

const insideTable = propertyTable(
  {
    widthMm: ofPlaces(amount("a width", "mm", wide)),
    heightMm: ofPlaces(amount("a height", "mm", wide)),
    widthIn: ofPlaces(amount("a width", "in", wideIn)),
    heightIn: ofPlaces(amount("a height", "in", wideIn)),
    diameterMm: ofPlaces(amount("a diameter", "mm", wide)),
    diameterIn: ofPlaces(amount("a diameter", "in", wideIn)),
  },
  {
    unknown: "is not a property of the inside of a channel",
    choices: [
      {
        ways: [["widthMm", "heightMm"], ["widthIn", "heightIn"], ["diameterMm"], ["diameterIn"]],
        needed: "a width and a height, or a diameter,",
      },
    ],
  },
);

const properties = {
  name: text("a name, as text"),
  accept,
  on: ofPlaces(reference("a surface of this plan, such as board")),
  path: ofPlaces(
    listOf(pathPoint.table, {
      allowed:
        "a list of 2 to 100 places, such as [{ leftMm: 50, topMm: 400 }, { leftMm: 1_150, topMm: 400 }]",
      most: 100,
    }),
  ),
  from: placeOnSurface,
  to: placeOnSurface,
  lengthM: ofPlaces(amount("a length", "m", { from: 0.001, upTo: 300 })),
  lengthFt: ofPlaces(amount("a length", "ft", { from: 0.003, upTo: 1_000 })),
  way: ofPlaces(oneOf(ways, "is not one of the kinds of channels")),
  inside: ofPlaces({
    schema: insideTable.schema,
    allowed: "an object with its inside, such as { widthMm: 40, heightMm: 60 }",
    affectsResults: false,
    parts: insideTable as PropertyTable,
  }),
  fillPercent: ofPlaces(amount("a share of its inside", "%", { above: 0, upTo: 100 })),
  bendRadiusMm: ofPlaces(amount("a radius", "mm", { from: 0, upTo: 2_000 })),
  grommet: ofPlaces(yesOrNo()),
  supportsEveryMm: ofPlaces(amount("a distance", "mm", { above: 0, upTo: 10_000 })),
  compartment: ofPlaces(reference("a compartment of this plan, such as locker")),
  ambientC: ofPlaces(ambient),
  engineSpace: ofPlaces(yesOrNo()),
};

export type ChannelValues = ValuesOf<typeof properties>;

/** Allowed values of each property of `channel`. */
export const channelProperties = propertyTable(properties, {
  word: "channel",
  unknown: "is not a property of channel",
  choices: [
    { ways: [["on", "path"], ["from"]], needed: "a way" },
    { ways: [["path"], ["lengthM"], ["lengthFt"]] },
  ],
  contradictions: ({ path, from, to, lengthM, lengthFt }) => [
    ...(Array.isArray(path) && path.length < 2
      ? [refused(["path"], "has not two places", "a list of 2 to 100 places")]
      : []),
    ...(from !== undefined && (lengthM ?? lengthFt) === undefined
      ? [refused([], "its length is missing", "lengthM or lengthFt")]
      : []),
    ...(to !== undefined && from === undefined
      ? [refused(["to"], "needs from beside it", "from: the place on a surface where it begins")]
      : []),
  ],
});

function refused(path: readonly string[], wrong: string, allowed: string): Refusal {
  return { path, given: undefined, wrong, allowed, serves: "places" };
}
