import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A camper: the old AGM battery was left beside the new lithium one.
// Expected: error battery/unlike at old battery or new battery
// Because: Common practice: different voltages at rest and of charge; one discharges into the other.
// May follow: warning battery/parallel-imbalance at old battery or new battery
build({ name: "lead beside lithium", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const plus = busBar({ name: "bank plus", side: "positive", ratedA: 250 });
const minus = busBar({ name: "bank minus", side: "negative", ratedA: 250 });
const old = battery({
  name: "old battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const fresh = battery({
  name: "new battery",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 100,
});
cable({
  name: "old plus",
  from: old.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({ name: "old minus", from: old.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
cable({
  name: "new plus",
  from: fresh.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({ name: "new minus", from: fresh.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 250 });
cable({ name: "bank to switch", from: plus.stud, to: mainSwitch.line, lengthFt: 1, gauge: 2 });
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: minus.stud,
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
