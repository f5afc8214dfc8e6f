import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A fish farm: the feeder runs on 6 A and starts on 45 A, and its blade fuse is 10 A.
// Expected: warning protection/starting-current at feeder cable or feeder
// Because: ISO 8820-3 Type C, gates: 450 % of the rating may open it within 0.5 s (350 % row), and the motor needs that current to start.
build({ name: "motor opens its fuse", voltage: 12, insulationC: 105 });

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
const feeder = motor({ name: "feeder", runningA: 6, startingA: 45, minimumV: 9 });
circuit({
  ...fromSwitch,
  name: "feeder cable",
  to: feeder,
  oneWayFt: 6,
  gauge: 12,
  protect: { ratingA: 10, family: "ISO 8820-3 Type C", interruptingA: 3000, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
