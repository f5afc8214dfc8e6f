import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A dive boat: a second panel was put on a 20 A branch of the first, with heaters of 36 A.
// Expected: error panel/rating at second feed or main panel
// Because: Data sheet: a branch of the main panel carries 20 A; the second panel draws 36 A through it.
build({ name: "sub panel on a branch", voltage: 12, insulationC: 105 });

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
const panel = fusePanel({ name: "main panel", positions: 6, ratedA: 100, branchRatedA: 20 });
circuit({
  name: "panel feed",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 4,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
const second = fusePanel({ name: "second panel", positions: 4, ratedA: 60, branchRatedA: 30 });
circuit({
  name: "second feed",
  from: panel.branch,
  to: second,
  oneWayFt: 5,
  gauge: 8,
  protect: { ...classT, ratingA: 50 },
});
circuit({
  name: "heater one",
  from: second.branch,
  load: 18,
  oneWayFt: 5,
  gauge: 10,
  protect: { ...classT, ratingA: 25 },
});
circuit({
  name: "heater two",
  from: second.branch,
  load: 18,
  oneWayFt: 6,
  gauge: 10,
  protect: { ...classT, ratingA: 25 },
});
