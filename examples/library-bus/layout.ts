import { channel, compartment, type PlannedSurface, surface } from "loomwright";

// Where everything hangs. Measured with a tape, in mm, from the top left corner of each surface as one looks at it: of the floor from
// above, with the wall at its top edge; of a ceiling from below, with the front of the bus at the left. Every figure is invented.

/** A locker in the skirt, under the driver's floor. It is open to the street at the bottom and has slots at the top. */
const skirtLocker = compartment({ name: "skirt locker", inletCm2: 60, outletCm2: 60 });
/** An hour of driving makes it hot. */
const engineBay = compartment({ name: "engine bay", engineSpace: true });

/** The wall behind the driver, as one sees it from the reading room. */
const wall = surface({
  name: "wall behind the driver",
  size: { widthMm: 1_600, heightMm: 900 },
  carriesKg: 40,
});
const lockerFloor = surface({
  name: "floor of the skirt locker",
  size: { widthMm: 1_200, heightMm: 450 },
  orientation: "floor",
  compartment: skirtLocker,
});
/** In the sun it is hot under the roof. */
const underRoof = { orientation: "ceiling", ambientC: 50 } as const;
export const readingRoom = surface({
  ...underRoof,
  name: "ceiling of the reading room",
  size: { widthMm: 4_000, heightMm: 2_200 },
});
/** Behind the partition: desk and kitchenette. */
export const backRoom = surface({
  ...underRoof,
  name: "ceiling of the back room",
  size: { widthMm: 3_200, heightMm: 2_200 },
});

// Along the wall, down to the locker and up to the ceiling.
channel({
  name: "wall trunking",
  on: wall,
  path: [
    { leftMm: 40, topMm: 450 },
    { leftMm: 1_560, topMm: 450 },
  ],
  inside: { widthMm: 100, heightMm: 60 },
  fillPercent: 40,
});
channel({
  name: "locker riser",
  on: wall,
  path: [
    { leftMm: 680, topMm: 450 },
    { leftMm: 680, topMm: 880 },
  ],
  inside: { widthMm: 60, heightMm: 60 },
  fillPercent: 40,
});
channel({
  name: "solar trunking",
  on: wall,
  path: [
    { leftMm: 440, topMm: 450 },
    { leftMm: 440, topMm: 40 },
  ],
  inside: { widthMm: 25, heightMm: 25 },
  fillPercent: 40,
});
channel({
  name: "plus riser",
  from: { on: lockerFloor, leftMm: 120, topMm: 20 },
  to: { on: wall, leftMm: 125, topMm: 880 },
  lengthM: 0.25,
  inside: { diameterMm: 40 },
  fillPercent: 40,
  bendRadiusMm: 120,
  grommet: true,
});
channel({
  name: "frame riser",
  from: { on: lockerFloor, leftMm: 680, topMm: 40 },
  to: { on: wall, leftMm: 680, topMm: 880 },
  lengthM: 0.25,
  inside: { diameterMm: 60 },
  fillPercent: 40,
  bendRadiusMm: 120,
  grommet: true,
});
channel({
  name: "locker trunking",
  on: lockerFloor,
  path: [
    { leftMm: 680, topMm: 40 },
    { leftMm: 1_160, topMm: 40 },
  ],
  inside: { widthMm: 50, heightMm: 50 },
  fillPercent: 40,
});
const toEngine = channel({
  name: "engine conduit",
  way: "conduit",
  from: { on: lockerFloor, leftMm: 1_160, topMm: 40 },
  lengthM: 1.2,
  compartment: engineBay,
  inside: { diameterMm: 50 },
  fillPercent: 40,
  bendRadiusMm: 100,
  grommet: true,
});
const fromRoof = channel({
  name: "solar conduit",
  way: "conduit",
  from: { on: wall, leftMm: 440, topMm: 40 },
  lengthM: 3.2,
  ambientC: 60,
  inside: { diameterMm: 25 },
  fillPercent: 40,
  bendRadiusMm: 80,
  grommet: true,
});
channel({
  name: "roof riser",
  way: "conduit",
  from: { on: wall, leftMm: 1_560, topMm: 450 },
  to: { on: readingRoom, leftMm: 60, topMm: 1_100 },
  lengthM: 1.3,
  inside: { diameterMm: 70 },
  fillPercent: 40,
  bendRadiusMm: 150,
});
const toDashboard = channel({
  name: "dashboard conduit",
  way: "conduit",
  from: { on: wall, leftMm: 40, topMm: 450 },
  lengthM: 0.9,
  inside: { diameterMm: 20 },
  fillPercent: 40,
  bendRadiusMm: 60,
  grommet: true,
});
const toEntrance = channel({
  name: "entrance conduit",
  way: "conduit",
  from: { on: wall, leftMm: 1_140, topMm: 450 },
  lengthM: 1.9,
  inside: { diameterMm: 25 },
  fillPercent: 40,
  bendRadiusMm: 80,
  grommet: true,
});

// Along the middle of the ceiling to the back, with a branch to the shelves on both sides.
channel({
  name: "front trunking",
  on: readingRoom,
  path: [
    { leftMm: 60, topMm: 1_100 },
    { leftMm: 3_980, topMm: 1_100 },
  ],
  inside: { widthMm: 60, heightMm: 60 },
  fillPercent: 40,
});
channel({
  name: "shelf trunking",
  on: readingRoom,
  path: [
    { leftMm: 2_800, topMm: 350 },
    { leftMm: 2_800, topMm: 1_850 },
  ],
  inside: { widthMm: 25, heightMm: 25 },
  fillPercent: 40,
});
channel({
  name: "partition",
  way: "hole",
  from: { on: readingRoom, leftMm: 3_980, topMm: 1_100 },
  to: { on: backRoom, leftMm: 20, topMm: 1_100 },
  lengthM: 0.05,
  grommet: true,
});
const alongBack = channel({
  name: "rear trunking",
  on: backRoom,
  path: [
    { leftMm: 20, topMm: 1_100 },
    { leftMm: 3_100, topMm: 1_100 },
  ],
  inside: { widthMm: 60, heightMm: 60 },
  fillPercent: 40,
});

/** A conduit from the trunking of a ceiling down the wall, to a device or two at its end. */
export function conduitFrom(on: PlannedSurface, leftMm: number, name: string, diameterMm = 20) {
  return channel({
    name,
    way: "conduit",
    from: { on, leftMm, topMm: 1_100 },
    lengthM: 2.2,
    inside: { diameterMm },
    fillPercent: 40,
    bendRadiusMm: diameterMm < 40 ? 80 : 120,
  });
}

/** Across the ceiling and down behind the kitchenette. */
const toKitchenette = conduitFrom(backRoom, 300, "kitchenette conduit", 40);

/** Studs or clamps in a row, from the left one on. */
function row(count: number, firstMm: number, stepMm: number, topMm: number, leaves: "up" | "down") {
  return Array.from({ length: count }, (_, at) => ({ leftMm: firstMm + at * stepMm, topMm, leaves }));
}

/** The air that the makers of the chargers and of the inverter ask for. */
const air = { leftMm: 30, rightMm: 30, topMm: 60, bottomMm: 60 } as const;

/** Size, place and terminals of each part, and the place of each device. */
export const hung = {
  // Seen from above: its posts are on its top.
  bank: {
    size: { widthMm: 520, heightMm: 240, depthMm: 220 },
    at: { on: lockerFloor, leftMm: 80, topMm: 160 },
    terminalsAt: {
      positive: { leftMm: 40, topMm: 40, leaves: "up" },
      negative: { leftMm: 480, topMm: 40, leaves: "up" },
    },
    mountingPositions: ["on its back", "upright"],
    terminalsCovered: true,
    massKg: 32,
  },
  starter: {
    size: { widthMm: 350, heightMm: 175, depthMm: 190 },
    at: { on: lockerFloor, leftMm: 790, topMm: 225 },
    terminalsAt: {
      positive: { leftMm: 50, topMm: 30, leaves: "up" },
      negative: { leftMm: 300, topMm: 30, leaves: "up" },
    },
    mountingPositions: ["on its back", "upright"],
    terminalsCovered: true,
    massKg: 24,
  },
  // A welded stud beside the starter battery.
  frame: {
    size: { widthMm: 60, heightMm: 60, depthMm: 40 },
    at: { on: lockerFloor, leftMm: 960, topMm: 110 },
    terminalsAt: {
      bond: { leftMm: 15, topMm: 30, leaves: "left" },
      metal: { leftMm: 45, topMm: 30, leaves: "right" },
    },
  },
  engine: { at: { endOf: toEngine, beyondM: 0.2 } },

  mainDisconnect: {
    size: { widthMm: 90, heightMm: 90, depthMm: 80 },
    at: { on: wall, leftMm: 80, topMm: 630 },
    terminalsAt: {
      line: { leftMm: 45, topMm: 75, leaves: "down" },
      load: { leftMm: 75, topMm: 20, leaves: "right" },
    },
    massKg: 0.6,
  },
  positiveBus: {
    size: { widthMm: 300, heightMm: 50, depthMm: 60 },
    at: { on: wall, leftMm: 310, topMm: 620 },
    terminalsAt: { stud: row(8, 10, 40, 25, "up") },
    terminalsCovered: true,
    massKg: 0.9,
  },
  meter: {
    size: { widthMm: 140, heightMm: 60, depthMm: 60 },
    at: { on: wall, leftMm: 780, topMm: 620 },
    terminalsAt: {
      batterySide: { leftMm: 20, topMm: 30, leaves: "left" },
      systemSide: { leftMm: 120, topMm: 30, leaves: "right" },
    },
    massKg: 0.6,
  },
  negativeBus: {
    size: { widthMm: 300, heightMm: 50, depthMm: 60 },
    at: { on: wall, leftMm: 1_080, topMm: 625 },
    terminalsAt: { stud: row(8, 10, 40, 25, "up") },
    massKg: 0.9,
  },
  panel: {
    size: { widthMm: 380, heightMm: 180, depthMm: 60 },
    at: { on: wall, leftMm: 1_190, topMm: 120 },
    terminalsAt: {
      feed: { leftMm: 15, topMm: 160, leaves: "down" },
      branch: row(24, 40, 14, 100, "down"),
      negative: row(24, 47, 14, 160, "down"),
    },
    massKg: 1.4,
  },
  kettleInverter: {
    size: { widthMm: 300, heightMm: 200, depthMm: 90 },
    at: { on: wall, leftMm: 60, topMm: 120 },
    terminalsAt: {
      positive: { leftMm: 100, topMm: 180, leaves: "down" },
      negative: { leftMm: 200, topMm: 180, leaves: "down" },
    },
    air,
    mountingPositions: ["upright"],
    massKg: 6,
  },
  sunController: {
    size: { widthMm: 180, heightMm: 120, depthMm: 65 },
    at: { on: wall, leftMm: 500, topMm: 160 },
    terminalsAt: {
      solarPositive: { leftMm: 30, topMm: 110, leaves: "down" },
      solarNegative: { leftMm: 60, topMm: 110, leaves: "down" },
      positive: { leftMm: 120, topMm: 110, leaves: "down" },
      negative: { leftMm: 150, topMm: 110, leaves: "down" },
    },
    air,
    mountingPositions: ["upright"],
    massKg: 1.3,
  },
  fromEngine: {
    size: { widthMm: 160, heightMm: 130, depthMm: 60 },
    at: { on: wall, leftMm: 730, topMm: 155 },
    terminalsAt: {
      inputPositive: { leftMm: 25, topMm: 120, leaves: "down" },
      inputNegative: { leftMm: 60, topMm: 120, leaves: "down" },
      outputPositive: { leftMm: 100, topMm: 120, leaves: "down" },
      outputNegative: { leftMm: 135, topMm: 120, leaves: "down" },
    },
    air,
    mountingPositions: ["upright"],
    massKg: 1.6,
  },
  fromShore: {
    size: { widthMm: 200, heightMm: 150, depthMm: 80 },
    at: { on: wall, leftMm: 940, topMm: 145 },
    terminalsAt: {
      positive: { leftMm: 60, topMm: 140, leaves: "down" },
      negative: { leftMm: 120, topMm: 140, leaves: "down" },
    },
    air,
    mountingPositions: ["upright"],
    massKg: 2.2,
  },
  roof: { at: { endOf: fromRoof, beyondM: 0.4 } },

  // Devices that a circuit states itself: at the end of a channel, or under a ceiling beside its trunking.
  radio: { at: { endOf: toDashboard, beyondM: 0.3 } },
  entranceStep: { at: { endOf: toEntrance, beyondM: 0.2 } },
  alarm: { size: { widthMm: 110, heightMm: 110 }, at: { on: readingRoom, leftMm: 1_150, topMm: 750 } },
  shelfLampsLeft: { size: { widthMm: 80, heightMm: 80 }, at: { on: readingRoom, leftMm: 2_760, topMm: 200 } },
  shelfLampsRight: {
    size: { widthMm: 80, heightMm: 80 },
    at: { on: readingRoom, leftMm: 2_760, topMm: 1_920 },
  },
  windowSeats: { size: { widthMm: 80, heightMm: 80 }, at: { on: readingRoom, leftMm: 3_600, topMm: 1_350 } },
  refrigerator: { at: { endOf: toKitchenette, beyondM: 0.2 } },
  waterPump: { at: { endOf: toKitchenette, beyondM: 0.3 } },
  extractorFan: { size: { widthMm: 300, heightMm: 300 }, at: { on: backRoom, leftMm: 700, topMm: 600 } },
  exitLights: { size: { widthMm: 250, heightMm: 80 }, at: { on: backRoom, leftMm: 1_300, topMm: 1_350 } },
  deskLamps: { size: { widthMm: 80, heightMm: 80 }, at: { on: backRoom, leftMm: 2_500, topMm: 750 } },
  camera: { at: { endOf: alongBack, beyondM: 0.4 } },
} as const;
