import { battery, build, cable, circuit, disconnect, motor, shoreCharger } from "loomwright";

// A skiff with a trolling motor of 24 V: a charger of 12 V hangs on the lower of its two batteries.
// Expected: error battery/half-bank at lower or charger
// Because: Common practice (no source): the upper battery is never charged, is emptied first, and its polarity may be reversed.
build({ name: "skiff with a trolling motor", voltage: 24, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const lower = battery({
  name: "lower",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 25,
});
const upper = battery({
  name: "upper",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 25,
});
cable({ name: "link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 4 });
const off = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "bank plus", from: upper.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
circuit({
  name: "trolling motor",
  from: off.load,
  returnTo: lower.negative,
  to: motor({ name: "bow motor", runningA: 45, startingA: 60 }),
  oneWayFt: 6,
  gauge: 4,
});
const charger = shoreCharger({ name: "charger", outputA: 10, outputV: 14.4 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: lower.positive,
  lengthFt: 3,
  gauge: 10,
  protectFarEnd: classT(20),
});
cable({ name: "charger minus", from: charger.negative, to: lower.negative, lengthFt: 3, gauge: 10 });
