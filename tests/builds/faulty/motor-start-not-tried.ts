import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A shower block: no scenario is written, and the pump cannot start at the end of its long pair.
// Expected: warning scenario/device-below-minimum at pump
// Because: Nameplate: 70 A to start through 76 ft of 8 AWG leave less than the 10.5 V that the pump needs.
build({ name: "motor start not tried", voltage: 12, insulationC: 105 });

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
const pump = motor({ name: "pump", runningA: 12, startingA: 70, minimumV: 10.5 });
circuit({
  ...fromSwitch,
  name: "pump cable",
  to: pump,
  oneWayFt: 38,
  gauge: 8,
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
