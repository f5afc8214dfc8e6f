import { alternator, battery, build, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A trailer charged over the lead of its tow car.
build({ name: "trailer tow lead", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const tow = battery({
  name: "tow car battery",
  chemistry: "AGM",
  capacityAh: 70,
  shortCircuitA: 1800,
  maxDischargeA: 500,
  maxChargeA: 80,
});
const engine = alternator({ name: "alternator", ratedA: 110 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: tow.positive,
  lengthFt: 4,
  gauge: 2,
  protectFarEnd: classT(150),
});
cable({ name: "alternator minus", from: engine.negative, to: tow.negative, lengthFt: 3, gauge: 2 });
const bank = battery({
  name: "trailer battery",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 200,
  maxChargeA: 30,
});
const booster = dcDcCharger({ name: "booster", outputA: 15, outputV: 14.4, inputMinV: 10.5, isolated: true });
circuit({ name: "tow lead", from: tow.positive, to: booster, oneWayFt: 20, gauge: 8, protect: classT(40) });
const off = disconnect({ name: "switch", ratedA: 60 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 1, gauge: 8, protect: classT(40) });
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: off.load,
  lengthFt: 2,
  gauge: 10,
  protectFarEnd: classT(20),
});
cable({ name: "booster minus", from: booster.outputNegative, to: bank.negative, lengthFt: 2, gauge: 10 });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: bank.negative,
  load: 4,
  oneWayFt: 10,
  gauge: 14,
  protect: classT(6),
});
circuit({
  name: "pump",
  from: off.load,
  returnTo: bank.negative,
  load: 5,
  continuous: false,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(10),
});
