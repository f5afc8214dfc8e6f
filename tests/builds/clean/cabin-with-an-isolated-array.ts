import {
  battery,
  breaker,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  solarArray,
  solarController,
} from "loomwright";

// A cabin of 24 V: two modules in series, a breaker of 150 V as their isolator, a controller for 150 V.
build({ name: "cabin with an array", voltage: 24, insulationC: 105, installedIn: "building", lowestC: -10 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 150,
  internalMilliohm: 8,
  maxDischargeA: 150,
  maxChargeA: 75,
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 200, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 200, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 2, oneWayFt: 10, gauge: 14, protect: classT(6) });
const tracker = solarController({ name: "tracker", maxInputV: 150, outputA: 30, outputV: 28.4 });
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: classT(40),
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthFt: 4, gauge: 8 });
const roof = solarArray({
  name: "roof",
  openCircuitV: 40,
  shortCircuitA: 10,
  maxPowerV: 33,
  maxPowerA: 9.4,
  series: 2,
});
const isolator = breaker({ name: "array isolator", ratingA: 20, ratedV: 150, interruptingA: 5_000 });
cable({ name: "roof plus", from: roof.positive, to: isolator.line, lengthFt: 12, gauge: 10 });
cable({ name: "isolated plus", from: isolator.load, to: tracker.solarPositive, lengthFt: 3, gauge: 10 });
cable({ name: "roof minus", from: tracker.solarNegative, to: roof.negative, lengthFt: 15, gauge: 10 });
