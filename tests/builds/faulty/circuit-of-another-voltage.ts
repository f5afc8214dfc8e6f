import { battery, build, cable, circuit, disconnect } from "loomwright";

// A glider trailer: a 24 V winch motor's circuit on the 12 V battery.
// Expected: error (voltage differs from its network) at winch supply
// Because: 33 CFR 183.455(d) and the nameplate: a circuit that states 24 V is fed by a bank of 12 V.
build({ name: "circuit of another voltage", voltage: 12, insulationC: 105 });

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
  name: "winch supply",
  voltage: 24,
  load: 12,
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
