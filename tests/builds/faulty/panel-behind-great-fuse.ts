import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A youth club bus: a panel rated 60 A hangs on a 125 A main fuse; today its circuits draw little.
// Expected: info panel/rating at panel
// Because: Data sheet: its bus carries 60 A; nothing below 125 A keeps a further circuit or an overload from exceeding that (common
//          practice: the feeder has a fuse of at most the rating of the panel).
build({ name: "panel behind great fuse", voltage: 12, insulationC: 105 });

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
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 60, branchRatedA: 30 });
circuit({
  name: "panel feed",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 4,
  gauge: 2,
});
circuit({
  name: "lamps",
  from: panel.branch,
  load: 4,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6 },
});
circuit({
  name: "music",
  from: panel.branch,
  load: 6,
  oneWayFt: 8,
  gauge: 12,
  protect: { ...classT, ratingA: 10 },
});
