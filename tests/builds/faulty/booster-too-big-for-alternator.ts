import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  shunt,
} from "loomwright";

// A van: a 60 A booster on a 70 A alternator.
// Expected: warning alternator/overload at alternator
// Because: FAA AC 43.13-1B, 11-35a: 80 % of 70 A are 56 A; the booster takes 60 A × 14.2 V / 0.9 / 12 V = 79 A.
// May follow: warning scenario/device-below-minimum at booster
build({ name: "booster too big for alternator", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const off = disconnect({ name: "main switch", ratedA: 250 });
const plus = busBar({ name: "plus bus", side: "positive", ratedA: 250, studs: 8 });
const minus = busBar({ name: "minus bus", side: "negative", ratedA: 250, studs: 8 });
const monitor = shunt({ name: "monitor", ratedA: 300 });
cable({
  name: "house plus",
  from: house.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: classT(200),
});
cable({ name: "switched", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "house minus", from: house.negative, to: monitor.batterySide, lengthFt: 1, gauge: "1/0" });
cable({ name: "counted", from: monitor.systemSide, to: minus.stud, lengthFt: 1, gauge: "1/0" });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const start = battery({
  name: "start",
  chemistry: "AGM",
  capacityAh: 80,
  shortCircuitA: 2300,
  maxDischargeA: 600,
  maxChargeA: 100,
});
const engine = alternator({ name: "alternator", ratedA: 70 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthFt: 4,
  gauge: 2,
  protectFarEnd: classT(90),
});
cable({ name: "alternator minus", from: engine.negative, to: start.negative, lengthFt: 4, gauge: 2 });
const booster = dcDcCharger({ name: "booster", outputA: 60, outputV: 14.2, inputMinV: 12, isolated: true });
circuit({
  name: "booster feed",
  from: start.positive,
  to: booster,
  oneWayFt: 6,
  gauge: 2,
  protect: classT(100),
});
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 4,
  protectFarEnd: classT(80),
});
cable({ name: "booster minus", from: booster.outputNegative, to: minus.stud, lengthFt: 3, gauge: 4 });
