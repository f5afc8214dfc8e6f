import { battery, build, busBar, cable, circuit, dcDcCharger, disconnect, shunt } from "loomwright";

// A van: the isolated charger of the start battery has no minus to it.
// Expected: error network/no-return at start or keeper
// Because: No clause needed: without a return no current flows.
build({ name: "start charger without minus", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 600,
  maxChargeA: 60,
});
const keeper = dcDcCharger({ name: "keeper", outputA: 10, isolated: true, runs: "always" });
circuit({ ...rails, name: "keeper feed", to: keeper, oneWayFt: 6, gauge: 10, protect: classT(25) });
cable({
  name: "keeper out",
  from: keeper.outputPositive,
  to: start.positive,
  lengthFt: 8,
  gauge: 10,
  protectFarEnd: classT(20),
});
