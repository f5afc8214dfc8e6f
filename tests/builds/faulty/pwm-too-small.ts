import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A bee house: a second module was added to a plain controller for 10 A.
// Expected: warning solar/controller-current at controller
// Because: The maker's rating: a controller that does not track passes the modules' 18.8 A on unchanged; NFPA 70, 690.8 counts 125 % of it.
build({ name: "bee house", voltage: 12, insulationC: 105, installedIn: "building", lowestC: -10 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 40,
});
const off = disconnect({ name: "switch", ratedA: 60 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 8, protect: classT(50) });
const roof = solarArray({
  name: "roof",
  openCircuitV: 22,
  shortCircuitA: 9.4,
  maxPowerV: 18,
  maxPowerA: 8.8,
  parallel: 2,
});
const plain = solarController({
  name: "controller",
  maxInputV: 30,
  outputA: 10,
  outputV: 14.4,
  tracking: false,
});
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: plain,
  oneWayFt: 8,
  gauge: 8,
});
cable({
  name: "controller plus",
  from: plain.positive,
  to: off.load,
  lengthFt: 2,
  gauge: 8,
  protectFarEnd: classT(30),
});
cable({ name: "controller minus", from: plain.negative, to: bank.negative, lengthFt: 2, gauge: 8 });
circuit({
  name: "lamp",
  from: off.load,
  returnTo: bank.negative,
  load: 2,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(3),
});
