import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  inverter,
  shoreCharger,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// A van as it is usually made.
build({ name: "plain van", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
const roof = solarArray({
  name: "roof",
  openCircuitV: 22,
  shortCircuitA: 10,
  maxPowerV: 18,
  maxPowerA: 9.5,
  series: 2,
  lowestC: -10,
});
const sun = solarController({ name: "controller", maxInputV: 75, outputA: 25, outputV: 14.2 });
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
  gauge: 8,
  protectFarEnd: classT(35),
});
cable({ name: "sun minus", from: sun.negative, to: minus.stud, lengthFt: 4, gauge: 8 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 12, gauge: 14, protect: 5 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 9, gauge: 12, protect: 10 });
circuit({ name: "fan", from: panel.branch, load: 3, oneWayFt: 9, gauge: 14, protect: 5 });
circuit({
  name: "pump",
  from: panel.branch,
  load: 7,
  continuous: false,
  oneWayFt: 12,
  gauge: 12,
  protect: 10,
});
const inv = inverter({ name: "inverter", continuousW: 1500, surgeW: 3000, cutOffV: 11 });
circuit({ ...rails, name: "inverter pair", to: inv, oneWayFt: 3, gauge: "2/0", protect: classT(200) });
