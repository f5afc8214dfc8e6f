import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A hut: cables of 16 mm² into the clamps of a controller that take 6 mm².
// Expected: error conductor/terminal-size at tracker plus
// Because: Maker's figure: strands are cut off to make it fit, and the rest overheats.
// May follow: error conductor/terminal-size at tracker minus
build({ name: "hut with clamps", voltage: 12, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const off = disconnect({ name: "main switch", ratedA: 250 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 250, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 250, studs: 8 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: classT(200),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: "1/0" });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const roof = solarArray({
  name: "roof",
  openCircuitV: 22,
  shortCircuitA: 10,
  maxPowerV: 18,
  maxPowerA: 9.4,
  parallel: 2,
});
const tracker = solarController({
  name: "tracker",
  maxInputV: 75,
  outputA: 20,
  outputV: 14.2,
  largestMm2: 6,
});
circuit({ name: "roof pair", from: roof.positive, returnTo: roof.negative, to: tracker, oneWayM: 4, mm2: 6 });
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthM: 1,
  mm2: 16,
  protectFarEnd: classT(30),
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthM: 1, mm2: 16 });
