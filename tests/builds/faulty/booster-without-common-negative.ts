import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  shunt,
} from "loomwright";

// A van with a booster whose two systems have no common negative.
// Expected: error network/no-return at booster
// Because: No clause needed: the output of a charger with one common negative returns over the starter battery's side, which ends there.
build({ name: "van with booster", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
const panel = fusePanel({ name: "panel", positions: 8, ratedA: 100, branchRatedA: 30 });
circuit({ ...rails, name: "panel feed", to: panel, oneWayFt: 4, gauge: 4, protect: classT(80) });
const start = battery({
  name: "start",
  chemistry: "AGM",
  capacityAh: 80,
  shortCircuitA: 2300,
  maxDischargeA: 600,
  maxChargeA: 150,
});
const engine = alternator({ name: "alternator", ratedA: 140 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthFt: 4,
  gauge: 1,
  engineSpace: true,
  protectFarEnd: classT(175),
});
cable({
  name: "alternator minus",
  from: engine.negative,
  to: start.negative,
  lengthFt: 4,
  gauge: 1,
  engineSpace: true,
});
const booster = dcDcCharger({ name: "booster", outputA: 40, outputV: 14.2, inputMinV: 11.5 });
circuit({
  name: "booster feed",
  from: start.positive,
  to: booster,
  oneWayFt: 14,
  gauge: 4,
  protect: classT(70),
});
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 6,
  protectFarEnd: classT(60),
});
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 12, gauge: 14, protect: 5 });
circuit({
  name: "gas alarm",
  from: panel.branch,
  load: 0.2,
  critical: true,
  oneWayFt: 8,
  gauge: 16,
  protect: 2,
});
