import { alternator, battery, build, cable, circuit, disconnect, motor, relay } from "loomwright";

// A sloop: its charging relay is made for 30 A, and the windlass can draw through it.
// Expected: error disconnect/rating at charging relay
// Because: Nameplate: with the relay closed, part of the windlass's 80 A comes from the start battery and the alternator, more than 30 A.
build({ name: "small charging relay", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const start = battery({
  name: "start battery",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 500,
  maxChargeA: 100,
});
const house = battery({
  name: "house battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 100,
});
const engine = alternator({ name: "alternator", ratedA: 90 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthFt: 5,
  gauge: 2,
  protectFarEnd: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: start.negative, lengthFt: 5, gauge: 2 });
const combiner = relay({ name: "charging relay", ratedA: 30 });
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
const windlass = motor({ name: "windlass", runningA: 80, startingA: 100, continuous: false });
circuit({
  name: "windlass cable",
  from: houseSwitch.load,
  returnTo: house.negative,
  to: windlass,
  oneWayFt: 6,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 5 },
});
