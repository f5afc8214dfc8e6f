import { battery, build, cable, circuit, disconnect, solarArray } from "loomwright";

// A gate opener: a module of 100 W hangs straight on the battery, without a controller.
// Expected: warning battery/charging-voltage at roof
// Because: Common practice: 22 V open circuit charge an AGM battery of 12 V far above its 14.4 V once it is full; it gases and dries out.
build({ name: "array straight on the bank", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 60,
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
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
const roof = solarArray({ name: "roof", openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.6 });
cable({
  name: "roof plus",
  from: roof.positive,
  to: mainSwitch.load,
  lengthFt: 12,
  gauge: 12,
  protectFarEnd: { ...classT, ratingA: 15, distanceIn: 5 },
});
cable({ name: "roof minus", from: roof.negative, to: bank.negative, lengthFt: 14, gauge: 12 });
