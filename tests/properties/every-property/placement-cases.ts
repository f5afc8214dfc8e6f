import { descriptorOfWord, type PartWord } from "../../../library/model/parts/index.ts";
import type { Case } from "./cases.ts";
import { boatOnBoards, type Values } from "./plans.ts";

/* The properties about where things are, in a boat with two boards, channels and a locker. */

export const onBoards = boatOnBoards();
const { board, wall, locker, cupboard, trunking, mast, boom } = onBoards;

type Row = readonly [path: string, effect: Case["effect"], values: Case["values"], given?: Values];

function rows(name: string, word: string, list: readonly Row[]): Case[] {
  return list.map(([path, effect, values, given = {}]) => ({
    property: `${word}.${path.replace(/\.\d+/g, "")}`,
    ...{ effect, plan: onBoards, at: `${name}.${path}`, values, given },
  }));
}

const here = { on: board, leftMm: 1000, topMm: 700 };
const hereIn = { on: board, leftIn: 40, topIn: 30 };
const large = { widthMm: 200, heightMm: 100 };
const largeIn = { widthIn: 8, heightIn: 4 };

/** Widths and heights at a path; `around` is the rest of the object. */
function sizes(name: string, path: string, around: object = {}, given: Values = {}): readonly Row[] {
  const of = (value: object): Values => ({ ...given, [`${name}.${path}`]: { ...around, ...value } });
  return [
    [`${path}.widthMm`, "documents", [200, 300], of(large)],
    [`${path}.heightMm`, "documents", [100, 150], of(large)],
    [`${path}.widthIn`, "documents", [8, 12], of(largeIn)],
    [`${path}.heightIn`, "documents", [4, 6], of(largeIn)],
  ];
}

/** Distances from the left and the top at a path. */
function points(name: string, path: string, around: object = {}, given: Values = {}): readonly Row[] {
  const of = (value: object): Values => ({ ...given, [`${name}.${path}`]: { ...around, ...value } });
  const inMm = of({ leftMm: 1000, topMm: 700 });
  const inInches = of({ leftIn: 40, topIn: 30 });
  return [
    [`${path}.leftMm`, "documents", [1000, 1100], inMm],
    [`${path}.topMm`, "documents", [700, 800], inMm],
    [`${path}.leftIn`, "documents", [40, 44], inInches],
    [`${path}.topIn`, "documents", [30, 34], inInches],
  ];
}

/** The place and outline of a part, or of the load that a circuit states itself. */
function placeAndSize(name: string): readonly Row[] {
  const placed: Values = { [`${name}.at`]: here };
  const end = { endOf: mast, beyondM: 1 };
  return [
    ["at", "documents", [undefined, here]],
    ["at.on", "documents", [board, wall], placed],
    ...points(name, "at", { on: board }),
    ["at.turnedDeg", "documents", [0, 90], { ...placed, [`${name}.size`]: large }],
    ["at.endOf", "documents", [mast, boom], { [`${name}.at`]: end }],
    ["at.beyondM", "documents", [1, 5], { [`${name}.at`]: end }],
    ["at.beyondFt", "documents", [3, 15], { [`${name}.at`]: { endOf: mast, beyondFt: 3 } }],
    ["size", "documents", [undefined, large], placed],
    ...sizes(name, "size", {}, placed),
    ["size.depthMm", "documents", [50, 90], { ...placed, [`${name}.size`]: { ...large, depthMm: 50 } }],
    ["size.depthIn", "documents", [2, 4], { ...placed, [`${name}.size`]: { ...largeIn, depthIn: 2 } }],
  ];
}

export function placementOfPart(word: PartWord, name: string): Case[] {
  const terminal = word === "part" ? "in" : Object.keys(descriptorOfWord(word).terminals)[0]!;
  const placed: Values = { [`${name}.at`]: here, [`${name}.size`]: large };
  const inches: Values = { [`${name}.at`]: hereIn, [`${name}.size`]: largeIn };
  const air = (["left", "right", "top", "bottom"] as const).flatMap((side): readonly Row[] => [
    [`air.${side}Mm`, "documents", [10, 90], { ...placed, [`${name}.air`]: { [`${side}Mm`]: 10 } }],
    [`air.${side}In`, "documents", [1, 4], { ...inches, [`${name}.air`]: { [`${side}In`]: 1 } }],
  ]);
  return rows(name, word, [
    ...placeAndSize(name),
    ["air", "documents", [undefined, { leftMm: 50 }], placed],
    ...air,
    ["mountingPositions", { finding: "placement/position" }, [["upright"], ["upside down"]], placed],
    ["terminalsAt", "documents", [undefined, { [terminal]: { leftMm: 20, topMm: 10 } }], placed],
    ["heatW", "documents", [undefined, 60], placed],
    ["keepCool", "documents", [undefined, true], placed],
    ["massKg", { finding: "placement/mass" }, [1, 900], placed],
    ["terminalsCovered", "documents", [undefined, true], placed],
  ]);
}

/** Of a circuit with a load of its own. */
export const placementOfCircuit: readonly Case[] = [
  ...rows("light", "circuit", [...placeAndSize("light")]),
  ...ofRun("light", "circuit"),
];

/** A circuit whose part states its place, or that is outside of the network. */
export function placeRefused(plan: Case["plan"], name: string, isAlone: boolean): Case[] {
  const list = placeAndSize(name).map(([path]) => path);
  const refused = [...list, ...(isAlone ? ["through", "fromStud", "toStud"] : [])].map((path): Case => {
    const [property = path] = path.split(".");
    const values = { at: here, size: large, through: [trunking], fromStud: 2, toStud: 2 }[property];
    return {
      ...{ property: `circuit.${path}`, effect: "refused", plan: isAlone ? plan : onBoards },
      ...{ at: `${name}.${property}`, values: [undefined, values], given: {} },
    };
  });
  return isAlone ? [...refused, outside(plan, name)] : [...refused, ...ofRun(name, "circuit")];
}

/** A lone circuit has no channels: its outside diameter is listed only. */
function outside(plan: Case["plan"], name: string): Case {
  return {
    ...{ property: "circuit.outsideMm", effect: "refused", plan },
    ...{ at: `${name}.outsideMm`, values: [undefined, 9], given: {} },
  };
}

/** `back`: the run whose stud at the end matters. */
function ofRun(name: string, word: string, back = name): Case[] {
  const wide: Values = { "trunking.fillPercent": 10, "trunking.inside": { diameterMm: 20 } };
  return rows(name, word, [
    ["through", "documents", [undefined, []]],
    ["outsideMm", "documents", [undefined, 9], wide],
    ["fromStud", "documents", [undefined, 1]],
  ]).concat(rows(back, word, [["toStud", "documents", [undefined, 1]]]));
}

const area = { leftMm: 1000, topMm: 700, widthMm: 300, heightMm: 200 };
const areaIn = { leftIn: 40, topIn: 30, widthIn: 10, heightIn: 8 };

/** A rectangle in a list. */
function areas(name: string, path: string, around: object = {}): readonly Row[] {
  const inMm: Values = { [`${name}.${path}`]: [{ ...area, ...around }] };
  const inInches: Values = { [`${name}.${path}`]: [{ ...areaIn, ...around }] };
  return [
    [path, "documents", [undefined, [{ ...area, ...around }]]],
    ...(["leftMm", "topMm", "widthMm", "heightMm"] as const).map(
      (side): Row => [`${path}.0.${side}`, "documents", [area[side], area[side] + 50], inMm],
    ),
    ...(["leftIn", "topIn", "widthIn", "heightIn"] as const).map(
      (side): Row => [`${path}.0.${side}`, "documents", [areaIn[side], areaIn[side] + 2], inInches],
    ),
  ];
}

const surfaces = rows("board", "surface", [
  ["name", "documents", ["board", "changed"]],
  [
    "size",
    "documents",
    [
      { widthMm: 3000, heightMm: 2000 },
      { widthMm: 3200, heightMm: 2000 },
    ],
  ],
  ["size.widthMm", "documents", [3000, 3200], { "board.size": { widthMm: 3000, heightMm: 2000 } }],
  ["size.heightMm", "documents", [2000, 2200], { "board.size": { widthMm: 3000, heightMm: 2000 } }],
  ["size.widthIn", "documents", [120, 130], { "board.size": { widthIn: 120, heightIn: 80 } }],
  ["size.heightIn", "documents", [80, 90], { "board.size": { widthIn: 120, heightIn: 80 } }],
  ["orientation", "documents", ["vertical", "floor"]],
  ["compartment", "documents", [undefined, locker], { "beacon.heatW": 60 }],
  ...areas("board", "keepFree"),
  ["keepFree.0.name", "documents", ["hatch", "bed"], { "board.keepFree": [{ ...area, name: "hatch" }] }],
  ...areas("board", "outOfReach"),
  ...areas("board", "fixtures", { fixture: "source of heat" }),
  [
    "fixtures.0.name",
    "documents",
    ["stove", "flue"],
    { "board.fixtures": [{ ...area, fixture: "source of heat", name: "stove" }] },
  ],
  [
    "fixtures.0.fixture",
    "documents",
    ["compass", "gas line"],
    { "board.fixtures": [{ ...area, fixture: "compass" }] },
  ],
  [
    "fixtures.0.distanceMm",
    "documents",
    [10, 900],
    { "board.fixtures": [{ ...area, fixture: "compass", distanceMm: 10 }] },
  ],
  ["ambientC", "figures", [undefined, 60]],
  ["engineSpace", "figures", [undefined, true]],
  [
    "accept",
    { finding: "placement/mass" },
    [undefined, { "placement/mass": "measured" }],
    { "beacon.massKg": 900 },
  ],
  ["bareMetal", { finding: "placement/exposed" }, [undefined, true]],
  ["openAbove", { finding: "placement/exposed" }, [undefined, true]],
  ["bilgeWaterMm", { finding: "placement/bilge-water" }, [undefined, 1900]],
  ["carriesKg", { finding: "placement/mass" }, [900, 1], { "beacon.massKg": 20 }],
]);

const along = {
  on: board,
  path: [
    { leftMm: 0, topMm: 500 },
    { leftMm: 3000, topMm: 500 },
  ],
};
const alongIn = {
  on: board,
  path: [
    { leftIn: 0, topIn: 20 },
    { leftIn: 118, topIn: 20 },
  ],
};
const from = { on: board, leftMm: 0, topMm: 0 };
const fromIn = { on: board, leftIn: 0, topIn: 0 };
const to = { on: wall, leftMm: 0, topMm: 0 };
const toIn = { on: wall, leftIn: 0, topIn: 0 };

const channels = [
  ...rows("trunking", "channel", [
    ["name", "documents", ["trunking", "changed"]],
    ["on", "documents", [board, wall]],
    [
      "path",
      "documents",
      [
        along.path,
        [
          { leftMm: 0, topMm: 600 },
          { leftMm: 3000, topMm: 600 },
        ],
      ],
    ],
    ["path.0.leftMm", "documents", [0, 300]],
    ["path.0.topMm", "documents", [500, 600]],
    ["path.0.leftIn", "documents", [0, 12], { "trunking.path": alongIn.path }],
    ["path.0.topIn", "documents", [20, 24], { "trunking.path": alongIn.path }],
    ["way", "documents", ["trunking", "bundle"]],
    ["inside", "documents", [undefined, { diameterMm: 10 }], { "trunking.fillPercent": 40, ...thick() }],
    ["inside.widthMm", "documents", [90, 10], { ...full({ widthMm: 90, heightMm: 40 }) }],
    ["inside.heightMm", "documents", [90, 10], { ...full({ widthMm: 40, heightMm: 90 }) }],
    ["inside.widthIn", "documents", [4, 0.5], { ...full({ widthIn: 4, heightIn: 2 }) }],
    ["inside.heightIn", "documents", [4, 0.5], { ...full({ widthIn: 2, heightIn: 4 }) }],
    ["inside.diameterMm", "documents", [90, 10], { ...full({ diameterMm: 90 }) }],
    ["inside.diameterIn", "documents", [4, 0.5], { ...full({ diameterIn: 4 }) }],
    ["fillPercent", "documents", [90, 1], { "trunking.inside": { diameterMm: 40 }, ...thick() }],
    ["bendRadiusMm", { finding: "placement/bend-radius" }, [900, 1], { ...bent(), ...thick() }],
    ["compartment", "documents", [undefined, cupboard]],
    ["ambientC", "figures", [undefined, 60]],
    ["engineSpace", "figures", [undefined, true]],
    ["supportsEveryMm", { finding: "placement/supports" }, [200, 900], { "trunking.way": "bundle" }],
  ]),
  ...rows("mast", "channel", [
    ["from", "documents", [from, { ...from, leftMm: 900 }]],
    ["from.on", "documents", [board, wall]],
    ["from.leftMm", "documents", [0, 900]],
    ["from.topMm", "documents", [0, 900]],
    ["from.leftIn", "documents", [0, 30], { "mast.from": fromIn }],
    ["from.topIn", "documents", [0, 30], { "mast.from": fromIn }],
    ["lengthM", "documents", [2, 8]],
    ["lengthFt", "documents", [6, 20], { "mast.lengthM": undefined }],
  ]),
  ...rows("hole", "channel", [
    ["to", "documents", [to, { ...to, leftMm: 900 }]],
    ["to.on", "documents", [wall, board]],
    ["to.leftMm", "documents", [0, 900]],
    ["to.topMm", "documents", [0, 900]],
    ["to.leftIn", "documents", [0, 30], { "hole.to": toIn }],
    ["to.topIn", "documents", [0, 30], { "hole.to": toIn }],
    [
      "accept",
      { finding: "placement/grommet" },
      [undefined, { "placement/grommet": "rounded edges" }],
      { "hole.grommet": undefined },
    ],
    ["grommet", { finding: "placement/grommet" }, [true, undefined]],
  ]),
];

/** The outside diameters of two runs that lie in the trunking. */
function thick(): Values {
  return {
    "beaconFeed.outsideMm": 12,
    "light.outsideMm": 12,
    "stoveFeed.outsideMm": 12,
    "beaconReturn.outsideMm": 12,
  };
}

function full(inside: object): Values {
  return { "trunking.inside": inside, "trunking.fillPercent": 40, ...thick() };
}

function bent(): Values {
  const path = [
    { leftMm: 0, topMm: 500 },
    { leftMm: 1500, topMm: 500 },
    { leftMm: 1500, topMm: 600 },
    { leftMm: 3000, topMm: 600 },
  ];
  return { "trunking.path": path };
}

const compartments = rows("locker", "compartment", [
  ["name", { finding: "placement/compartment-heat" }, ["locker", "changed"]],
  ["ambientC", "figures", [undefined, 60]],
  ["engineSpace", "figures", [undefined, true]],
  [
    "accept",
    { finding: "placement/compartment-heat" },
    [undefined, { "placement/compartment-heat": "measured" }],
  ],
  ["walls", { finding: "placement/compartment-heat" }, [undefined, [{ material: "plastic", areaM2: 2 }]]],
  ["walls.0.material", { finding: "placement/compartment-heat" }, ["plastic", "painted steel"]],
  ["walls.0.areaM2", { finding: "placement/compartment-heat" }, [1, 3]],
  ["outsideC", { finding: "placement/compartment-heat" }, [20, 40]],
  ["inletCm2", { finding: "placement/battery-ventilation" }, [undefined, 1]],
  ["outletCm2", { finding: "placement/battery-ventilation" }, [undefined, 1]],
]).map((one) => ({
  ...one,
  given: {
    ...one.given,
    "board.compartment": locker,
    "beacon.heatW": 60,
    "start.at": { on: board, leftMm: 100, topMm: 1_500 },
  },
}));

const builds = rows("settings", "build", [["bundledInChannels", "figures", [undefined, true], {}]]);

export const placementCases: readonly Case[] = [
  ...ofRun("beaconFeed", "cable", "beaconReturn"),
  ...surfaces,
  ...channels,
  ...compartments,
  ...builds,
];
