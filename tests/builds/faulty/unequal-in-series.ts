import { battery, build, cable, circuit, disconnect } from "loomwright";

// A 24 V loader: a new 100 Ah battery in series with one of 70 Ah.
// Expected: warning battery/unlike at upper battery or lower battery
// Because: Common practice: the smaller is empty, and is charged backwards, while the larger still delivers.
build({ name: "unequal in series", voltage: 24, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const half = {
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
} as const;
const lower = battery({ ...half, name: "lower battery" });
const upper = battery({ ...half, name: "upper battery", capacityAh: 70 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({ name: "series link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
cable({
  name: "bank to switch",
  from: upper.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
circuit({
  name: "loader lamps",
  from: mainSwitch.load,
  returnTo: lower.negative,
  load: 6,
  oneWayFt: 9,
  gauge: 12,
  protect: { ...classT, ratingA: 10, distanceIn: 5 },
});
