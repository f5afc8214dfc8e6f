import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A 24 V shepherd's cart: one 12 V module on a controller for 24 V.
// Expected: warning solar/array-voltage at module or controller
// Because: Nameplate: 18.6 V at maximum power never reach the 28.4 V at which the bank is charged.
build({ name: "array below bank", voltage: 24, insulationC: 105, lowestC: -10 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const half = {
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
} as const;
const lower = battery({ ...half, name: "lower battery" });
const upper = battery({ ...half, name: "upper battery" });
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({ name: "series link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
cable({
  name: "bank to switch",
  from: upper.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: lower.negative,
  load: 3,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
const roof = solarArray({
  name: "module",
  openCircuitV: 22.5,
  shortCircuitA: 9.8,
  maxPowerV: 18.6,
  maxPowerA: 9.2,
  openCircuitPercentPerC: -0.3,
});
const sun = solarController({ name: "controller", maxInputV: 100, outputA: 20, outputV: 28.4 });
circuit({ name: "module to controller", from: roof.positive, to: sun, oneWayFt: 12, gauge: 10 });
cable({
  name: "controller plus",
  from: sun.positive,
  to: mainSwitch.load,
  lengthFt: 3,
  gauge: 10,
  protectFarEnd: { ...classT, ratingA: 30, distanceIn: 5 },
});
cable({ name: "controller minus", from: sun.negative, to: lower.negative, lengthFt: 3, gauge: 10 });
