import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A chapel van: a 60 A charger on a 100 Ah AGM battery that takes 30 A.
// Expected: warning battery/charge-current at battery
// Because: Data sheet: at most 30 A; common practice 0.2 to 0.4 C.
build({ name: "charger too strong", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 30,
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
const mains = shoreCharger({ name: "charger", outputA: 60, outputV: 14.4 });
cable({
  name: "charger plus",
  from: mains.positive,
  to: mainSwitch.load,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: { ...classT, ratingA: 80, distanceIn: 5 },
});
cable({ name: "charger minus", from: mains.negative, to: bank.negative, lengthFt: 4, gauge: 4 });
