import * as z from "zod";
import type { AirSpace, TerminalPlaces } from "../../plan/place.ts";
import { amount, count, ofPlaces, oneOf, text, yesOrNo } from "../property.ts";
import type { Limits, Property, PropertyTable, Structure } from "../property-table.ts";
import { propertyTable, type ValuesOf } from "../property-table.ts";
import type { Refusal } from "../run.ts";
import { reference, references } from "../terminal-property.ts";

/*
 * Allowed values of places and sizes. A wrong one leaves no network unread: the part is then not placed, and says so. The maxima catch slips.
 */

const mm = (what: string, limits: Limits) => ofPlaces(amount(what, "mm", limits));
const inches = (what: string, limits: Limits) => ofPlaces(amount(what, "in", limits));

/** An object with a place or size. `choices`: the same in millimetres and in inches. */
function placed<Shape extends Parameters<typeof propertyTable>[0]>(
  properties: Shape,
  { called, such, ...structure }: Described,
): PlacedProperty<Shape> {
  const table = propertyTable(properties, { unknown: `is not a property of ${called}`, ...structure });
  return {
    schema: table.schema,
    allowed: `an object with ${called}, such as ${such}`,
    affectsResults: false,
    serves: "places",
    parts: table as PropertyTable,
    table,
  };
}

interface Described extends Pick<Structure, "choices" | "needed" | "contradictions"> {
  /** "a place" */
  readonly called: string;
  readonly such: string;
}

interface PlacedProperty<Shape extends Parameters<typeof propertyTable>[0]>
  extends Property<ValuesOf<Shape>> {
  readonly table: PropertyTable<Shape>;
}

const farthest = { from: 0, upTo: 20_000 };
const farthestIn = { from: 0, upTo: 800 };
const pointInBoth = {
  leftMm: mm("a distance", farthest),
  topMm: mm("a distance", farthest),
  leftIn: inches("a distance", farthestIn),
  topIn: inches("a distance", farthestIn),
};
const pointWays = {
  ways: [
    ["leftMm", "topMm"],
    ["leftIn", "topIn"],
  ],
  needed: "a place",
};
const largest = { above: 0, upTo: 20_000 };
const largestIn = { above: 0, upTo: 800 };
const sizeInBoth = {
  widthMm: mm("a width", largest),
  heightMm: mm("a height", largest),
  widthIn: inches("a width", largestIn),
  heightIn: inches("a height", largestIn),
};
const sizeWays = {
  ways: [
    ["widthMm", "heightMm"],
    ["widthIn", "heightIn"],
  ],
  needed: "a size",
};

export const flatSize = placed(sizeInBoth, {
  choices: [sizeWays],
  called: "a size",
  such: "{ widthMm: 1_200, heightMm: 800 }",
});

export const bodySize = placed(
  { ...sizeInBoth, depthMm: mm("a depth", largest), depthIn: inches("a depth", largestIn) },
  {
    choices: [sizeWays, { ways: [["depthMm"], ["depthIn"]] }],
    called: "a size",
    such: "{ widthMm: 220, heightMm: 140 }",
  },
);

export const pathPoint = placed(pointInBoth, {
  choices: [pointWays],
  called: "a place",
  such: "{ leftMm: 120, topMm: 80 }",
});

const surfaceOfPlan = ofPlaces(reference("a surface of this plan, such as board"));
const channelOfPlan = ofPlaces(reference("a channel of this plan, such as trunking"));

/** A place on a surface. */
export const placeOnSurface = placed(
  { on: surfaceOfPlan, ...pointInBoth },
  {
    choices: [pointWays],
    needed: ["on"],
    called: "a place",
    such: "{ on: board, leftMm: 120, topMm: 80 }",
  },
);

const turns = [0, 90, 180, 270] as const;

function incomplete(path: readonly string[], wrong: string, allowed: string): Refusal {
  return { path, given: undefined, wrong, allowed };
}

/** The place of a part: on a surface, or at the free end of a channel. */
export const partPlace = placed(
  {
    on: surfaceOfPlan,
    ...pointInBoth,
    turnedDeg: ofPlaces(oneOf(turns, "is not a quarter turn")),
    endOf: channelOfPlan,
    beyondM: ofPlaces(amount("a length", "m", { from: 0, upTo: 300 })),
    beyondFt: ofPlaces(amount("a length", "ft", { from: 0, upTo: 1_000 })),
  },
  {
    choices: [
      { ways: [["on"], ["endOf"]], needed: "a place" },
      { ways: [...pointWays.ways, ["endOf"]] },
      { ways: [["beyondM"], ["beyondFt"], ["turnedDeg"]] },
    ],
    contradictions: ({ on, leftMm, leftIn, beyondM, beyondFt }) => [
      ...(on !== undefined && leftMm === undefined && leftIn === undefined
        ? [incomplete([], "its place on the surface is missing", "leftMm + topMm, or leftIn + topIn")]
        : []),
      ...(on !== undefined && (beyondM ?? beyondFt) !== undefined
        ? [
            incomplete(
              [beyondM === undefined ? "beyondFt" : "beyondM"],
              "needs endOf beside it",
              "endOf: the channel at whose end it is",
            ),
          ]
        : []),
    ],
    called: "a place",
    such: "{ on: board, leftMm: 120, topMm: 80 }",
  },
);

const air = { from: 0, upTo: 2_000 };
const airIn = { from: 0, upTo: 80 };

/** The distance that a part needs on each side. */
const airSpace = placed(
  {
    leftMm: mm("a distance", air),
    rightMm: mm("a distance", air),
    topMm: mm("a distance", air),
    bottomMm: mm("a distance", air),
    leftIn: inches("a distance", airIn),
    rightIn: inches("a distance", airIn),
    topIn: inches("a distance", airIn),
    bottomIn: inches("a distance", airIn),
  } satisfies Readonly<Record<keyof Required<AirSpace>, Property<number>>>,
  {
    choices: [
      { ways: [["leftMm"], ["leftIn"]] },
      { ways: [["rightMm"], ["rightIn"]] },
      { ways: [["topMm"], ["topIn"]] },
      { ways: [["bottomMm"], ["bottomIn"]] },
    ],
    called: "distances",
    such: "{ topMm: 100, bottomMm: 100 }",
  },
);

const leavings = ["left", "right", "up", "down", "front"] as const;

const terminalPlace = placed(
  { ...pointInBoth, leaves: ofPlaces(oneOf(leavings, "is not a side of the part")) },
  {
    choices: [pointWays],
    called: "a place of a terminal",
    such: '{ leftMm: 40, topMm: 10, leaves: "up" }',
  },
);

const oneOrSeveral = z.union(
  [terminalPlace.table.schema, z.array(terminalPlace.table.schema).min(1).max(200)],
  { error: "is not a place of a terminal" },
);

/** By the names of terminals. */
const terminalPlaces = ofPlaces({
  schema: z.record(z.string(), oneOrSeveral, { error: "is not an object" }),
  allowed: `an object from terminal to place, such as { positive: { leftMm: 40, topMm: 10, leaves: "up" } }`,
  affectsResults: false,
} as Property<unknown>) as Property<TerminalPlaces>;

const mountingPositionNames = [
  ...(["upright", "left side up", "right side up"] as const),
  ...(["upside down", "on its back", "face down"] as const),
] as const;

/** Some positions, each once. */
const mountingPositions = ofPlaces({
  schema: z
    .array(z.literal([...mountingPositionNames], { error: "is not one of the positions" }), {
      error: "is not a list",
    })
    .min(1, { error: "is empty" })
    .refine((values) => new Set(values).size === values.length, "names one twice"),
  allowed: `a list of ${mountingPositionNames.map((name) => JSON.stringify(name)).join(", ")}`,
  affectsResults: false,
});

const areaInBoth = { ...pointInBoth, ...sizeInBoth };
const areaWays = { choices: [pointWays, sizeWays] };
const thingName = ofPlaces(text("a name, as text"));

export const keptFree = placed(
  { ...areaInBoth, name: thingName },
  {
    ...areaWays,
    called: "a rectangle",
    such: "{ leftMm: 0, topMm: 300, widthMm: 1_200, heightMm: 40 }",
  },
);

export const surfaceArea = placed(areaInBoth, {
  ...areaWays,
  called: "a rectangle",
  such: "{ leftMm: 0, topMm: 300, widthMm: 1_200, heightMm: 40 }",
});

const fixtureNames = [
  ...(["source of heat", "fuel line", "fuel tank"] as const),
  ...(["gas line", "petrol engine", "compass"] as const),
] as const;

export const fixture = placed(
  {
    ...areaInBoth,
    name: thingName,
    fixture: ofPlaces(oneOf(fixtureNames, "is not one of the fixtures")),
    distanceMm: mm("a distance", { from: 0, upTo: 10_000 }),
  },
  {
    ...areaWays,
    needed: ["fixture"],
    called: "a fixture",
    such: '{ fixture: "compass", leftMm: 0, topMm: 0, widthMm: 120, heightMm: 120 }',
  },
);

/** The properties of every part that say where it is and which room it needs. */
export const placementOfPart = {
  size: bodySize,
  at: partPlace,
  air: airSpace,
  mountingPositions,
  terminalsAt: terminalPlaces,
  heatW: ofPlaces(amount("a power", "W", { from: 0, upTo: 100_000 })),
  keepCool: ofPlaces(yesOrNo()),
  massKg: ofPlaces(amount("a mass", "kg", { above: 0, upTo: 10_000 })),
  terminalsCovered: ofPlaces(yesOrNo()),
};

/** The properties of runs about the way of their conductors. */
export const wayOfRun = {
  through: ofPlaces(references("channels of this plan")),
  fromStud: ofPlaces(count({ from: 1, upTo: 200 })),
  toStud: ofPlaces(count({ from: 1, upTo: 200 })),
  outsideMm: ofPlaces(amount("a diameter", "mm", { above: 0, upTo: 200 })),
};
