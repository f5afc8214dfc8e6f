import { alternator, battery, build, busBar, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A camp trailer behind a car: a booster in the trailer, made for inputs from 10.5 V, lives with the long cable from the car.
build({ name: "camp trailer", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;

const carBattery = battery({
  name: "car battery",
  chemistry: "AGM",
  capacityAh: 70,
  shortCircuitA: 2000,
  maxDischargeA: 300,
  maxChargeA: 100,
});
const carBus = busBar({ name: "car minus", side: "negative", ratedA: 200 });
const engine = alternator({ name: "car alternator", ratedA: 120 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: carBattery.positive,
  lengthFt: 4,
  gauge: 2,
  protectFarEnd: { ...classT, ratingA: 150, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: carBus.stud, lengthFt: 2, gauge: 2 });
cable({ name: "car battery minus", from: carBattery.negative, to: carBus.stud, lengthFt: 1, gauge: 2 });

const booster = dcDcCharger({ name: "booster", outputA: 25, inputMinV: 10.5, isolated: true });
circuit({
  name: "trailer feed",
  from: carBattery.positive,
  returnTo: carBus.stud,
  to: booster,
  oneWayFt: 23,
  gauge: 8,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});

const bank = battery({
  name: "trailer bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 7,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const mainSwitch = disconnect({ name: "trailer switch", ratedA: 100 });
const plusBus = busBar({ name: "trailer plus", side: "positive", ratedA: 100 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 1,
  gauge: 6,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: 6 });
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: plusBus.stud,
  lengthFt: 2,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 35, distanceIn: 5 },
});
cable({ name: "booster minus", from: booster.outputNegative, to: bank.negative, lengthFt: 2, gauge: 8 });

const fromBus = { from: plusBus.stud, returnTo: bank.negative } as const;
circuit({
  ...fromBus,
  name: "lamps",
  load: 2,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...classT, ratingA: 3, distanceIn: 5 },
});
circuit({
  ...fromBus,
  name: "cool box",
  load: 6,
  oneWayFt: 6,
  gauge: 12,
  protect: { ...classT, ratingA: 10, distanceIn: 5 },
});
