import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A dairy: three strings in parallel without fuses, and the modules allow 15 A.
// Expected: error solar/string-protection at modules
// Because: NFPA 70, 690.9: two strings can push 2 x 9.8 A x 1.25 into the third, more than 15 A.
build({ name: "strings without fuses", voltage: 12, insulationC: 105, lowestC: -20 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: { ...classT, ratingA: 200, distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
const sun = solarController({ name: "controller", maxInputV: 100, outputA: 30, outputV: 14.2 });
cable({
  name: "controller plus",
  from: sun.positive,
  to: mainSwitch.load,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({ name: "controller minus", from: sun.negative, to: bank.negative, lengthFt: 3, gauge: 8 });
const roof = solarArray({
  name: "modules",
  openCircuitV: 22.5,
  shortCircuitA: 9.8,
  maxPowerV: 18.6,
  maxPowerA: 9.2,
  openCircuitPercentPerC: -0.3,
  parallel: 3,
  maxSeriesFuseA: 15,
});
circuit({ name: "modules to controller", from: roof.positive, to: sun, oneWayFt: 6, gauge: 4 });
