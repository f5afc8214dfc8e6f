import { alternator, battery, build, cable, circuit, disconnect } from "loomwright";

// A petrol launch of the old kind: its generator does not limit itself, and its fuse is 60 % above it.
// Expected: error protection/unprotected-path at generator plus
// Because: 33 CFR 183.460(b): at most 120 % of the machine's 50 A; the fuse is 80 A.
build({ name: "generator fused too high", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  shortCircuitA: 1900,
  maxDischargeA: 300,
  maxChargeA: 60,
});
const mainSwitch = disconnect({ name: "battery switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const engine = alternator({ name: "generator", ratedA: 50, selfLimiting: false });
cable({
  name: "generator plus",
  from: engine.positive,
  to: mainSwitch.line,
  lengthFt: 6,
  gauge: 4,
  engineSpace: true,
  protectFarEnd: { ...classT, ratingA: 80, distanceIn: 6 },
  protect: { ...classT, ratingA: 80, distanceIn: 6 },
});
cable({
  name: "generator minus",
  from: engine.negative,
  to: bank.negative,
  lengthFt: 6,
  gauge: 4,
  engineSpace: true,
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
