import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A horse trailer: a thick plus cable to the panel, and the thin wire that was left for its return.
// Expected: error protection/return-conductor at panel return
// Because: 33 CFR 183.425(b) and IEC 60364-4-43, 433.1: a 12 AWG return may carry 45 A, and the 80 A fuse of its positive is all that limits its current.
// May follow: warning conductor/fault-withstand at panel return
build({ name: "thin return", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100, branchRatedA: 30 });
cable({
  name: "panel plus",
  from: mainSwitch.load,
  to: panel.feed,
  lengthFt: 2,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 12 });
circuit({
  name: "stall lamps",
  from: panel.branch,
  load: 6,
  oneWayFt: 9,
  gauge: 12,
  protect: { ...classT, ratingA: 10 },
});
circuit({
  name: "water pump",
  from: panel.branch,
  load: 6,
  oneWayFt: 9,
  gauge: 12,
  protect: { ...classT, ratingA: 10 },
});
