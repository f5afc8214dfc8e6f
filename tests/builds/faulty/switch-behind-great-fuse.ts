import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A fishing boat: the battery switch is rated 100 A, the fuse before it 200 A. Today's loads draw 80 A, their fuses let 126 A through.
// Expected: warning disconnect/rating at main switch
// Because: Common practice (no source): what no fuse holds to its rating is overloaded by the loads that are added next year.
build({ name: "fishing boat", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 120,
  internalMilliohm: 4,
  maxDischargeA: 400,
  maxChargeA: 60,
});
const off = disconnect({ name: "main switch", ratedA: 100 });
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
circuit({ ...rails, name: "sounder", load: 12, oneWayFt: 6, gauge: 10, protect: classT(20) });
circuit({ ...rails, name: "heater fan", load: 15, oneWayFt: 6, gauge: 10, protect: classT(20) });
circuit({
  ...rails,
  name: "pot hauler",
  load: 50,
  continuous: false,
  oneWayFt: 8,
  gauge: 4,
  protect: classT(80),
});
