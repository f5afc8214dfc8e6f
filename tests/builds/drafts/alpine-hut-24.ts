import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  inverter,
  solarArray,
  solarController,
} from "loomwright";

// A mountain hut of 24 V: long runs, solar, a small inverter.
build({ name: "mountain hut", voltage: 24, insulationC: 90 });

const lower = battery({ name: "lower", chemistry: "gel", nominalV: 12, capacityAh: 200, maxChargeA: 50 });
const upper = battery({ name: "upper", chemistry: "gel", nominalV: 12, capacityAh: 200, maxChargeA: 50 });
cable({ name: "link", from: lower.positive, to: upper.negative, lengthM: 0.3, mm2: 16 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus", ratedA: 200 });
const minus = busBar({ name: "minus", ratedA: 200, side: "negative" });
cable({
  name: "bank to switch",
  from: upper.positive,
  to: mainSwitch.line,
  lengthM: 1,
  mm2: 16,
  protect: { ratingA: 125, distanceMm: 150 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plus.stud, lengthM: 0.5, mm2: 10 });
cable({ name: "minus to bank", from: minus.stud, to: lower.negative, lengthM: 1.5, mm2: 10 });
const roof = solarArray({
  name: "modules",
  openCircuitV: 45,
  shortCircuitA: 9.8,
  maxPowerV: 37,
  maxPowerA: 9.2,
  parallel: 3,
});
const sun = solarController({ name: "controller", maxInputV: 100, outputA: 40 });
circuit({ name: "roof cable", from: roof.positive, to: sun, oneWayM: 12, mm2: 4 });
cable({
  name: "controller plus",
  from: sun.positive,
  to: plus.stud,
  lengthM: 1.5,
  mm2: 6,
  protectFarEnd: 40,
});
cable({ name: "controller minus", from: sun.negative, to: minus.stud, lengthM: 1.5, mm2: 6 });
const tools = inverter({ name: "inverter", continuousW: 1200 });
circuit({
  name: "inverter cable",
  from: plus.stud,
  returnTo: minus.stud,
  to: tools,
  oneWayM: 2,
  mm2: 16,
  protect: 80,
});
const panel = fusePanel({ name: "panel", positions: 8 });
cable({ name: "feed", from: plus.stud, to: panel.feed, lengthM: 4, mm2: 6, protect: 50 });
cable({ name: "return", from: panel.negative, to: minus.stud, lengthM: 4, mm2: 4 });
circuit({ name: "fridge", from: panel.branch, load: 4, oneWayM: 6, mm2: 1.5, protect: 10 });
circuit({ name: "yard lamp", from: panel.branch, load: 2, oneWayM: 40, mm2: 1.5, protect: 5 });
circuit({ name: "well pump", from: panel.branch, load: 9, oneWayM: 25, mm2: 2.5, protect: 15 });
