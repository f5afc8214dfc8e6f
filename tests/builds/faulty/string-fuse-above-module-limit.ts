import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A chapel of 24 V: three strings with fuses of 30 A, although the modules allow 15 A.
// Expected: error solar/string-protection at chapel roof
// Because: NFPA 70, 690.9 and the module's marking: a string's fuse is at most the maximum series fuse of a module.
build({ name: "chapel", voltage: 24, insulationC: 105, installedIn: "building", lowestC: -10 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  nominalV: 24,
  capacityAh: 200,
  internalMilliohm: 6,
  maxDischargeA: 150,
  maxChargeA: 100,
});
const off = disconnect({ name: "switch", ratedA: 150 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 150, studs: 4 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 150, studs: 4 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(125) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
const roof = solarArray({
  name: "chapel roof",
  openCircuitV: 22.4,
  shortCircuitA: 9.4,
  maxPowerV: 18.4,
  maxPowerA: 8.8,
  series: 2,
  parallel: 3,
  maxSeriesFuseA: 15,
  stringFuseA: 30,
});
const tracker = solarController({ name: "tracker", maxInputV: 100, outputA: 40, outputV: 28.4 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: tracker,
  oneWayFt: 20,
  gauge: 6,
});
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 6,
  protectFarEnd: classT(60),
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthFt: 3, gauge: 6 });
circuit({
  name: "organ lamps",
  from: plus.stud,
  returnTo: minus.stud,
  load: 4,
  oneWayFt: 20,
  gauge: 14,
  protect: classT(6),
});
