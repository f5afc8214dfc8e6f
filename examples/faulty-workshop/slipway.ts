import { battery, build, busBar, cable, chassis, circuit, disconnect } from "loomwright";

// Faulty on purpose: a boat on the slipway. Do not build any of this.
build({ name: "slipway", voltage: 12, insulationC: 105, installedIn: "boat" });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 6 } as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 200,
});
const off = disconnect({ name: "switch", ratedA: 150 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 150, studs: 4 });
cable({
  name: "bank cable",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125 },
});
cable({ name: "bank return", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });

// network/hull-return: the deck lights return through the aluminium of the hull.
const hull = chassis({ name: "hull", milliohm: 0.5 });
cable({ name: "bond", from: minus.stud, to: hull.bond, lengthFt: 2, gauge: 2 });
circuit({
  name: "deck lights",
  from: off.load,
  returnTo: hull.metal,
  load: 6,
  oneWayFt: 10,
  gauge: 10,
  protect: { ...classT, ratingA: 10 },
});
