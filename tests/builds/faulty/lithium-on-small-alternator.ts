import { alternator, battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A van: 200 Ah of lithium beside the start battery, straight on a 90 A alternator.
// Expected: warning alternator/overload at alternator
// Because: FAA AC 43.13-1B, 11-35a: continuously at most 80 % of the output; the lithium bank takes all that the alternator gives, whoever shares.
// May follow: warning battery/unlike at start battery
build({ name: "lithium on small alternator", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const start = battery({
  name: "start battery",
  chemistry: "AGM",
  capacityAh: 80,
  shortCircuitA: 2300,
  maxDischargeA: 500,
  maxChargeA: 100,
});
const house = battery({
  name: "house bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const engine = alternator({ name: "alternator", ratedA: 90 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 250 });
const startBus = busBar({ name: "start bus", side: "positive", ratedA: 250 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: startBus.stud,
  lengthFt: 4,
  gauge: 2,
  protectFarEnd: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: minus.stud, lengthFt: 3, gauge: 2 });
cable({
  name: "start plus",
  from: start.positive,
  to: startBus.stud,
  lengthFt: 1,
  gauge: 2,
  protect: { ...classT, ratingA: 150, distanceIn: 6 },
});
cable({ name: "start minus", from: start.negative, to: minus.stud, lengthFt: 1, gauge: 2 });
const split = disconnect({ name: "split switch", ratedA: 200 });
cable({
  name: "start to split",
  from: startBus.stud,
  to: split.line,
  lengthFt: 8,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 5 },
});
cable({
  name: "split to house",
  from: house.positive,
  to: split.load,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "house minus", from: house.negative, to: minus.stud, lengthFt: 8, gauge: 2 });
const houseSwitch = disconnect({ name: "house switch", ratedA: 60 });
cable({
  name: "house to switch",
  from: house.positive,
  to: houseSwitch.line,
  lengthFt: 1,
  gauge: 6,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});
circuit({
  name: "lamps",
  from: houseSwitch.load,
  returnTo: minus.stud,
  load: 3,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
