import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// A caravan with a controller that does not track.
build({ name: "pwm caravan", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 400,
  maxChargeA: 50,
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
const roof = solarArray({
  name: "roof",
  openCircuitV: 21.6,
  shortCircuitA: 6.3,
  maxPowerV: 17.6,
  maxPowerA: 5.7,
  lowestC: -10,
});
const sun = solarController({
  name: "controller",
  maxInputV: 50,
  outputA: 10,
  outputV: 14.4,
  tracking: false,
});
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: sun,
  oneWayFt: 10,
  gauge: 12,
});
cable({
  name: "sun plus",
  from: sun.positive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 12,
  protectFarEnd: classT(15),
});
cable({ name: "sun minus", from: sun.negative, to: minus.stud, lengthFt: 3, gauge: 12 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 12, gauge: 14, protect: 5 });
circuit({ name: "heater fan", from: panel.branch, load: 6, oneWayFt: 10, gauge: 12, protect: 10 });
