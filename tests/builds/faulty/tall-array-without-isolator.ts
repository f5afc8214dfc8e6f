import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A barn roof: three modules in series, over 100 V in the cold, and no way to switch them off.
// Expected: info solar/isolator at modules or modules to controller
// Because: IEC 60364-7-712 (not read) and common practice: an isolator at the controller; above 60 V DC touch is dangerous.
build({ name: "tall array without isolator", voltage: 12, insulationC: 105, lowestC: -10 });

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
const sun = solarController({ name: "controller", maxInputV: 150, outputA: 30, outputV: 14.2 });
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
  openCircuitV: 40,
  shortCircuitA: 9.8,
  maxPowerV: 33,
  maxPowerA: 9.2,
  openCircuitPercentPerC: -0.3,
  series: 3,
});
circuit({ name: "modules to controller", from: roof.positive, to: sun, oneWayFt: 16, gauge: 10 });
