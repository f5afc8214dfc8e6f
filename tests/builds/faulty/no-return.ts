import { battery, build, cable, circuit, disconnect, load } from "loomwright";

// A bird ringer's hut: the lamp's minus was forgotten.
// Expected: error network/no-return at lamp
// Because: A circuit needs a way back: nothing leads from the lamp's minus to the battery.
build({ name: "no return", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
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
const lamp = load({ name: "lamp", currentA: 2 });
cable({
  name: "lamp plus",
  from: mainSwitch.load,
  to: lamp.positive,
  lengthFt: 7,
  gauge: 14,
  protect: { ...classT, ratingA: 3, distanceIn: 5 },
});
