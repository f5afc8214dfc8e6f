import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A seed barn: three conductors on two studs.
// Expected: warning bus/studs at bus
// Because: Common practice and ISO 10133 (recalled: at most four conductors a stud): each conductor has a place.
build({ name: "too few studs", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const bus = busBar({ name: "bus", side: "positive", ratedA: 100, studs: 2 });
cable({ name: "switch to bus", from: mainSwitch.load, to: bus.stud, lengthFt: 1, gauge: 2 });
circuit({
  name: "sieve",
  from: bus.stud,
  returnTo: bank.negative,
  load: 8,
  oneWayFt: 6,
  gauge: 12,
  protect: { ...classT, ratingA: 10, distanceIn: 5 },
});
circuit({
  name: "lamps",
  from: bus.stud,
  returnTo: bank.negative,
  load: 3,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
