import { battery, build, cable, circuit, fusePanel, selectorSwitch } from "loomwright";

// A fishing boat: the second battery was replaced by lithium, and the selector switch can connect both.
// Expected: warning battery/unlike at old battery or new battery
// Because: Common practice: batteries of different chemistry are not connected in parallel; in its position for both inputs the
//          selector does it, and the lithium battery charges the AGM one without a limit.
build({ name: "selector mixes chemistries", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const old = battery({
  name: "old battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
});
const fresh = battery({
  name: "new battery",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 7,
  maxDischargeA: 100,
  maxChargeA: 100,
});
const selector = selectorSwitch({ name: "selector", ratedA: 200 });
const fuse = { ...classT, ratingA: 80, distanceIn: 6 } as const;
cable({ name: "old plus", from: old.positive, to: selector.input1, lengthFt: 3, gauge: 4, protect: fuse });
cable({ name: "new plus", from: fresh.positive, to: selector.input2, lengthFt: 3, gauge: 4, protect: fuse });
cable({ name: "minus link", from: fresh.negative, to: old.negative, lengthFt: 1, gauge: 4 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100, branchRatedA: 30 });
cable({ name: "selector to panel", from: selector.common, to: panel.feed, lengthFt: 4, gauge: 4 });
cable({ name: "panel minus", from: panel.negative, to: old.negative, lengthFt: 5, gauge: 4 });
circuit({
  name: "lamps",
  from: panel.branch,
  load: 4,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6 },
});
