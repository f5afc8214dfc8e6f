import {
  battery,
  build,
  cable,
  channel,
  circuit,
  compartment,
  disconnect,
  fusePanel,
  surface,
} from "loomwright";

// The fuse panel is screwed on where the trunking already runs.
// Expected: warning placement/over-channel at panel
// Because: trunking of 60 mm inside at 550 mm is between 520 and 580 mm; the panel is between 430 and 550 mm. Common practice, no source.
build({ name: "panel over the trunking", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const box = compartment({ name: "battery box", inletCm2: 20, outletCm2: 20 });
const boxFloor = surface({
  name: "floor of the box",
  size: { widthMm: 500, heightMm: 300 },
  orientation: "floor",
  compartment: box,
});
const wall = surface({ name: "wall", size: { widthMm: 1_500, heightMm: 700 } });
channel({
  name: "hole of the box",
  way: "hole",
  from: { on: boxFloor, leftMm: 480, topMm: 20 },
  to: { on: wall, leftMm: 60, topMm: 680 },
  lengthM: 0.02,
  grommet: true,
});
channel({
  name: "wall trunking",
  on: wall,
  path: [
    { leftMm: 100, topMm: 550 },
    { leftMm: 1_450, topMm: 550 },
    { leftMm: 1_450, topMm: 30 },
  ],
  inside: { widthMm: 60, heightMm: 40 },
  fillPercent: 40,
  bendRadiusMm: 40,
});
const toRoof = channel({
  name: "conduit to the roof",
  way: "conduit",
  from: { on: wall, leftMm: 1_450, topMm: 30 },
  lengthM: 3,
  inside: { diameterMm: 20 },
  fillPercent: 40,
});
const toGalley = channel({
  name: "trunking to the galley",
  from: { on: wall, leftMm: 1_450, topMm: 550 },
  lengthM: 1,
  inside: { widthMm: 40, heightMm: 25 },
  fillPercent: 40,
});
const bank = battery({
  name: "leisure",
  chemistry: "AGM",
  capacityAh: 110,
  shortCircuitA: 1700,
  maxDischargeA: 300,
  maxChargeA: 40,
  size: { widthMm: 330, heightMm: 170 },
  at: { on: boxFloor, leftMm: 80, topMm: 60 },
});
const off = disconnect({
  name: "switch",
  ratedA: 100,
  size: { widthMm: 70, heightMm: 70 },
  at: { on: wall, leftMm: 60, topMm: 400 },
});
const panel = fusePanel({
  name: "panel",
  positions: 6,
  ratedA: 80,
  branchRatedA: 30,
  size: { widthMm: 200, heightMm: 120 },
  at: { on: wall, leftMm: 400, topMm: 430 },
});
cable({
  name: "plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 3,
  gauge: 6,
  outsideMm: 8,
  protect: { ratingA: 60, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
cable({ name: "to panel", from: off.load, to: panel.feed, lengthFt: 3, gauge: 6, outsideMm: 8 });
cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 6, outsideMm: 8 });
const b = (ratingA: number) => ({ ratingA, family: "ISO 8820-3 Type C" }) as const;
circuit({
  name: "lamps",
  from: panel.branch,
  load: 3,
  oneWayFt: 16,
  gauge: 14,
  outsideMm: 4,
  protect: b(5),
  at: { endOf: toRoof },
});
circuit({
  name: "fridge",
  from: panel.branch,
  load: 5,
  oneWayFt: 8,
  gauge: 12,
  outsideMm: 4.5,
  protect: b(10),
  at: { endOf: toGalley },
});
circuit({
  name: "heater",
  from: panel.branch,
  load: 8,
  oneWayFt: 4,
  gauge: 12,
  outsideMm: 4.5,
  protect: b(15),
  size: { widthMm: 150, heightMm: 80 },
  at: { on: wall, leftMm: 1_100, topMm: 600 },
});
