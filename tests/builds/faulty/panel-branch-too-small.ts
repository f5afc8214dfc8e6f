import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A kebab van: a 40 A fuse in a panel whose positions are made for 30 A.
// Expected: error panel/rating at grill or panel
// Because: Nameplate: a branch of the panel is rated 30 A.
build({ name: "panel branch too small", voltage: 12, insulationC: 105 });

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
circuit({
  name: "panel feeder",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 3,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
circuit({
  name: "grill",
  from: panel.branch,
  load: 28,
  oneWayFt: 5,
  gauge: 8,
  protect: { ...classT, ratingA: 40 },
});
circuit({
  name: "lamps",
  from: panel.branch,
  load: 3,
  oneWayFt: 8,
  gauge: 14,
  protect: { ...classT, ratingA: 6 },
});
