import { battery, build, cable, circuit, disconnect } from "loomwright";

// A pilot boat: the blower's wire would do in the cabin, and it runs through the engine space.
// Expected: error conductor/ampacity at blower
// Because: 33 CFR 183.425(c), note 1: 12 AWG of 75 °C may carry 25 A x 0.75 = 18.75 A in the engine space, and the blower draws 20 A.
// May follow: error protection/above-conductor at blower
build({ name: "hot engine space", voltage: 12, insulationC: 105 });

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
  name: "blower",
  load: 20,
  continuous: false,
  oneWayFt: 4,
  gauge: 12,
  insulationC: 75,
  engineSpace: true,
  critical: true,
  protect: { ...classT, ratingA: 20, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
