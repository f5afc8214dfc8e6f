import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A 12 V bank of two: one battery has a short thick link, the other a long thin one.
// Expected: warning battery/parallel-imbalance at near battery or far battery
// Because: Common practice: equal resistance to each battery, or one does the work of both.
build({ name: "unequal links", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const plus = busBar({ name: "bank plus", side: "positive", ratedA: 250 });
const minus = busBar({ name: "bank minus", side: "negative", ratedA: 250 });
const near = battery({
  name: "near battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 4,
  maxDischargeA: 300,
});
const far = battery({
  name: "far battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 4,
  maxDischargeA: 300,
});
cable({
  name: "near plus",
  from: near.positive,
  to: plus.stud,
  lengthFt: 1,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({ name: "near minus", from: near.negative, to: minus.stud, lengthFt: 1, gauge: 2 });
cable({
  name: "far plus",
  from: far.positive,
  to: plus.stud,
  lengthFt: 14,
  gauge: 4,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({ name: "far minus", from: far.negative, to: minus.stud, lengthFt: 14, gauge: 4 });
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
