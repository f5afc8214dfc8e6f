import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A camper: a charger with an equalising voltage on a lithium battery.
// Expected: error battery/charging-voltage at charger or bank
// Because: Common practice: LiFePO4 14.0 to 14.6 V for four cells; the charger holds 15.5 V.
build({ name: "charged too high", voltage: 12, insulationC: 105 });

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
const mains = shoreCharger({ name: "charger", outputA: 30, outputV: 15.5 });
cable({
  name: "charger plus",
  from: mains.positive,
  to: mainSwitch.load,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({ name: "charger minus", from: mains.negative, to: bank.negative, lengthFt: 4, gauge: 8 });
