import { alternator, battery, build, cable, circuit, disconnect } from "loomwright";

// A work launch: the alternator's cable is fused at the engine, where nothing can push much through it.
// Expected: error protection/both-ends at alternator plus or battery to switch
// Because: 33 CFR 183.460(a) and ISO 13297:2020, 12.3: the battery feeds this cable, so the fuse belongs at the battery's end; the alternator limits itself.
// May follow: error protection/unprotected-path at alternator plus
build({ name: "fuse at alternator end", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  shortCircuitA: 2400,
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
const engine = alternator({ name: "alternator", ratedA: 50 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: bank.positive,
  lengthFt: 7,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: bank.negative, lengthFt: 7, gauge: 4 });
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
