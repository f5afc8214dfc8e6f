import { battery, breaker, build, cable, circuit, disconnect, motor } from "loomwright";

// A skiff for a lake: a trolling motor and a fish finder on one 12 V AGM battery.
build({ name: "fishing skiff", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const main = breaker({
  name: "main breaker",
  on: bank.positive,
  ratingA: 60,
  interruptingA: 5000,
  ratedV: 48,
});
const mainSwitch = disconnect({ name: "battery switch", ratedA: 100 });
cable({ name: "breaker to switch", from: main.load, to: mainSwitch.line, lengthFt: 2, gauge: 6 });
const bowMotor = motor({ name: "bow motor", runningA: 42, startingA: 55, continuous: false });
circuit({
  name: "bow motor cable",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: bowMotor,
  oneWayFt: 11,
  gauge: 6,
});
circuit({
  name: "fish finder",
  from: mainSwitch.load,
  returnTo: bank.negative,
  loadW: 10,
  oneWayFt: 6,
  gauge: 16,
  minimumV: 10,
  protect: { ratingA: 2, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 6 },
});
