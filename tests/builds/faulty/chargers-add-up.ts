import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  shoreCharger,
  solarArray,
  solarController,
} from "loomwright";

// A boat shed: each charger suits the lithium battery, and both together give it more than it takes.
// Expected: warning battery/charge-current at battery
// Because: Data sheet: the battery takes 50 A; 35 A from the mains and up to 25 A from the modules make 60 A.
build({ name: "chargers add up", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 7,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 150 });
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: 2 });
const mains = shoreCharger({ name: "mains charger", outputA: 35, outputV: 14.2 });
cable({
  name: "mains plus",
  from: mains.positive,
  to: plusBus.stud,
  lengthFt: 3,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 45, distanceIn: 5 },
});
cable({ name: "mains minus", from: mains.negative, to: bank.negative, lengthFt: 3, gauge: 6 });
const roof = solarArray({
  name: "roof",
  openCircuitV: 38,
  shortCircuitA: 11,
  maxPowerV: 32,
  maxPowerA: 10.5,
  lowestC: -10,
});
const sun = solarController({ name: "controller", maxInputV: 75, outputA: 25, outputV: 14.2 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: sun,
  oneWayFt: 12,
  gauge: 10,
});
cable({
  name: "sun plus",
  from: sun.positive,
  to: plusBus.stud,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 35, distanceIn: 5 },
});
cable({ name: "sun minus", from: sun.negative, to: bank.negative, lengthFt: 3, gauge: 8 });
circuit({
  name: "lamps",
  from: plusBus.stud,
  returnTo: bank.negative,
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
