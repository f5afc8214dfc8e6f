import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A kiosk: the feeder and one of its branches have fuses of one rating and family.
// Expected: info protection/selectivity at counter lamps or panel feeder
// Because: Common practice: a short in the branch may open the feeder's fuse first, and the whole panel is dark.
build({ name: "equal fuses in a row", voltage: 12, insulationC: 105 });

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
const strip = { family: "ISO 8820-3 Type C", interruptingA: 3000 } as const;
circuit({
  name: "panel feeder",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 3,
  gauge: 6,
  protect: { ...strip, ratingA: 30, distanceIn: 5 },
});
circuit({
  name: "counter lamps",
  from: panel.branch,
  load: 6,
  oneWayFt: 6,
  gauge: 10,
  protect: { ...strip, ratingA: 30 },
});
circuit({
  name: "till",
  from: panel.branch,
  load: 3,
  oneWayFt: 6,
  gauge: 14,
  protect: { ...strip, ratingA: 5 },
});
