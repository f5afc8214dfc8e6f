import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  fusePanel,
  inverter,
  solarArray,
  solarController,
} from "loomwright";

// A hut of 24 V, metric: two 12 V batteries in series, thin wire from the building market.
build({ name: "metric hut", voltage: 24, insulationC: 70, installedIn: "building" });

const left = battery({ name: "left", chemistry: "AGM", nominalV: 12, capacityAh: 200 });
const right = battery({ name: "right", chemistry: "AGM", nominalV: 12, capacityAh: 200 });
cable({ name: "link", from: left.positive, to: right.negative, lengthM: 0.3, mm2: 16 });
const plus = busBar({ name: "plus bar" });
const minus = busBar({ name: "minus bar", side: "negative" });
cable({ name: "bank plus", from: right.positive, to: plus.stud, lengthM: 1, mm2: 25, protect: 100 });
cable({ name: "bank minus", from: left.negative, to: minus.stud, lengthM: 1, mm2: 16 });
const mains = inverter({ name: "inverter", continuousW: 1600 });
circuit({
  name: "inverter leads",
  from: plus.stud,
  returnTo: minus.stud,
  to: mains,
  oneWayM: 2,
  mm2: 10,
  protect: 63,
});
const roof = solarArray({
  name: "roof",
  openCircuitV: 40,
  shortCircuitA: 10,
  maxPowerV: 33,
  maxPowerA: 9.3,
  parallel: 2,
});
const sun = solarController({ name: "controller", maxInputV: 100, outputA: 30 });
circuit({ name: "roof cable", from: roof.positive, to: sun, oneWayM: 12, mm2: 4 });
cable({
  name: "controller plus",
  from: sun.positive,
  to: plus.stud,
  lengthM: 1.5,
  mm2: 4,
  protectFarEnd: 30,
});
cable({ name: "controller minus", from: sun.negative, to: minus.stud, lengthM: 1.5, mm2: 4 });
const panel = fusePanel({ name: "panel", positions: 6 });
cable({ name: "panel plus", from: plus.stud, to: panel.feed, lengthM: 2, mm2: 6 });
cable({ name: "panel minus", from: minus.stud, to: panel.negative, lengthM: 2, mm2: 6 });
circuit({ name: "kitchen lamps", from: panel.branch, loadW: 30, oneWayM: 12, mm2: 0.75, protect: 10 });
circuit({ name: "sleeping loft", from: panel.branch, loadW: 20, oneWayM: 18, mm2: 0.75, protect: 10 });
circuit({ name: "fridge", from: panel.branch, loadW: 90, oneWayM: 6, mm2: 1.5, protect: 10 });
circuit({ name: "well pump", from: panel.branch, loadW: 180, oneWayM: 30, mm2: 2.5, protect: 10 });
