import { battery, build, cable, circuit, disconnect } from "loomwright";

// A dredger: 105 °C wire at its full current, in a breaker whose terminals are made for 75 °C.
// Expected: error conductor/ampacity at dredge pump
// Because: NFPA 70, 110.14(C): the lowest rated terminal decides; 10 AWG in the 75 °C column of 33 CFR 183.425, Table 5, may carry 40 A, and the pump draws 48 A.
// May follow: error protection/above-conductor at dredge pump
build({ name: "coolest end", voltage: 12, insulationC: 105 });

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
  name: "dredge pump",
  load: 48,
  continuous: false,
  oneWayFt: 5,
  gauge: 10,
  protect: {
    ratingA: 50,
    family: "circuit breaker",
    interruptingA: 5000,
    ratedV: 48,
    distanceIn: 5,
    terminalC: 75,
  },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
