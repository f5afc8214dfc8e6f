import { battery, build, cable, circuit, disconnect } from "loomwright";

// A tug of 24 V: the 12 V radio is tapped off the lower battery.
// Expected: warning battery/half-bank at radio or lower battery
// Because: Common practice: the lower battery is drained and the upper one overcharged; a converter feeds 12 V.
// May follow: warning disconnect/missing at lower battery or radio
build({ name: "radio on half the bank", voltage: 24, insulationC: 105 });

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
  name: "winch",
  from: mainSwitch.load,
  returnTo: lower.negative,
  load: 40,
  continuous: false,
  oneWayFt: 5,
  gauge: 6,
  protect: { ...classT, ratingA: 60, distanceIn: 5 },
});
circuit({
  name: "radio",
  voltage: 12,
  from: lower.positive,
  returnTo: lower.negative,
  load: 5,
  oneWayFt: 6,
  gauge: 12,
  protect: { ...classT, ratingA: 10, distanceIn: 6 },
});
