import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  chassis,
  circuit,
  dcDcCharger,
  disconnect,
  fuseHolder,
  fusePanel,
  inverter,
  shoreCharger,
} from "loomwright";

// A motorhome: two AGM batteries in parallel with a fuse each, a booster from the vehicle, a small inverter, mains hook-up.
build({ name: "motorhome", voltage: 12, insulationC: 90, installedIn: "vehicle" });

const strip = { family: "ISO 8820-5 Type SF 51", ratedV: 32 } as const;
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 250, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 250, studs: 9 });
const agm = {
  chemistry: "AGM",
  capacityAh: 95,
  shortCircuitA: 900,
  maxDischargeA: 300,
  maxChargeA: 30,
  termination: "M8",
  torqueNm: 10,
} as const;
for (const place of ["left", "right"]) {
  const one = battery({ ...agm, name: `${place} battery` });
  const fuse = fuseHolder({ name: `${place} fuse`, ratingA: 125, ...strip, on: one.positive });
  cable({ name: `${place} plus`, from: fuse.load, to: plus.stud, lengthM: 0.8, mm2: 35 });
  cable({ name: `${place} minus`, from: one.negative, to: minus.stud, lengthM: 0.8, mm2: 35 });
}

const chassisMetal = chassis({ name: "chassis", milliohm: 0.5 });
const vehicle = battery({
  name: "vehicle battery",
  chemistry: "AGM",
  capacityAh: 80,
  shortCircuitA: 1600,
  maxDischargeA: 700,
  maxChargeA: 120,
});
const engine = alternator({ name: "alternator", ratedA: 140 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: vehicle.positive,
  lengthM: 1.5,
  mm2: 70,
  engineSpace: true,
  protectFarEnd: { ...strip, ratingA: 175, distanceMm: 150 },
});
cable({
  name: "alternator minus",
  from: engine.negative,
  to: chassisMetal.metal,
  lengthM: 0.4,
  mm2: 70,
  engineSpace: true,
});
cable({ name: "vehicle earth", from: vehicle.negative, to: chassisMetal.metal, lengthM: 0.5, mm2: 35 });
cable({ name: "house earth", from: minus.stud, to: chassisMetal.bond, lengthM: 1, mm2: 35 });
const booster = dcDcCharger({ name: "booster", outputA: 30, inputMinV: 11, outputV: 14.4 });
circuit({
  name: "booster feed",
  from: vehicle.positive,
  returnTo: minus.stud,
  to: booster,
  oneWayM: 5,
  mm2: 16,
  protect: { ...strip, ratingA: 60, distanceMm: 150 },
});
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: plus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: { ...strip, family: "ISO 8820-5 Type SF 30", ratingA: 40, distanceMm: 120 },
});
const hookUp = shoreCharger({ name: "hook-up charger", outputA: 25, outputV: 14.4 });
cable({
  name: "hook-up plus",
  from: hookUp.positive,
  to: plus.stud,
  lengthM: 1.5,
  mm2: 10,
  protectFarEnd: { ...strip, family: "ISO 8820-5 Type SF 30", ratingA: 40, distanceMm: 120 },
});
cable({ name: "hook-up minus", from: hookUp.negative, to: minus.stud, lengthM: 1.5, mm2: 10 });

const socket = inverter({ name: "inverter", continuousW: 600, surgeW: 1200, cutOffV: 10.5, idleW: 6 });
const socketOff = disconnect({ name: "inverter switch", ratedA: 150 });
cable({
  name: "bar to inverter switch",
  from: plus.stud,
  to: socketOff.line,
  lengthM: 0.5,
  mm2: 25,
  protect: { ...strip, ratingA: 80, distanceMm: 120 },
});
circuit({
  name: "inverter pair",
  from: socketOff.load,
  returnTo: minus.stud,
  to: socket,
  oneWayM: 1,
  mm2: 25,
});
const off = disconnect({ name: "habitation switch", ratedA: 100 });
const panel = fusePanel({ name: "habitation panel", positions: 10, ratedA: 80, branchRatedA: 25 });
cable({
  name: "bar to switch",
  from: plus.stud,
  to: off.line,
  lengthM: 0.5,
  mm2: 16,
  protect: { ...strip, ratingA: 60, distanceMm: 120 },
});
cable({ name: "switch to panel", from: off.load, to: panel.feed, lengthM: 1.5, mm2: 16 });
cable({ name: "panel minus", from: panel.negative, to: minus.stud, lengthM: 2, mm2: 16 });
const blade = { family: "ISO 8820-3 Type C" } as const;
circuit({
  name: "heating fan",
  from: panel.branch,
  load: 4,
  oneWayM: 3,
  mm2: 2.5,
  protect: { ...blade, ratingA: 7.5 },
});
circuit({
  name: "lamps",
  from: panel.branch,
  load: 4,
  oneWayM: 6,
  mm2: 2.5,
  protect: { ...blade, ratingA: 7.5 },
});
circuit({
  name: "refrigerator",
  from: panel.branch,
  load: 8,
  oneWayM: 3,
  mm2: 4,
  protect: { ...blade, ratingA: 15 },
});
circuit({
  name: "step",
  from: panel.branch,
  load: 10,
  continuous: false,
  oneWayM: 2,
  mm2: 2.5,
  protect: { ...blade, ratingA: 15 },
});
