import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A cider press: 80 A through a bus bar made for 50 A.
// Expected: error bus/rating at bus
// Because: Nameplate: 80 A through a bar rated 50 A.
build({ name: "small bus", voltage: 12, insulationC: 105 });

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
const bus = busBar({ name: "bus", side: "positive", ratedA: 50 });
cable({ name: "switch to bus", from: mainSwitch.load, to: bus.stud, lengthFt: 1, gauge: 2 });
circuit({
  name: "press",
  from: bus.stud,
  returnTo: bank.negative,
  load: 80,
  oneWayFt: 4,
  gauge: 4,
  protect: { ...classT, ratingA: 100, distanceIn: 5 },
});
