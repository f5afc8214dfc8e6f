import { battery, build, cable, circuit, disconnect } from "loomwright";

// A crêpe stand: 16 AWG for 30 A of griddle.
// Expected: error conductor/ampacity at griddle
// Because: 33 CFR 183.425(b), Table 5: 16 AWG of 105 °C may carry 25 A.
// May follow: error protection/above-conductor at griddle
build({ name: "wire too thin", voltage: 12, insulationC: 105 });

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
  name: "griddle",
  load: 30,
  continuous: false,
  oneWayFt: 3,
  gauge: 16,
  protect: { ...classT, ratingA: 30, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
