import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A grain dryer of 24 V: a 12 V battery was put beside the bank to make it larger.
// Expected: error battery/unlike at spare battery or bank
// Because: No clause needed: 24 V discharges into a 12 V battery with nothing but copper between.
build({ name: "12 beside 24 volts", voltage: 24, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const plus = busBar({ name: "bank plus", side: "positive", ratedA: 250 });
const minus = busBar({ name: "bank minus", side: "negative", ratedA: 250 });
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 100,
  internalMilliohm: 8,
  maxDischargeA: 300,
});
const spare = battery({
  name: "spare battery",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
cable({
  name: "bank plus cable",
  from: bank.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({ name: "bank minus cable", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
cable({
  name: "spare plus cable",
  from: spare.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({ name: "spare minus cable", from: spare.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 250 });
cable({ name: "bank to switch", from: plus.stud, to: mainSwitch.line, lengthFt: 1, gauge: "1/0" });
circuit({
  name: "fans",
  from: mainSwitch.load,
  returnTo: minus.stud,
  load: 60,
  oneWayFt: 5,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
