import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A baker's van: the fuse of the feeder sits at the panel, 8 ft from the battery.
// Expected: error protection/unprotected-path at battery to switch or switch to panel
// Because: 33 CFR 183.455(b) and 183.460(a): the device is at the source of power; a chafed feeder burns ahead of it.
// May follow: error protection/missing at battery to switch or switch to panel
// May follow: error protection/both-ends at battery to switch or switch to panel
build({ name: "fuse at panel end", voltage: 12, insulationC: 105 });

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
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100, branchRatedA: 30 });
cable({ name: "battery to switch", from: bank.positive, to: mainSwitch.line, lengthFt: 2, gauge: 4 });
cable({
  name: "switch to panel",
  from: mainSwitch.load,
  to: panel.feed,
  lengthFt: 6,
  gauge: 4,
  protectFarEnd: { ...classT, ratingA: 80, distanceIn: 4 },
});
cable({ name: "panel minus", from: panel.negative, to: bank.negative, lengthFt: 8, gauge: 4 });
circuit({
  name: "lamps",
  from: panel.branch,
  load: 4,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6 },
});
circuit({
  name: "scales",
  from: panel.branch,
  load: 2,
  oneWayFt: 7,
  gauge: 14,
  protect: { ...classT, ratingA: 3 },
});
