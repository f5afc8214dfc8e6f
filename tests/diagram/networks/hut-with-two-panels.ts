import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  solarArray,
  solarController,
} from "loomwright";

// A hut with a main panel, and a second panel behind it in the loft.
build({ name: "hut with two panels", voltage: 24 });
const left = battery({ name: "lower battery", chemistry: "AGM", capacityAh: 200, nominalV: 12 });
const right = battery({ name: "upper battery", chemistry: "AGM", capacityAh: 200, nominalV: 12 });
cable({ name: "series link", from: left.positive, to: right.negative, lengthM: 0.4, mm2: 35 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus bus", side: "positive" });
const minus = busBar({ name: "minus bus", side: "negative" });
cable({
  name: "battery to switch",
  from: right.positive,
  to: mainSwitch.line,
  lengthM: 1,
  mm2: 35,
  protect: 100,
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plus.stud, lengthM: 0.5, mm2: 35 });
cable({ name: "battery to bus", from: left.negative, to: minus.stud, lengthM: 1, mm2: 35 });
const below = fusePanel({ name: "panel below", positions: 8 });
const loft = fusePanel({ name: "loft panel", positions: 6 });
circuit({
  name: "feeder below",
  from: plus.stud,
  returnTo: minus.stud,
  to: below,
  oneWayM: 2,
  mm2: 16,
  protect: 60,
});
circuit({ name: "feeder of the loft", from: below.branch, to: loft, oneWayM: 6, mm2: 6, protect: 25 });
circuit({ name: "kitchen lamps", from: below.branch, load: 3, oneWayM: 4, mm2: 1.5, protect: 5 });
circuit({ name: "pump", from: below.branch, load: 5, oneWayM: 5, mm2: 2.5, protect: 7.5 });
circuit({ name: "loft lamps", from: loft.branch, load: 2, oneWayM: 4, mm2: 1.5, protect: 3 });
circuit({ name: "loft fan", from: loft.branch, load: 2, oneWayM: 5, mm2: 1.5, protect: 3 });
const roof = solarArray({
  name: "roof",
  openCircuitV: 45,
  shortCircuitA: 10,
  maxPowerV: 37,
  maxPowerA: 9.3,
  openCircuitPercentPerC: -0.28,
});
const controller = solarController({ name: "controller", maxInputV: 100, outputA: 30, outputV: 28.4 });
circuit({ name: "roof to controller", from: roof.positive, to: controller, oneWayM: 8, mm2: 6 });
cable({
  name: "controller plus",
  from: controller.positive,
  to: plus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: 40,
});
cable({ name: "controller minus", from: controller.negative, to: minus.stud, lengthM: 1, mm2: 10 });
