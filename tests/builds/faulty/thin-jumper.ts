import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A ferry bar: a foot of 10 AWG was left between the switch and the bus; all other cables behind the 125 A fuse are thick.
// Expected: error protection/unprotected-path at jumper
// Because: 33 CFR 183.455(a) and Table 5: 10 AWG may carry 60 A, and nothing below 125 A protects it.
// May follow: error protection/above-conductor at jumper
build({ name: "thin jumper", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 60,
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
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 150 });
cable({ name: "jumper", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: 10 });
circuit({
  name: "ice machine",
  from: plusBus.stud,
  returnTo: bank.negative,
  load: 20,
  oneWayFt: 6,
  gauge: 8,
  protect: { ...classT, ratingA: 30, distanceIn: 5 },
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
