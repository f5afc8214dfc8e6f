import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A fire lookout: one AGM battery, one module, a plain controller, a radio.
build({ name: "fire lookout", voltage: 12, insulationC: 105, installedIn: "building", lowestC: -20 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 150,
  maxChargeA: 25,
});
const off = disconnect({ name: "switch", ratedA: 60 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 1.5, gauge: 10, protect: classT(40) });
const roof = solarArray({
  name: "module",
  openCircuitV: 22.3,
  shortCircuitA: 6.1,
  maxPowerV: 18.2,
  maxPowerA: 5.6,
});
const plain = solarController({
  name: "controller",
  maxInputV: 30,
  outputA: 10,
  outputV: 14.3,
  tracking: false,
});
circuit({
  name: "module pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: plain,
  oneWayFt: 18,
  gauge: 10,
});
cable({
  name: "controller plus",
  from: plain.positive,
  to: off.load,
  lengthFt: 2,
  gauge: 12,
  protectFarEnd: classT(15),
});
cable({ name: "controller minus", from: plain.negative, to: bank.negative, lengthFt: 2, gauge: 12 });
circuit({
  name: "radio",
  from: off.load,
  returnTo: bank.negative,
  load: 6,
  critical: true,
  oneWayFt: 6,
  gauge: 12,
  protect: classT(10),
});
circuit({
  name: "lamp",
  from: off.load,
  returnTo: bank.negative,
  load: 1,
  oneWayFt: 8,
  gauge: 16,
  protect: classT(3),
});
