import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A delivery van: the main switch sits in the minus, and everything positive stays live.
// Expected: warning disconnect/missing at battery or panel plus
// Because: ISO 10133:2012, clause 6 (recalled): the battery switch is in the positive conductor. With the minus switched off, a
//          positive conductor that touches the vehicle is still live against anything that reaches the battery minus.
build({ name: "switch in the minus", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 60,
});
const mainSwitch = disconnect({ name: "minus switch", ratedA: 150 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100, branchRatedA: 30 });
cable({
  name: "panel plus",
  from: bank.positive,
  to: panel.feed,
  lengthFt: 4,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 6 },
});
cable({ name: "panel minus", from: panel.negative, to: mainSwitch.load, lengthFt: 4, gauge: 4 });
cable({ name: "switch to battery", from: mainSwitch.line, to: bank.negative, lengthFt: 1, gauge: 4 });
circuit({
  name: "lamps",
  from: panel.branch,
  load: 4,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6 },
});
circuit({
  name: "heater",
  from: panel.branch,
  load: 8,
  oneWayFt: 7,
  gauge: 12,
  protect: { ...classT, ratingA: 10 },
});
