import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A stage trailer: cables and fuse are for an inverter that will come; the bus bar in between is for 80 A.
// Expected: warning bus/rating at plus
// Because: Common practice: a fuse also protects the bar behind it; 250 A lets 250 A flow through a bar for 80 A.
build({ name: "stage trailer", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 250,
  internalMilliohm: 2.5,
  maxDischargeA: 500,
  maxChargeA: 60,
});
const off = disconnect({ name: "switch", ratedA: 300 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 80, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 300, studs: 6 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "2/0",
  protect: classT(250),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "2/0" });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: "2/0" });
circuit({
  name: "stage lamps",
  from: plus.stud,
  returnTo: minus.stud,
  load: 35,
  oneWayFt: 12,
  gauge: 6,
  protect: classT(60),
});
circuit({
  name: "mixer",
  from: plus.stud,
  returnTo: minus.stud,
  load: 30,
  oneWayFt: 12,
  gauge: 6,
  protect: classT(60),
});
