import { battery, build, cable, circuit, disconnect, motor, scenario } from "loomwright";

// A village pump: the motor needs 11 V to start, and the long pair leaves it less.
// Expected: warning scenario/device-below-minimum at pump or pump cable
// Because: Nameplate: 60 A to start through 40 ft of 8 AWG and back lose some 3 V.
build({ name: "motor below its voltage", voltage: 12, insulationC: 105 });

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
const pump = motor({ name: "pump", runningA: 12, startingA: 60, minimumV: 10.5 });
circuit({
  ...fromSwitch,
  name: "pump cable",
  to: pump,
  oneWayFt: 34,
  gauge: 8,
  protect: { ...classT, ratingA: 30, distanceIn: 5 },
});
scenario({ name: "the pump starts", starting: [pump] });
