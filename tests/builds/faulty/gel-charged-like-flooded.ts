import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A studio barge: gel batteries on a charger that is set for flooded ones.
// Expected: warning battery/charging-voltage at charger or gel battery
// Because: Common practice: gel 14.1 to 14.4 V; the charger holds 14.8 V.
build({ name: "gel charged like flooded", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "gel battery",
  chemistry: "gel",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 20,
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
const mains = shoreCharger({ name: "charger", outputA: 15, outputV: 14.8 });
cable({
  name: "charger plus",
  from: mains.positive,
  to: mainSwitch.load,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: { ...classT, ratingA: 20, distanceIn: 5 },
});
cable({ name: "charger minus", from: mains.negative, to: bank.negative, lengthFt: 4, gauge: 10 });
