import { battery, build, cable, circuit, disconnect } from "loomwright";

// A model railway wagon: 18 AWG pulled singly through the wall.
// Expected: warning conductor/minimum-size at signal lamp
// Because: 33 CFR 183.425(e): conductors run singly are at least 16 AWG.
build({ name: "single 18 awg", voltage: 12, insulationC: 105 });

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
  name: "signal lamp",
  load: 0.3,
  oneWayFt: 6,
  gauge: 18,
  protect: { ...classT, ratingA: 1, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
