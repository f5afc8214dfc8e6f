import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A boat of 24 V, wired as if it were 12 V of the 1970s.
build({ name: "trawler", voltage: 24, insulationC: 105 });

const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 10,
  maxDischargeA: 300,
});
const batterySwitch = disconnect({ name: "battery switch", ratedA: 200 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: batterySwitch.line,
  lengthFt: 4,
  gauge: 6,
  protect: { ratingA: 150, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 80 },
});
const thruster = motor({
  name: "bow thruster",
  runningA: 130,
  startingA: 200,
  minimumV: 18,
  continuous: false,
});
circuit({
  name: "thruster cable",
  from: batterySwitch.load,
  returnTo: bank.negative,
  to: thruster,
  oneWayFt: 24,
  gauge: 4,
  protect: { ratingA: 150, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 },
});
circuit({
  name: "pilot",
  from: batterySwitch.load,
  returnTo: bank.negative,
  load: 6,
  oneWayFt: 30,
  gauge: 16,
  critical: true,
  protect: 20,
});
