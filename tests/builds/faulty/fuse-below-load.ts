import { battery, build, cable, circuit, disconnect } from "loomwright";

// A ceramics van: the kiln fan draws more than its fuse is made for.
// Expected: error protection/below-load at kiln fan
// Because: IEC 60364-4-43, 433.1: the design current, 18 A, is at most the rating, 15 A.
build({ name: "fuse below load", voltage: 12, insulationC: 105 });

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
  name: "kiln fan",
  load: 18,
  oneWayFt: 6,
  gauge: 10,
  protect: { ...classT, ratingA: 15, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
