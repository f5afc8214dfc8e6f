import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A ski club's hut: two modules in series on a 50 V controller, at -20 °C.
// Expected: error solar/cold-voltage at modules or modules to controller or controller
// Because: NFPA 70, 690.7(A): 2 x 22.5 V x (1 + 0.3 % x 45 K) = 51.1 V exceed 50 V.
build({ name: "array too high when cold", voltage: 12, insulationC: 105, lowestC: -20 });

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
const sun = solarController({ name: "controller", maxInputV: 50, outputA: 30, outputV: 14.2 });
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
  series: 2,
});
circuit({ name: "modules to controller", from: roof.positive, to: sun, oneWayFt: 12, gauge: 10 });
