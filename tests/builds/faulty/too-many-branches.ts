import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A mobile library: five circuits on a panel with four positions.
// Expected: warning panel/rating at panel
// Because: Data sheet: a position takes one branch; a second wire under one fuse has no fuse of its own.
build({ name: "too many branches", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 60,
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
const panel = fusePanel({ name: "panel", positions: 4, ratedA: 100, branchRatedA: 30 });
circuit({
  name: "panel feed",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 4,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
for (const shelf of ["front", "rear", "left", "right", "desk"])
  circuit({
    name: `${shelf} lamps`,
    from: panel.branch,
    load: 2,
    oneWayFt: 9,
    gauge: 14,
    protect: { ...classT, ratingA: 3 },
  });
