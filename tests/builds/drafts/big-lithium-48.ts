import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  fuseHolder,
  fusePanel,
  inverter,
} from "loomwright";

// A cabin of 48 V with 5 kW of inverter and a converter for 12 V loads.
build({ name: "5 kW cabin", voltage: 48, insulationC: 90 });

const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 51.2,
  capacityAh: 200,
  maxDischargeA: 200,
});
const main = fuseHolder({
  name: "main fuse",
  ratingA: 200,
  family: "UL 248-15 Class T",
  ratedV: 125,
  interruptingA: 20_000,
});
const plus = busBar({ name: "plus", ratedA: 300 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 300 });
cable({ name: "pack to fuse", from: pack.positive, to: main.line, lengthFt: 1, gauge: 2 });
cable({ name: "fuse to bus", from: main.load, to: plus.stud, lengthFt: 2, gauge: 2 });
cable({ name: "pack minus", from: pack.negative, to: minus.stud, lengthFt: 3, gauge: 2 });
const mains = inverter({ name: "inverter", continuousW: 5000, surgeW: 10_000 });
circuit({ name: "inverter leads", from: plus.stud, returnTo: minus.stud, to: mains, oneWayFt: 3, gauge: 6 });
const step = dcDcCharger({ name: "step-down", outputA: 30, outputV: 13.8, runs: "always" });
circuit({
  name: "converter leads",
  from: plus.stud,
  returnTo: minus.stud,
  to: step,
  oneWayFt: 4,
  gauge: 14,
  protect: 20,
});
const panel = fusePanel({ name: "12 V panel", positions: 8 });
cable({ name: "12 V plus", from: step.outputPositive, to: panel.feed, lengthFt: 3, gauge: 12 });
cable({ name: "12 V minus", from: panel.negative, to: step.outputNegative, lengthFt: 3, gauge: 12 });
circuit({ name: "lamps", from: panel.branch, load: 4, oneWayFt: 30, gauge: 18, protect: 10 });
circuit({ name: "pump", from: panel.branch, load: 8, oneWayFt: 25, gauge: 16, protect: 10 });
circuit({ name: "router", from: panel.branch, load: 2, oneWayFt: 20, gauge: 18, protect: 5 });
