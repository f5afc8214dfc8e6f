import { battery, build, cable, circuit, fusePanel, selectorSwitch } from "loomwright";

// A day launch: two like batteries on a selector switch, one of them in use and the other in reserve.
build({ name: "day launch", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const like = { chemistry: "AGM", capacityAh: 80, internalMilliohm: 6, maxDischargeA: 300 } as const;
const first = battery({ ...like, name: "first battery" });
const second = battery({ ...like, name: "second battery" });
const selector = selectorSwitch({ name: "battery selector", ratedA: 200 });
const fuse = { ...classT, ratingA: 100, distanceIn: 6 } as const;
cable({
  name: "first to selector",
  from: first.positive,
  to: selector.input1,
  lengthFt: 3,
  gauge: 4,
  protect: fuse,
});
cable({
  name: "second to selector",
  from: second.positive,
  to: selector.input2,
  lengthFt: 3,
  gauge: 4,
  protect: fuse,
});
cable({ name: "minus between them", from: second.negative, to: first.negative, lengthFt: 1, gauge: 4 });
const panel = fusePanel({ name: "helm panel", positions: 6, ratedA: 100, branchRatedA: 30 });
cable({ name: "selector to panel", from: selector.common, to: panel.feed, lengthFt: 4, gauge: 4 });
cable({ name: "panel minus", from: panel.negative, to: first.negative, lengthFt: 6, gauge: 4 });
circuit({
  name: "sounder",
  from: panel.branch,
  load: 1,
  oneWayFt: 6,
  gauge: 14,
  critical: true,
  protect: { ...classT, ratingA: 3 },
});
circuit({
  name: "pump",
  from: panel.branch,
  load: 8,
  oneWayFt: 9,
  gauge: 10,
  critical: true,
  protect: { ...classT, ratingA: 10 },
});
circuit({
  name: "deck lamps",
  from: panel.branch,
  load: 4,
  oneWayFt: 12,
  gauge: 14,
  protect: { ...classT, ratingA: 6 },
});
