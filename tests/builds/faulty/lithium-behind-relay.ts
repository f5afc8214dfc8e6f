import { alternator, battery, build, cable, circuit, disconnect, relay } from "loomwright";

// A van: a charging relay made for two lead-acid batteries now joins an AGM and a lithium one.
// Expected: warning battery/unlike at house battery or start battery or charging relay
// Because: Common practice: while the relay is closed, two chemistries share one charging voltage, and the fuller one feeds the other.
build({ name: "lithium behind relay", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const start = battery({
  name: "start battery",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 500,
});
const house = battery({
  name: "house battery",
  chemistry: "LiFePO4",
  capacityAh: 50,
  internalMilliohm: 10,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const engine = alternator({ name: "alternator", ratedA: 120 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthFt: 5,
  gauge: 2,
  protectFarEnd: { ...classT, ratingA: 150, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: start.negative, lengthFt: 5, gauge: 2 });
const combiner = relay({ name: "charging relay", ratedA: 140 });
cable({
  name: "start to relay",
  from: start.positive,
  to: combiner.line,
  lengthFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({
  name: "house to relay",
  from: house.positive,
  to: combiner.load,
  lengthFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "common minus", from: start.negative, to: house.negative, lengthFt: 4, gauge: 2 });
const houseSwitch = disconnect({ name: "house switch", ratedA: 150 });
cable({
  name: "house to switch",
  from: house.positive,
  to: houseSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
circuit({
  name: "lamps",
  from: houseSwitch.load,
  returnTo: house.negative,
  load: 3,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
