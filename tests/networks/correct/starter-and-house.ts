import { alternator, battery, build, busBar, cable, circuit, dcDcCharger, disconnect } from "loomwright";

build({ insulationC: 105 });
const starter = battery({ chemistry: "flooded lead-acid", capacityAh: 70, shortCircuitA: 2_000 });
const engine = alternator({ ratedA: 90 });
cable({
  name: "alternator, positive",
  from: engine.positive,
  to: starter.positive,
  lengthFt: 4,
  gauge: 2,
  protectFarEnd: { ratingA: 125, family: "UL 248-15 Class T", distanceIn: 7, interruptingA: 20_000 },
});
cable({ name: "alternator, negative", from: engine.negative, to: starter.negative, lengthFt: 4, gauge: 2 });
const charger = dcDcCharger({ outputA: 30, isolated: true, inputMinV: 12 });
circuit({
  name: "charger input",
  from: starter.positive,
  to: charger,
  oneWayFt: 12,
  gauge: 4,
  protect: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 7, interruptingA: 20_000 },
});
const house = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 6, maxChargeA: 50 });
const bus = busBar({ side: "positive", ratedA: 100, studs: 4 });
const back = busBar({ side: "negative", ratedA: 100, studs: 4 });
const off = disconnect({ name: "house disconnect", ratedA: 100 });
cable({
  name: "house to disconnect",
  from: house.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ratingA: 100, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
cable({ name: "disconnect to bus", from: off.load, to: bus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "house return", from: house.negative, to: back.stud, lengthFt: 2, gauge: 4 });
cable({
  name: "charger output",
  from: charger.outputPositive,
  to: bus.stud,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: { ratingA: 40, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20_000 },
});
cable({ name: "charger return", from: charger.outputNegative, to: back.stud, lengthFt: 3, gauge: 8 });
circuit({
  name: "fridge",
  from: bus.stud,
  returnTo: back.stud,
  load: 5,
  oneWayFt: 10,
  gauge: 12,
  protect: { ratingA: 10, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20_000 },
});
