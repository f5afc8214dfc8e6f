import { alternator, battery, build, busBar, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A camper: the booster takes from the house bank and charges the engine battery, which the alternator charges anyway.
// Expected: error charger/wrong-way at booster
// Because: Common practice (no source): a charger that runs with the engine is connected between the alternator and the other bank; turned
//   round it empties the house bank while driving.
build({ name: "camper with a booster", voltage: 12, insulationC: 105, installedIn: "vehicle" });
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
const engine = battery({
  name: "engine battery",
  chemistry: "AGM",
  capacityAh: 80,
  internalMilliohm: 5,
  maxDischargeA: 500,
  maxChargeA: 160,
});
const off = disconnect({ name: "main switch", ratedA: 250 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 250, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 250, studs: 8 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: classT(200),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: "1/0" });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
cable({ name: "engine minus", from: engine.negative, to: minus.stud, lengthFt: 3, gauge: 4 });
const machine = alternator({ name: "alternator", ratedA: 120 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: engine.positive,
  lengthFt: 4,
  gauge: 2,
  protectFarEnd: classT(150),
});
cable({ name: "alternator minus", from: machine.negative, to: engine.negative, lengthFt: 4, gauge: 2 });
const booster = dcDcCharger({ name: "booster", outputA: 30, outputV: 14.2, inputMinV: 10.5 });
circuit({ ...rails, name: "booster feed", to: booster, oneWayFt: 4, gauge: 6, protect: classT(60) });
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: engine.positive,
  lengthFt: 6,
  gauge: 6,
  protectFarEnd: classT(60),
});
