import { battery, build, cable, circuit, disconnect } from "loomwright";

// A 24 V ploughing winch: the link between its batteries is thinner than the main fuse allows.
// Expected: error battery/links at series link
// Because: 33 CFR 183.425(b), 183.455(c): 8 AWG may carry 80 A, and the main fuse that protects it is 125 A.
// May follow: warning conductor/fault-withstand at series link
build({ name: "thin series link", voltage: 24, insulationC: 105 });

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
const upper = battery({ ...half, name: "upper battery" });
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({ name: "series link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 8 });
cable({
  name: "bank to switch",
  from: upper.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
circuit({
  name: "winch",
  from: mainSwitch.load,
  returnTo: lower.negative,
  load: 60,
  continuous: false,
  oneWayFt: 5,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
