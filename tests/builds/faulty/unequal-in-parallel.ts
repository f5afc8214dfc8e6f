import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A fruit dryer: 100 Ah and 200 Ah of one chemistry in parallel.
// Expected: warning battery/unlike at larger battery or smaller battery
// Because: Common practice: batteries in parallel are alike in kind, capacity and age.
// May follow: warning battery/parallel-imbalance at larger battery or smaller battery
build({ name: "unequal in parallel", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const plus = busBar({ name: "bank plus", side: "positive", ratedA: 250 });
const minus = busBar({ name: "bank minus", side: "negative", ratedA: 250 });
const larger = battery({
  name: "larger battery",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const smaller = battery({
  name: "smaller battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
cable({
  name: "larger plus",
  from: larger.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({ name: "larger minus", from: larger.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
cable({
  name: "smaller plus",
  from: smaller.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({ name: "smaller minus", from: smaller.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
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
