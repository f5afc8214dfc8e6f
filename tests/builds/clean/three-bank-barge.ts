import { alternator, battery, build, busBar, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A barge with three banks in a chain: the alternator's battery feeds the house bank, the house bank keeps the bow battery full.
build({ name: "three bank barge", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "house",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 3,
  maxDischargeA: 300,
  maxChargeA: 60,
});
const bow = battery({
  name: "bow battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 30,
});
const engine = battery({
  name: "engine battery",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 500,
  maxChargeA: 120,
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 200, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 200, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
cable({ name: "engine minus", from: engine.negative, to: minus.stud, lengthFt: 3, gauge: 2 });
cable({ name: "bow minus", from: bow.negative, to: minus.stud, lengthFt: 6, gauge: 4 });
const machine = alternator({ name: "alternator", ratedA: 70, outputV: 14.4 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: engine.positive,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: classT(100),
});
cable({ name: "alternator minus", from: machine.negative, to: engine.negative, lengthFt: 4, gauge: 4 });
const toHouse = dcDcCharger({ name: "house charger", outputA: 30, outputV: 14.4, inputMinV: 10.5 });
circuit({
  name: "house charger feed",
  from: engine.positive,
  returnTo: minus.stud,
  to: toHouse,
  oneWayFt: 4,
  gauge: 6,
  protect: classT(60),
});
cable({
  name: "house charger plus",
  from: toHouse.outputPositive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: classT(40),
});
const toBow = dcDcCharger({
  name: "bow charger",
  outputA: 10,
  outputV: 14.2,
  inputMinV: 10.5,
  runs: "always",
});
circuit({ ...rails, name: "bow charger feed", to: toBow, oneWayFt: 4, gauge: 8, protect: classT(20) });
cable({
  name: "bow charger plus",
  from: toBow.outputPositive,
  to: bow.positive,
  lengthFt: 6,
  gauge: 8,
  protectFarEnd: classT(20),
});
