import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A 24 V bus: the charger of the old 12 V system was kept.
// Expected: error battery/charging-voltage at charger
// Because: Nameplate: 14.4 V cannot charge twelve lead-acid cells, which rest at 24 V and are charged at 28.8 V.
build({ name: "old charger", voltage: 24, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  nominalV: 24,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
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
const mains = shoreCharger({ name: "charger", outputA: 20, outputV: 14.4 });
cable({
  name: "charger plus",
  from: mains.positive,
  to: mainSwitch.load,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: { ...classT, ratingA: 30, distanceIn: 5 },
});
cable({ name: "charger minus", from: mains.negative, to: bank.negative, lengthFt: 4, gauge: 10 });
