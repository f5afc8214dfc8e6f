import { battery, build, cable, circuit, disconnect } from "loomwright";

// A hut of 24 V from a gel and an AGM battery in series.
// Expected: warning battery/unlike at upper
// Because: Common practice: batteries in series are of one kind, as they are charged to different voltages.
build({ name: "gel in series with agm", voltage: 24, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const lower = battery({
  name: "lower",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const upper = battery({
  name: "upper",
  chemistry: "gel",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
cable({ name: "link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
const off = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "plus", from: upper.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(125) });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: lower.negative,
  load: 4,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(6),
});
