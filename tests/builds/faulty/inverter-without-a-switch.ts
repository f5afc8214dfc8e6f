import { battery, build, busBar, cable, circuit, disconnect, inverter } from "loomwright";

// A van: the inverter is connected to the battery with its fuse alone, ahead of the main switch.
// Expected: warning disconnect/missing at inverter plus or inverter
// Because: ISO 10133, clause 6 (recalled): a source can be cut off from what it feeds; after a fault the inverter cannot.
build({ name: "van with an inverter", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 200, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 200, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(125) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
circuit({ ...rails, name: "fridge", load: 5, oneWayFt: 8, gauge: 12, protect: classT(10) });
const kettle = inverter({ name: "inverter", continuousW: 1_000, efficiencyPercent: 90, cutOffV: 10.5 });
circuit({
  name: "inverter plus",
  from: bank.positive,
  returnTo: bank.negative,
  to: kettle,
  oneWayFt: 3,
  gauge: "1/0",
  protect: classT(150),
});
