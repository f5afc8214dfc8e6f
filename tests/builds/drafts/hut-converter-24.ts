import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  fusePanel,
  inverter,
  shoreCharger,
} from "loomwright";

// A 24 V hut with a 12 V corner, a generator's charger, and no thought about fuses.
build({ name: "hut with a 12 V corner", voltage: 24, installedIn: "building" });

const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  nominalV: 25.6,
  capacityAh: 200,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const plus = busBar({ name: "plus", ratedA: 250 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 250 });
cable({ name: "bank plus", from: bank.positive, to: plus.stud, lengthFt: 3, gauge: 4 });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 3, gauge: 4 });
const mains = inverter({ name: "inverter", continuousW: 2400 });
circuit({ name: "inverter leads", from: plus.stud, returnTo: minus.stud, to: mains, oneWayFt: 3, gauge: 4 });
const generator = shoreCharger({ name: "generator charger", outputA: 60 });
circuit({
  name: "charger leads",
  from: plus.stud,
  returnTo: minus.stud,
  to: generator,
  oneWayFt: 8,
  gauge: 8,
});
const step = dcDcCharger({ name: "converter", outputA: 20, outputV: 13.6, runs: "always", inputMinV: 18 });
circuit({ name: "converter leads", from: plus.stud, returnTo: minus.stud, to: step, oneWayFt: 4, gauge: 14 });
const corner = fusePanel({ name: "corner panel", positions: 4 });
cable({ name: "corner plus", from: step.outputPositive, to: corner.feed, lengthFt: 6, gauge: 16 });
cable({ name: "corner minus", from: corner.negative, to: step.outputNegative, lengthFt: 6, gauge: 16 });
circuit({ name: "router", from: corner.branch, load: 2, oneWayFt: 15, gauge: 18, protect: 10 });
circuit({ name: "reading lamps", from: corner.branch, load: 3, oneWayFt: 25, gauge: 18, protect: 10 });
