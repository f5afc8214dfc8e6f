import { battery, build, busBar, cable, circuit, disconnect, shoreCharger, shunt } from "loomwright";

// A van: the lithium bank is in an outside locker of -12 °C, with no cut-off.
// Expected: warning battery/cold-charge at house
// Because: Common practice: LiFePO4 is not charged below 0 °C.
build({ name: "lithium in frozen locker", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
  lowestC: -12,
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
const shore = shoreCharger({ name: "shore charger", outputA: 30, outputV: 14.2 });
cable({
  name: "shore plus",
  from: shore.positive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: classT(40),
});
cable({ name: "shore minus", from: shore.negative, to: minus.stud, lengthFt: 4, gauge: 8 });
