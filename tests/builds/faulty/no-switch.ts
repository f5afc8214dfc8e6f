import { battery, build, busBar, cable, circuit } from "loomwright";

// A bee trailer: nothing disconnects the battery.
// Expected: warning disconnect/missing at battery or lamps or extractor or battery to bus
// Because: ISO 10133:2012, clause 6 (recalled): a battery-disconnect switch in the positive conductor.
build({ name: "no switch", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 150 });
cable({
  name: "battery to bus",
  from: bank.positive,
  to: plusBus.stud,
  lengthFt: 2,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 6 },
});
circuit({
  name: "extractor",
  from: plusBus.stud,
  returnTo: bank.negative,
  load: 15,
  oneWayFt: 6,
  gauge: 10,
  protect: { ...classT, ratingA: 20, distanceIn: 5 },
});
circuit({
  name: "lamps",
  from: plusBus.stud,
  returnTo: bank.negative,
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
