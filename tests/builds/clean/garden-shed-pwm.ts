import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A garden shed: a module of 36 cells and a controller without tracking on one battery.
build({ name: "garden shed", voltage: 12, insulationC: 105, installedIn: "building", lowestC: -10 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  internalMilliohm: 6,
  maxDischargeA: 200,
  maxChargeA: 25,
});
const off = disconnect({ name: "main switch", ratedA: 100 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 100, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 100, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 6, protect: classT(80) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 6 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 6 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const roof = solarArray({ name: "roof", openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.6 });
const controller = solarController({
  name: "controller",
  maxInputV: 50,
  outputA: 10,
  outputV: 14.4,
  tracking: false,
});
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: controller,
  oneWayFt: 8,
  gauge: 10,
});
cable({
  name: "controller plus",
  from: controller.positive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 12,
  protectFarEnd: classT(15),
});
cable({ name: "controller minus", from: controller.negative, to: minus.stud, lengthFt: 3, gauge: 12 });
