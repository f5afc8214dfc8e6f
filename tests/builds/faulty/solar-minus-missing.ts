import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// A van: the controller's minus to the battery was forgotten.
// Expected: error network/no-return at controller
// Because: No clause needed: without a return no current flows.
build({ name: "solar minus missing", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
const roof = solarArray({
  name: "roof",
  openCircuitV: 22,
  shortCircuitA: 10,
  maxPowerV: 18,
  maxPowerA: 9.5,
  lowestC: -10,
});
const sun = solarController({ name: "controller", maxInputV: 50, outputA: 20, outputV: 14.2 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: sun,
  oneWayFt: 12,
  gauge: 10,
});
cable({
  name: "sun plus",
  from: sun.positive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: classT(30),
});
