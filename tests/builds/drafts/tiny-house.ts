import { battery, build, busBar, cable, circuit, disconnect, fusePanel, inverter } from "loomwright";

// Two lithium batteries side by side, one cable for both, an inverter of 2 kW.
build({ name: "tiny house", voltage: 12, insulationC: 105 });

const left = battery({
  name: "left",
  chemistry: "LiFePO4",
  capacityAh: 200,
  maxDischargeA: 150,
  internalMilliohm: 3,
});
const right = battery({
  name: "right",
  chemistry: "LiFePO4",
  capacityAh: 200,
  maxDischargeA: 150,
  internalMilliohm: 3,
});
const plus = busBar({ name: "plus", ratedA: 300 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 300 });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 } as const;
cable({
  name: "left plus",
  from: left.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 4,
  protect: { ...classT, ratingA: 125 },
});
cable({
  name: "right plus",
  from: right.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 4,
  protect: { ...classT, ratingA: 125 },
});
cable({ name: "left minus", from: minus.stud, to: left.negative, lengthFt: 2, gauge: 4 });
cable({ name: "right minus", from: minus.stud, to: right.negative, lengthFt: 2, gauge: 4 });
const off = disconnect({ name: "switch", ratedA: 300 });
cable({
  name: "bus to switch",
  from: plus.stud,
  to: off.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 200 },
});
const mains = inverter({ name: "inverter", continuousW: 2000 });
circuit({
  name: "inverter leads",
  from: off.load,
  returnTo: minus.stud,
  to: mains,
  oneWayFt: 5,
  gauge: 4,
  protect: { ...classT, ratingA: 150 },
});
const panel = fusePanel({ name: "panel", positions: 8 });
cable({
  name: "panel feed",
  from: off.load,
  to: panel.feed,
  lengthFt: 12,
  gauge: 10,
  protect: { ...classT, ratingA: 60 },
});
cable({ name: "panel return", from: panel.negative, to: minus.stud, lengthFt: 12, gauge: 10 });
circuit({ name: "pump", from: panel.branch, load: 8, oneWayFt: 20, gauge: 14, protect: 10 });
circuit({ name: "lamps", from: panel.branch, load: 5, oneWayFt: 25, gauge: 16, protect: 10 });
circuit({ name: "fan", from: panel.branch, load: 4, oneWayFt: 15, gauge: 18, protect: 5 });
