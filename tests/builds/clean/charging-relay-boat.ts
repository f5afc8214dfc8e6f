import { alternator, battery, build, cable, circuit, disconnect, fusePanel, relay } from "loomwright";

// A small cruiser: a charging relay connects the start battery and the house battery while the engine charges.
build({ name: "small cruiser", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const lead = { chemistry: "flooded lead-acid", internalMilliohm: 6, maxDischargeA: 400 } as const;
const start = battery({ ...lead, name: "start battery", capacityAh: 75, maxChargeA: 60 });
const house = battery({ ...lead, name: "house battery", capacityAh: 110, maxChargeA: 60 });
const engine = alternator({ name: "alternator", ratedA: 55 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthFt: 6,
  gauge: 4,
  engineSpace: true,
  protectFarEnd: { ...classT, ratingA: 80, distanceIn: 6 },
});
cable({
  name: "alternator minus",
  from: engine.negative,
  to: start.negative,
  lengthFt: 6,
  gauge: 4,
  engineSpace: true,
});

const combiner = relay({ name: "charging relay", ratedA: 140 });
cable({
  name: "start to relay",
  from: start.positive,
  to: combiner.line,
  lengthFt: 3,
  gauge: 4,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({
  name: "house to relay",
  from: house.positive,
  to: combiner.load,
  lengthFt: 5,
  gauge: 4,
  protect: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({ name: "common minus", from: start.negative, to: house.negative, lengthFt: 6, gauge: 4 });

const houseSwitch = disconnect({ name: "house switch", ratedA: 100 });
const panel = fusePanel({ name: "cabin panel", positions: 8, ratedA: 60, branchRatedA: 20 });
cable({
  name: "house to switch",
  from: house.positive,
  to: houseSwitch.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});
cable({ name: "switch to panel", from: houseSwitch.load, to: panel.feed, lengthFt: 3, gauge: 6 });
cable({ name: "panel minus", from: panel.negative, to: house.negative, lengthFt: 4, gauge: 6 });
circuit({
  name: "cabin lamps",
  from: panel.branch,
  load: 2,
  oneWayFt: 12,
  gauge: 16,
  protect: { ...classT, ratingA: 3 },
});
circuit({
  name: "side lamps",
  from: panel.branch,
  load: 1.5,
  oneWayFt: 14,
  gauge: 14,
  critical: true,
  protect: { ...classT, ratingA: 3 },
});
