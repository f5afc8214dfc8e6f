import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A shed with sun: thin wire from the roof, charger fused at its own end.
build({ name: "solar shed", voltage: 12, insulationC: 90 });

const bank = battery({
  name: "battery",
  chemistry: "gel",
  capacityAh: 100,
  internalMilliohm: 6,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "switch", ratedA: 60 });
cable({
  name: "plus",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 8,
  protect: { ratingA: 60, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 },
});
const roof = solarArray({
  name: "modules",
  openCircuitV: 22,
  shortCircuitA: 9.5,
  maxPowerV: 18,
  maxPowerA: 9,
  parallel: 2,
});
const sun = solarController({ name: "controller", maxInputV: 50, outputA: 30, outputV: 14.2 });
circuit({ name: "roof cable", from: roof.positive, to: sun, oneWayFt: 20, gauge: 14 });
cable({
  name: "controller plus",
  from: sun.positive,
  to: mainSwitch.load,
  lengthFt: 4,
  gauge: 12,
  protect: 30,
});
cable({ name: "controller minus", from: sun.negative, to: bank.negative, lengthFt: 4, gauge: 12 });
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 3,
  oneWayFt: 18,
  gauge: 16,
  protect: 15,
});
