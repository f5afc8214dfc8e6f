import { channel, compartment, surface } from "loomwright";

// Where everything hangs. Measured with a tape, in mm, from the top left corner of each surface as one looks at it: of a floor from
// above, with the wall behind it at the top edge. A channel is measured along its middle. Every figure is invented.

/** Under the bed, over the left rear wheel. The fuse panel and the switch face the rear door. */
const board = surface({
  name: "board under the bed",
  size: { widthMm: 1_200, heightMm: 500 },
  keepFree: [{ leftMm: 0, topMm: 390, widthMm: 250, heightMm: 110, name: "wheel arch" }],
  carriesKg: 25,
});
const lockerFloor = surface({
  name: "floor before the board",
  size: { widthMm: 1_200, heightMm: 450 },
  orientation: "floor",
});
/** From the end of the bed to the driver's seat, behind the kitchen. */
const wall = surface({ name: "left wall", size: { widthMm: 2_600, heightMm: 900 } });
const roofTop = surface({
  name: "roof, from above",
  size: { widthMm: 3_000, heightMm: 1_500 },
  orientation: "floor",
});
const seatBox = surface({
  name: "floor of the seat box",
  size: { widthMm: 500, heightMm: 360 },
  orientation: "floor",
});

// Along the board, and from there to everything else.
channel({
  name: "board trunking",
  on: board,
  path: [
    { leftMm: 30, topMm: 260 },
    { leftMm: 1_170, topMm: 260 },
  ],
  inside: { widthMm: 60, heightMm: 60 },
  fillPercent: 40,
});
channel({
  name: "board trunking, left edge",
  on: board,
  path: [
    { leftMm: 30, topMm: 20 },
    { leftMm: 30, topMm: 260 },
  ],
  inside: { widthMm: 25, heightMm: 25 },
  fillPercent: 40,
});
channel({
  name: "trunking to the floor",
  on: board,
  path: [
    { leftMm: 700, topMm: 260 },
    { leftMm: 700, topMm: 490 },
  ],
  inside: { widthMm: 40, heightMm: 40 },
  fillPercent: 40,
});
channel({
  name: "plus riser",
  from: { on: lockerFloor, leftMm: 400, topMm: 10 },
  to: { on: board, leftMm: 400, topMm: 490 },
  lengthM: 0.02,
  inside: { widthMm: 25, heightMm: 25 },
  fillPercent: 40,
});
channel({
  name: "minus riser",
  from: { on: lockerFloor, leftMm: 760, topMm: 10 },
  to: { on: board, leftMm: 760, topMm: 490 },
  lengthM: 0.02,
  inside: { widthMm: 25, heightMm: 25 },
  fillPercent: 40,
});
channel({
  name: "past the end of the bed",
  way: "conduit",
  from: { on: board, leftMm: 1_170, topMm: 260 },
  to: { on: wall, leftMm: 20, topMm: 60 },
  lengthM: 0.65,
  inside: { diameterMm: 40 },
  fillPercent: 40,
  bendRadiusMm: 100,
  grommet: true,
});
channel({
  name: "wall trunking",
  on: wall,
  path: [
    { leftMm: 20, topMm: 60 },
    { leftMm: 2_580, topMm: 60 },
  ],
  inside: { widthMm: 40, heightMm: 25 },
  fillPercent: 40,
});
channel({
  name: "down to the pump",
  way: "conduit",
  on: wall,
  path: [
    { leftMm: 1_050, topMm: 60 },
    { leftMm: 1_050, topMm: 660 },
  ],
  inside: { diameterMm: 20 },
  fillPercent: 40,
});
channel({
  name: "down to the heater",
  way: "conduit",
  on: wall,
  path: [
    { leftMm: 1_650, topMm: 60 },
    { leftMm: 1_650, topMm: 660 },
  ],
  inside: { diameterMm: 20 },
  fillPercent: 40,
});
const toCeiling = channel({
  name: "up the pillar and along the ceiling",
  way: "conduit",
  from: { on: wall, leftMm: 1_300, topMm: 60 },
  lengthM: 3.1,
  inside: { diameterMm: 16 },
  fillPercent: 40,
  bendRadiusMm: 60,
  grommet: true,
});
channel({
  name: "down from the roof",
  way: "conduit",
  from: { on: roofTop, leftMm: 1_000, topMm: 80 },
  to: { on: board, leftMm: 30, topMm: 20 },
  lengthM: 1.7,
  inside: { diameterMm: 25 },
  fillPercent: 40,
  bendRadiusMm: 80,
  grommet: true,
});
channel({
  name: "under the floor",
  way: "conduit",
  from: { on: seatBox, leftMm: 250, topMm: 30 },
  to: { on: board, leftMm: 700, topMm: 490 },
  lengthM: 2.4,
  inside: { diameterMm: 40 },
  fillPercent: 40,
  bendRadiusMm: 150,
  grommet: true,
});

/** In summer it is hot here after an hour's driving. */
const engineBay = compartment({ name: "engine bay", engineSpace: true });
const toEngine = channel({
  name: "through the bulkhead to the engine",
  way: "conduit",
  from: { on: seatBox, leftMm: 450, topMm: 30 },
  lengthM: 1.2,
  compartment: engineBay,
  inside: { diameterMm: 50 },
  fillPercent: 40,
  bendRadiusMm: 150,
  grommet: true,
});

/** Studs or clamps in a row, from the left one on. */
function row(count: number, firstMm: number, stepMm: number, topMm: number, leaves: "up" | "down") {
  return Array.from({ length: count }, (_, at) => ({ leftMm: firstMm + at * stepMm, topMm, leaves }));
}

/** The air that the makers of both chargers ask for. */
const chargerAir = { leftMm: 30, rightMm: 30, topMm: 60, bottomMm: 40 } as const;

/** Size, place and terminals of each part. */
export const hung = {
  // Seen from above: its posts are on its top.
  bank: {
    size: { widthMm: 330, heightMm: 175, depthMm: 220 },
    at: { on: lockerFloor, leftMm: 420, topMm: 120 },
    terminalsAt: {
      positive: { leftMm: 30, topMm: 30, leaves: "up" },
      negative: { leftMm: 300, topMm: 30, leaves: "up" },
    },
    mountingPositions: ["on its back", "upright"],
    terminalsCovered: true,
    massKg: 23,
  },
  mainSwitch: {
    size: { widthMm: 70, heightMm: 70, depthMm: 75 },
    at: { on: board, leftMm: 300, topMm: 350 },
    terminalsAt: {
      line: { leftMm: 20, topMm: 55, leaves: "down" },
      load: { leftMm: 50, topMm: 15, leaves: "right" },
    },
    massKg: 0.4,
  },
  positiveBus: {
    size: { widthMm: 170, heightMm: 40, depthMm: 45 },
    at: { on: board, leftMm: 480, topMm: 350 },
    terminalsAt: { stud: row(5, 25, 30, 20, "up") },
    terminalsCovered: true,
    massKg: 0.4,
  },
  meter: {
    size: { widthMm: 120, heightMm: 50, depthMm: 50 },
    at: { on: board, leftMm: 800, topMm: 345 },
    terminalsAt: {
      batterySide: { leftMm: 15, topMm: 25, leaves: "left" },
      systemSide: { leftMm: 105, topMm: 25, leaves: "right" },
    },
    massKg: 0.4,
  },
  negativeBus: {
    size: { widthMm: 170, heightMm: 40, depthMm: 45 },
    at: { on: board, leftMm: 1_000, topMm: 350 },
    terminalsAt: { stud: row(6, 10, 30, 20, "up") },
    massKg: 0.4,
  },
  panel: {
    size: { widthMm: 130, heightMm: 170, depthMm: 45 },
    at: { on: board, leftMm: 800, topMm: 40 },
    terminalsAt: {
      feed: { leftMm: 20, topMm: 155, leaves: "down" },
      negative: { leftMm: 110, topMm: 155, leaves: "down" },
      branch: row(12, 10, 10, 120, "down"),
    },
    massKg: 0.6,
  },
  controller: {
    size: { widthMm: 180, heightMm: 120, depthMm: 65 },
    at: { on: board, leftMm: 110, topMm: 65 },
    terminalsAt: {
      solarPositive: { leftMm: 30, topMm: 110, leaves: "down" },
      solarNegative: { leftMm: 60, topMm: 110, leaves: "down" },
      positive: { leftMm: 120, topMm: 110, leaves: "down" },
      negative: { leftMm: 150, topMm: 110, leaves: "down" },
    },
    air: chargerAir,
    mountingPositions: ["upright"],
    massKg: 1.3,
  },
  fromEngine: {
    size: { widthMm: 160, heightMm: 120, depthMm: 60 },
    at: { on: board, leftMm: 420, topMm: 65 },
    terminalsAt: {
      inputPositive: { leftMm: 25, topMm: 110, leaves: "down" },
      inputNegative: { leftMm: 60, topMm: 110, leaves: "down" },
      outputPositive: { leftMm: 100, topMm: 110, leaves: "down" },
      outputNegative: { leftMm: 135, topMm: 110, leaves: "down" },
    },
    air: chargerAir,
    mountingPositions: ["upright"],
    massKg: 1.2,
  },
  fridge: {
    size: { widthMm: 480, heightMm: 540, depthMm: 450 },
    at: { on: wall, leftMm: 300, topMm: 340 },
    terminalsAt: {
      positive: { leftMm: 400, topMm: 20, leaves: "up" },
      negative: { leftMm: 430, topMm: 20, leaves: "up" },
    },
    air: { topMm: 40, leftMm: 20, rightMm: 20 },
    mountingPositions: ["upright"],
  },
  pump: {
    size: { widthMm: 180, heightMm: 110, depthMm: 110 },
    at: { on: wall, leftMm: 960, topMm: 760 },
    terminalsAt: {
      positive: { leftMm: 80, topMm: 10, leaves: "up" },
      negative: { leftMm: 100, topMm: 10, leaves: "up" },
    },
  },
  heater: {
    size: { widthMm: 310, heightMm: 120, depthMm: 120 },
    at: { on: wall, leftMm: 1_500, topMm: 760 },
    terminalsAt: {
      positive: { leftMm: 140, topMm: 10, leaves: "up" },
      negative: { leftMm: 160, topMm: 10, leaves: "up" },
    },
  },
  lamps: { at: { endOf: toCeiling, beyondM: 0.3 } },
  // The socket beside the table.
  computer: {
    size: { widthMm: 80, heightMm: 80, depthMm: 40 },
    at: { on: wall, leftMm: 2_100, topMm: 160 },
  },
  // Both modules side by side, as one.
  roof: {
    size: { widthMm: 2_100, heightMm: 1_050, depthMm: 35 },
    at: { on: roofTop, leftMm: 450, topMm: 250 },
    terminalsAt: {
      positive: { leftMm: 520, topMm: 30, leaves: "up" },
      negative: { leftMm: 580, topMm: 30, leaves: "up" },
    },
  },
  starter: {
    size: { widthMm: 280, heightMm: 175, depthMm: 190 },
    at: { on: seatBox, leftMm: 110, topMm: 140 },
    terminalsAt: {
      positive: { leftMm: 40, topMm: 30, leaves: "up" },
      negative: { leftMm: 240, topMm: 30, leaves: "up" },
    },
    mountingPositions: ["on its back", "upright"],
    terminalsCovered: true,
    massKg: 21,
  },
  engine: { at: { endOf: toEngine, beyondM: 0.2 } },
} as const;
