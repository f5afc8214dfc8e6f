import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A ranger's trailer: a second panel that no cable feeds.
// Expected: error network/unconnected at rear lamps or rear panel
// Because: A circuit needs a source: no conductor leads from the bank to the rear panel.
build({ name: "panel left unfed", voltage: 12, insulationC: 105 });

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
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
const rear = fusePanel({ name: "rear panel", positions: 4, ratedA: 60, branchRatedA: 20 });
circuit({ name: "rear lamps", from: rear.branch, load: 2, oneWayFt: 6, gauge: 14, protect: 5 });
