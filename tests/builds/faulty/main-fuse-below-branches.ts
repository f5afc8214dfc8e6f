import { battery, build, busBar, cable, circuit, disconnect, shunt } from "loomwright";

// A van: three heaters behind a main fuse of 60 A.
// Expected: error protection/below-load at house plus
// Because: IEC 60364-4-43, 433.1: the rating is at least the load, 84 A.
build({ name: "main fuse below branches", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
  protect: classT(60),
});
cable({ name: "switched", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "house minus", from: house.negative, to: monitor.batterySide, lengthFt: 1, gauge: "1/0" });
cable({ name: "counted", from: monitor.systemSide, to: minus.stud, lengthFt: 1, gauge: "1/0" });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
for (const n of ["one", "two", "three"])
  circuit({ ...rails, name: `heater ${n}`, load: 28, oneWayFt: 4, gauge: 8, protect: classT(40) });
