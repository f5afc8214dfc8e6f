import { alternator, battery, build, cable, chassis, circuit, disconnect, starterMotor } from "loomwright";

// A lorry of 24 V with its starter.
build({ name: "truck 24 lead", voltage: 24, insulationC: 90, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const lower = battery({
  name: "lower",
  chemistry: "flooded lead-acid",
  nominalV: 12,
  capacityAh: 180,
  internalMilliohm: 4,
  maxDischargeA: 800,
  maxChargeA: 80,
});
const upper = battery({
  name: "upper",
  chemistry: "flooded lead-acid",
  nominalV: 12,
  capacityAh: 180,
  internalMilliohm: 4,
  maxDischargeA: 800,
  maxChargeA: 80,
});
cable({ name: "link", from: lower.positive, to: upper.negative, lengthM: 0.4, mm2: 70 });
const off = disconnect({ name: "battery switch", ratedA: 500 });
const frame = chassis({ name: "frame", milliohm: 0.2 });
const starter = starterMotor({ name: "starter", crankingA: 350, minimumV: 17 });
cable({ name: "plus", from: upper.positive, to: off.line, lengthM: 0.8, mm2: 70 });
cable({ name: "crank", from: off.load, to: starter.positive, lengthM: 2, mm2: 70 });
cable({ name: "starter strap", from: starter.negative, to: frame.metal, lengthM: 0.4, mm2: 70 });
cable({ name: "earth", from: lower.negative, to: frame.bond, lengthM: 0.5, mm2: 70 });
const engine = alternator({ name: "alternator", ratedA: 80 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: upper.positive,
  lengthM: 2,
  mm2: 25,
  protectFarEnd: classT(110),
});
cable({ name: "alternator strap", from: engine.negative, to: frame.metal, lengthM: 0.4, mm2: 25 });
circuit({
  name: "cab lamps",
  from: off.load,
  returnTo: frame.metal,
  load: 4,
  minimumV: 10,
  maximumV: 32,
  positiveM: 5,
  negativeM: 1,
  mm2: 2.5,
  protect: classT(6),
});
circuit({
  name: "fridge",
  from: off.load,
  returnTo: frame.metal,
  load: 4,
  positiveM: 4,
  negativeM: 1,
  mm2: 2.5,
  protect: classT(6),
});
