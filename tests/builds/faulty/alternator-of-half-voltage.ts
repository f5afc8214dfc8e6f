import { alternator, battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A lorry of 24 V with the alternator of a car.
// Expected: error battery/charging-voltage at alternator or bank
// Because: No clause needed: 14.4 V do not charge a bank of 24 V.
// May follow: warning battery/charging-voltage at bank
// May follow: error battery/unlike at alternator
build({ name: "lorry with a car's alternator", voltage: 24, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 120,
  internalMilliohm: 6,
  maxDischargeA: 400,
  maxChargeA: 60,
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 200, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 200, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const machine = alternator({ name: "alternator", ratedA: 60, outputV: 14.4 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: bank.positive,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: classT(80),
});
cable({ name: "alternator minus", from: machine.negative, to: bank.negative, lengthFt: 4, gauge: 4 });
