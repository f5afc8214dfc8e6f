import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A day boat: the voltmeter's thin wire leaves the battery post without a fuse, since it draws next to nothing.
// Expected: error protection/unprotected-path at voltmeter
// Because: 33 CFR 183.455(a): the wire burns by what the battery gives into a short, not by what the meter draws.
// May follow: error protection/return-conductor at voltmeter
// May follow: warning disconnect/missing at voltmeter
build({ name: "day boat with a voltmeter", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 6,
  maxDischargeA: 300,
  maxChargeA: 30,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 150, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 4 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
circuit({
  name: "voltmeter",
  from: bank.positive,
  returnTo: bank.negative,
  load: 0.02,
  oneWayFt: 8,
  gauge: 16,
});
