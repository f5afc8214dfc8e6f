import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A bus home: a jumper that served while the switch was replaced was left in place.
// Expected: warning disconnect/missing at bank
// Because: ISO 13297 and ISO 10133, clause 6: a switch separates the bank from the system; the jumper goes around it.
build({ name: "bus home", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 220,
  internalMilliohm: 3,
  maxDischargeA: 400,
  maxChargeA: 50,
});
const first = busBar({ name: "fused plus", side: "positive", ratedA: 200, studs: 4 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 200, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 200, studs: 6 });
const off = disconnect({ name: "switch", ratedA: 200 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: first.stud,
  lengthFt: 2,
  gauge: 2,
  protect: classT(150),
});
cable({ name: "to switch", from: first.stud, to: off.line, lengthFt: 1, gauge: 2 });
cable({ name: "from switch", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "jumper", from: first.stud, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
circuit({
  name: "air heater",
  from: plus.stud,
  returnTo: minus.stud,
  load: 9,
  oneWayFt: 10,
  gauge: 12,
  protect: classT(15),
});
circuit({
  name: "galley",
  from: plus.stud,
  returnTo: minus.stud,
  load: 12,
  oneWayFt: 8,
  gauge: 12,
  protect: classT(15),
});
