import { channel, compartment, surface } from "loomwright";

// Where everything hangs. Measured with a tape, in inches and feet, from the top left corner of each surface as one looks at it: of the
// tray from above, with the bulkhead at its top edge. Every figure is invented.

/** Cowls and the blower ventilate it. Wires in it start out hot, and carry less than elsewhere. */
const engineSpace = compartment({
  name: "engine space",
  engineSpace: true,
  inletCm2: 100,
  outletCm2: 100,
});

const bulkhead = surface({
  name: "bulkhead, engine side",
  size: { widthIn: 48, heightIn: 24 },
  compartment: engineSpace,
});
const tray = surface({
  name: "battery tray",
  size: { widthIn: 24, heightIn: 14 },
  orientation: "floor",
  compartment: engineSpace,
});
/** Chargers are out of the heat, and away from petrol vapour. */
const cabinSide = surface({ name: "bulkhead, cabin side", size: { widthIn: 48, heightIn: 18 } });
const helmConsole = surface({ name: "helm console", size: { widthIn: 24, heightIn: 16 } });

// In the engine space.
channel({
  name: "bulkhead trunking",
  on: bulkhead,
  path: [
    { leftIn: 2, topIn: 8 },
    { leftIn: 46, topIn: 8 },
  ],
  inside: { widthIn: 2.5, heightIn: 2.5 },
  fillPercent: 40,
});
channel({
  name: "trunking down to the battery",
  on: bulkhead,
  path: [
    { leftIn: 32, topIn: 8 },
    { leftIn: 32, topIn: 23 },
  ],
  inside: { widthIn: 1.5, heightIn: 1.5 },
  fillPercent: 40,
});
channel({
  name: "plus riser",
  from: { on: tray, leftIn: 4, topIn: 1 },
  to: { on: bulkhead, leftIn: 9.75, topIn: 23 },
  lengthFt: 0.6,
  inside: { diameterIn: 1.25 },
  fillPercent: 40,
  bendRadiusMm: 60,
});
channel({
  name: "minus riser",
  from: { on: tray, leftIn: 14.5, topIn: 1 },
  to: { on: bulkhead, leftIn: 32, topIn: 23 },
  lengthFt: 0.6,
  inside: { diameterIn: 1.25 },
  fillPercent: 40,
  bendRadiusMm: 60,
});
const toEngine = channel({
  name: "to the engine",
  way: "conduit",
  from: { on: bulkhead, leftIn: 2, topIn: 8 },
  lengthFt: 3.5,
  compartment: engineSpace,
  inside: { diameterIn: 1.25 },
  fillPercent: 40,
  bendRadiusMm: 90,
});
const toBlower = channel({
  name: "to the blower",
  way: "conduit",
  from: { on: bulkhead, leftIn: 46, topIn: 8 },
  lengthFt: 6,
  compartment: engineSpace,
  inside: { diameterIn: 0.75 },
  fillPercent: 40,
  bendRadiusMm: 60,
});
const toBilge = channel({
  name: "to the bilge",
  way: "conduit",
  from: { on: tray, leftIn: 1.5, topIn: 3 },
  lengthFt: 9,
  compartment: engineSpace,
  inside: { diameterIn: 0.75 },
  fillPercent: 40,
  bendRadiusMm: 60,
});

// Forward of it.
channel({
  name: "through the bulkhead",
  way: "hole",
  from: { on: bulkhead, leftIn: 24, topIn: 8 },
  to: { on: cabinSide, leftIn: 24, topIn: 12 },
  lengthFt: 0.08,
  grommet: true,
});
channel({
  name: "cabin trunking",
  on: cabinSide,
  path: [
    { leftIn: 2, topIn: 12 },
    { leftIn: 46, topIn: 12 },
  ],
  inside: { widthIn: 2.5, heightIn: 1.5 },
  fillPercent: 40,
});
const fromRoof = channel({
  name: "down from the cabin roof",
  way: "conduit",
  from: { on: cabinSide, leftIn: 2, topIn: 12 },
  lengthFt: 7,
  inside: { diameterIn: 0.75 },
  fillPercent: 40,
  bendRadiusMm: 60,
});
channel({
  name: "under the side deck",
  way: "conduit",
  from: { on: cabinSide, leftIn: 46, topIn: 12 },
  to: { on: helmConsole, leftIn: 1.5, topIn: 12 },
  lengthFt: 7,
  inside: { diameterIn: 1.5 },
  fillPercent: 40,
  bendRadiusMm: 120,
});
channel({
  name: "console trunking",
  on: helmConsole,
  path: [
    { leftIn: 1.5, topIn: 12 },
    { leftIn: 22.5, topIn: 12 },
  ],
  inside: { widthIn: 1.5, heightIn: 1.5 },
  fillPercent: 40,
});
const upTheMast = channel({
  name: "up the mast",
  way: "conduit",
  from: { on: helmConsole, leftIn: 22.5, topIn: 12 },
  lengthFt: 16,
  inside: { diameterIn: 0.75 },
  fillPercent: 40,
  bendRadiusMm: 60,
});
const toBow = channel({
  name: "to the bow",
  way: "conduit",
  from: { on: helmConsole, leftIn: 19, topIn: 12 },
  lengthFt: 13,
  inside: { diameterIn: 0.75 },
  fillPercent: 40,
  bendRadiusMm: 60,
});
const alongCabin = channel({
  name: "along the cabin roof",
  way: "conduit",
  from: { on: helmConsole, leftIn: 13.5, topIn: 12 },
  lengthFt: 8,
  inside: { diameterIn: 0.75 },
  fillPercent: 40,
  bendRadiusMm: 60,
});

/** Studs or clamps in a row, from the left one on. */
function row(count: number, firstIn: number, stepIn: number, topIn: number, leaves: "up" | "down") {
  return Array.from({ length: count }, (_, at) => ({ leftIn: firstIn + at * stepIn, topIn, leaves }));
}

/** The air that the makers of the charger and of the controller ask for. */
const air = { leftIn: 1, rightIn: 1, topIn: 2, bottomIn: 1.5 } as const;

/** Size, place and terminals of each part, and the place of each device. */
export const hung = {
  // Seen from above: its posts are on its top.
  bank: {
    size: { widthIn: 13, heightIn: 6.8, depthIn: 9 },
    at: { on: tray, leftIn: 3, topIn: 5.5 },
    terminalsAt: {
      positive: { leftIn: 1, topIn: 1.2, leaves: "up" },
      negative: { leftIn: 11.5, topIn: 1.2, leaves: "up" },
    },
    mountingPositions: ["on its back", "upright"],
    terminalsCovered: true,
  },
  batterySwitch: {
    size: { widthIn: 3.5, heightIn: 3.5, depthIn: 3 },
    at: { on: bulkhead, leftIn: 8, topIn: 14 },
    terminalsAt: {
      line: { leftIn: 1.75, topIn: 3, leaves: "down" },
      load: { leftIn: 3, topIn: 0.75, leaves: "right" },
    },
  },
  positiveBus: {
    size: { widthIn: 10, heightIn: 2, depthIn: 2 },
    at: { on: bulkhead, leftIn: 16, topIn: 13.5 },
    terminalsAt: { stud: row(8, 0.6, 1.25, 1, "up") },
    terminalsCovered: true,
  },
  negativeBus: {
    size: { widthIn: 10, heightIn: 2, depthIn: 2 },
    at: { on: bulkhead, leftIn: 35.5, topIn: 13.5 },
    terminalsAt: { stud: row(8, 0.6, 1.25, 1, "up") },
  },
  engine: { at: { endOf: toEngine, beyondFt: 0.5 } },
  blower: { at: { endOf: toBlower, beyondFt: 0.5 } },
  bilgePump: { at: { endOf: toBilge, beyondFt: 1 } },

  dock: {
    size: { widthIn: 8, heightIn: 6, depthIn: 3 },
    at: { on: cabinSide, leftIn: 26, topIn: 3 },
    terminalsAt: {
      positive: { leftIn: 2.5, topIn: 5.5, leaves: "down" },
      negative: { leftIn: 5, topIn: 5.5, leaves: "down" },
    },
    air,
    mountingPositions: ["upright"],
  },
  controller: {
    size: { widthIn: 6, heightIn: 4.5, depthIn: 2.5 },
    at: { on: cabinSide, leftIn: 10, topIn: 4 },
    terminalsAt: {
      solarPositive: { leftIn: 1, topIn: 4, leaves: "down" },
      solarNegative: { leftIn: 2, topIn: 4, leaves: "down" },
      positive: { leftIn: 4, topIn: 4, leaves: "down" },
      negative: { leftIn: 5, topIn: 4, leaves: "down" },
    },
    air,
    mountingPositions: ["upright"],
  },
  module: { at: { endOf: fromRoof, beyondFt: 0.5 } },

  helm: {
    size: { widthIn: 9.5, heightIn: 6, depthIn: 2 },
    at: { on: helmConsole, leftIn: 2, topIn: 3 },
    terminalsAt: {
      feed: { leftIn: 0.5, topIn: 5.4, leaves: "down" },
      branch: row(12, 1.25, 0.7, 3.5, "down"),
      negative: row(12, 1.6, 0.7, 5.4, "down"),
    },
  },
  radio: { size: { widthIn: 7, heightIn: 2.5 }, at: { on: helmConsole, leftIn: 12.5, topIn: 3 } },
  sounder: { size: { widthIn: 3.5, heightIn: 3.5 }, at: { on: helmConsole, leftIn: 20, topIn: 3 } },
  cabinLights: { at: { endOf: alongCabin, beyondFt: 1 } },
  horn: { at: { endOf: alongCabin, beyondFt: 1 } },
  navigationLights: { at: { endOf: toBow, beyondFt: 1 } },
  anchorLight: { at: { endOf: upTheMast, beyondFt: 0.5 } },
} as const;
