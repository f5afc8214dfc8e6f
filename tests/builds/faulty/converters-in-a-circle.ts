import { battery, build, busBar, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A catamaran: one converter charges the engine battery from the house, another one the house from the engine battery, both always.
// Expected: error charger/circle at to engine or to house
// Because: Common practice: each takes back what the other gives, and the losses of both empty the two banks.
build({ name: "circle", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 3,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const engine = battery({
  name: "engine battery",
  chemistry: "AGM",
  capacityAh: 80,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 30,
});
const minus = busBar({ name: "minus", side: "negative", ratedA: 200, studs: 8 });
cable({ name: "house minus", from: house.negative, to: minus.stud, lengthFt: 2, gauge: 4 });
cable({ name: "engine minus", from: engine.negative, to: minus.stud, lengthFt: 2, gauge: 4 });
const toEngine = dcDcCharger({
  name: "to engine",
  outputA: 10,
  outputV: 14.2,
  inputMinV: 10.5,
  runs: "always",
});
circuit({
  name: "to engine feed",
  from: house.positive,
  returnTo: minus.stud,
  to: toEngine,
  oneWayFt: 3,
  gauge: 8,
  protect: classT(25),
});
cable({
  name: "to engine plus",
  from: toEngine.outputPositive,
  to: engine.positive,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: classT(25),
});
const toHouse = dcDcCharger({
  name: "to house",
  outputA: 10,
  outputV: 14.2,
  inputMinV: 10.5,
  runs: "always",
});
circuit({
  name: "to house feed",
  from: engine.positive,
  returnTo: minus.stud,
  to: toHouse,
  oneWayFt: 3,
  gauge: 8,
  protect: classT(25),
});
cable({
  name: "to house plus",
  from: toHouse.outputPositive,
  to: house.positive,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: classT(25),
});
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "house plus", from: house.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: minus.stud,
  load: 5,
  oneWayFt: 12,
  gauge: 12,
  protect: classT(10),
});
