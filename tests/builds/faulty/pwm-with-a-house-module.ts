import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A shed: a controller without tracking between a module for a house roof, 31 V, and a bank of 12 V.
// Expected: warning solar/array-voltage at roof
// Because: Common practice (no source): a controller without tracking pulls the module down to the bank's voltage, and more than half of
//   its power is lost; it wants a module of 36 cells.
build({
  name: "shed with a house module",
  voltage: 12,
  insulationC: 105,
  installedIn: "building",
  lowestC: 0,
});
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 150,
  internalMilliohm: 4,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 150, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 4 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const roof = solarArray({ name: "roof", openCircuitV: 38, shortCircuitA: 10, maxPowerV: 31, maxPowerA: 9.4 });
const controller = solarController({
  name: "controller",
  maxInputV: 50,
  outputA: 20,
  outputV: 14.4,
  tracking: false,
});
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: controller,
  oneWayFt: 12,
  gauge: 10,
});
cable({
  name: "controller plus",
  from: controller.positive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 10,
  protectFarEnd: classT(30),
});
cable({ name: "controller minus", from: controller.negative, to: minus.stud, lengthFt: 3, gauge: 10 });
