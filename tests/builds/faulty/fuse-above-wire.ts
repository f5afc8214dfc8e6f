import { battery, build, cable, circuit, disconnect } from "loomwright";

// A campervan: the spotlights got the spare fuse from the drawer.
// Expected: error protection/above-conductor at spotlights
// Because: IEC 60364-4-43, 433.1: the rating is at most the ampacity; 14 AWG of 105 °C may carry 35 A (33 CFR 183.425, Table 5), and the fuse is 60 A.
build({ name: "fuse above wire", voltage: 12, insulationC: 105 });

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
  name: "spotlights",
  load: 8,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...classT, ratingA: 60, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
