import { battery, build, busBar, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A river boat: 15 A for the bow bank go 10 m through 4 mm².
// Expected: warning conductor/voltage-drop at bow charger feed
// Because: Common practice (no source): a converter's feed loses at most 3 %; 15 A lose more than 1 V here.
// May follow: error scenario/device-below-minimum at bow charger
// May follow: warning scenario/device-below-minimum at bow charger
// May follow: error conductor/ampacity at bow charger feed
build({ name: "river boat", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 3,
  maxDischargeA: 400,
  maxChargeA: 60,
});
const bow = battery({
  name: "bow bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 200, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 200, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const booster = dcDcCharger({
  name: "bow charger",
  outputA: 10,
  outputV: 14.4,
  isolated: true,
  runs: "always",
});
circuit({ ...rails, name: "bow charger feed", to: booster, oneWayM: 10, mm2: 4, protect: classT(25) });
circuit({
  name: "bow charger output",
  from: booster.outputPositive,
  returnTo: booster.outputNegative,
  to: bow,
  oneWayM: 1,
  mm2: 10,
  protectFarEnd: classT(40),
});
