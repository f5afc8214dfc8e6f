import { battery, build, busBar, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A sloop: one charger output was led to both banks, which are thereby joined for good.
// Expected: error battery/unlike at house or engine battery
// Because: Common practice: lithium and lead-acid are not in parallel; the charger's terminal joins them day and night.
// May follow: warning battery/parallel-imbalance at house or engine battery
// May follow: warning battery/charge-current at engine battery
// May follow: error protection/below-load at charger to house or charger to engine
build({ name: "sloop", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const engine = battery({
  name: "engine battery",
  chemistry: "flooded lead-acid",
  capacityAh: 80,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const minus = busBar({ name: "minus", side: "negative", ratedA: 200, studs: 6 });
cable({ name: "house minus", from: house.negative, to: minus.stud, lengthFt: 2, gauge: 4 });
cable({ name: "engine minus", from: engine.negative, to: minus.stud, lengthFt: 2, gauge: 4 });
const charger = shoreCharger({ name: "charger", outputA: 30, outputV: 14.4 });
cable({
  name: "charger to house",
  from: charger.positive,
  to: house.positive,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: classT(40),
  protect: classT(40),
});
cable({
  name: "charger to engine",
  from: charger.positive,
  to: engine.positive,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: classT(40),
  protect: classT(40),
});
cable({ name: "charger minus", from: charger.negative, to: minus.stud, lengthFt: 4, gauge: 8 });
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "house plus", from: house.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: minus.stud,
  load: 5,
  oneWayFt: 12,
  gauge: 12,
  protect: classT(10),
});
const engineOff = disconnect({ name: "engine switch", ratedA: 200 });
cable({
  name: "engine plus",
  from: engine.positive,
  to: engineOff.line,
  lengthFt: 2,
  gauge: 2,
  protect: classT(150),
});
circuit({
  name: "engine panel",
  from: engineOff.load,
  returnTo: minus.stud,
  load: 4,
  oneWayFt: 8,
  gauge: 12,
  protect: classT(10),
});
