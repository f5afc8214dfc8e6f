import { battery, build, cable, circuit, disconnect } from "loomwright";

// A stage truck: forty loaded wires in one duct, and the dimmer's among them.
// Expected: error conductor/ampacity at dimmer
// Because: 33 CFR 183.425, note 2 (0.40 for 25 and more), used as the factor of a bundle: 10 AWG of 105 °C may carry 60 A x 0.40 = 24 A, and the dimmer draws 28 A.
// May follow: error protection/above-conductor at dimmer
build({ name: "full conduit", voltage: 12, insulationC: 105 });

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
  name: "dimmer",
  load: 28,
  continuous: false,
  oneWayFt: 6,
  gauge: 10,
  bundledWith: 39,
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
