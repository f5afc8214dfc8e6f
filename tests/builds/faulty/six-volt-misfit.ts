import { battery, build, cable, circuit, disconnect } from "loomwright";

// A potting shed: one of the two golf cart batteries died, and a smaller one took its place.
// Expected: warning battery/unlike at lower or upper
// Because: Common practice: of unequal batteries in series, the smaller is emptied and overcharged first.
build({ name: "potting shed", voltage: 12, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const lower = battery({
  name: "lower",
  chemistry: "flooded lead-acid",
  nominalV: 6,
  capacityAh: 225,
  internalMilliohm: 2,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const upper = battery({
  name: "upper",
  chemistry: "flooded lead-acid",
  nominalV: 6,
  capacityAh: 140,
  internalMilliohm: 3,
  maxDischargeA: 300,
  maxChargeA: 40,
});
cable({ name: "link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
const off = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "bank plus", from: upper.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(125) });
circuit({
  name: "propagator",
  from: off.load,
  returnTo: lower.negative,
  load: 12,
  oneWayFt: 8,
  gauge: 10,
  protect: classT(20),
});
