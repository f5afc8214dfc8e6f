import { battery, build, cable, circuit, disconnect } from "loomwright";

// A tool van: a blade fuse of 13 A.
// Expected: warning protection/standard-rating at drill charger
// Because: ISO 8820-3 Type C: 10 and 15 A are made, 13 A is not.
build({ name: "rating not made", voltage: 12, insulationC: 105 });

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
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "drill charger",
  load: 8,
  oneWayFt: 6,
  gauge: 12,
  protect: { ratingA: 13, family: "ISO 8820-3 Type C", interruptingA: 3000, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
