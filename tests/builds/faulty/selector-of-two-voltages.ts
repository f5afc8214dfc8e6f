import { battery, build, busBar, cable, circuit, selectorSwitch } from "loomwright";

// A lorry: a selector switch of two batteries, one of 12 V and one of 24 V; position "both" joins them.
// Expected: error battery/unlike at small bank or bank
// Because: No clause needed: 24 V on a bank of 12 V drives hundreds of amperes through it.
// May follow: error battery/charging-voltage at small bank
// May follow: error conductor/ampacity at small plus
// May follow: error battery/charge-current at small bank
// May follow: error protection/below-load at small plus
build({ name: "lorry with a selector", voltage: 24, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 100,
  internalMilliohm: 8,
  maxDischargeA: 300,
  maxChargeA: 30,
});
const small = battery({
  name: "small bank",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 30,
});
const selector = selectorSwitch({ name: "selector", ratedA: 250 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 6 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: selector.input1,
  lengthFt: 2,
  gauge: 2,
  protect: classT(125),
});
cable({
  name: "small plus",
  from: small.positive,
  to: selector.input2,
  lengthFt: 2,
  gauge: 2,
  protect: classT(125),
});
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
cable({ name: "small minus", from: small.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
circuit({
  name: "lamps",
  from: selector.common,
  returnTo: minus.stud,
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: classT(6),
});
