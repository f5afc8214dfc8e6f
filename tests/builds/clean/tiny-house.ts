import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  inverter,
  shoreCharger,
  solarArray,
  solarController,
} from "loomwright";

// A tiny house: two 12 V lithium batteries in series to 24 V, modules in two strings, an inverter, lamps on 24 V.
build({ name: "tiny house", voltage: 24, insulationC: 90, installedIn: "building", lowestC: -20 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const cell = {
  chemistry: "LiFePO4",
  nominalV: 12.8,
  capacityAh: 230,
  internalMilliohm: 4,
  maxDischargeA: 150,
  maxChargeA: 100,
} as const;
const lower = battery({ ...cell, name: "lower battery" });
const upper = battery({ ...cell, name: "upper battery" });
cable({ name: "series link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 1 });
const off = disconnect({ name: "house switch", ratedA: 200 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 200, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 200, studs: 6 });
cable({
  name: "house plus",
  from: upper.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 1,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 1 });
cable({ name: "house minus", from: lower.negative, to: minus.stud, lengthFt: 2, gauge: 1 });

const sockets = inverter({
  name: "inverter",
  continuousW: 1600,
  surgeW: 3000,
  efficiencyPercent: 91,
  cutOffV: 22,
});
circuit({
  name: "inverter pair",
  from: plus.stud,
  returnTo: minus.stud,
  to: sockets,
  oneWayFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 110, distanceIn: 5 },
});
const roof = solarArray({
  name: "roof",
  openCircuitV: 37.5,
  shortCircuitA: 9.4,
  maxPowerV: 31,
  maxPowerA: 8.9,
  series: 1,
  parallel: 2,
});
const tracker = solarController({ name: "tracker", maxInputV: 100, outputA: 30, outputV: 28.4 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: tracker,
  oneWayFt: 18,
  gauge: 8,
});
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthFt: 3, gauge: 8 });
const mains = shoreCharger({ name: "generator charger", outputA: 25, outputV: 28.4 });
cable({
  name: "charger plus",
  from: mains.positive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 35, distanceIn: 5 },
});
cable({ name: "charger minus", from: mains.negative, to: minus.stud, lengthFt: 3, gauge: 8 });

const panel = fusePanel({ name: "lamp panel", positions: 8, ratedA: 60, branchRatedA: 20 });
circuit({
  name: "lamp panel feed",
  from: plus.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayFt: 6,
  gauge: 6,
  protect: { ...classT, ratingA: 50, distanceIn: 5 },
});
circuit({
  name: "ceiling",
  from: panel.branch,
  load: 2,
  oneWayFt: 20,
  gauge: 14,
  protect: { ...classT, ratingA: 3 },
});
circuit({
  name: "loft",
  from: panel.branch,
  load: 1,
  oneWayFt: 25,
  gauge: 14,
  protect: { ...classT, ratingA: 3 },
});
circuit({
  name: "water pump",
  from: panel.branch,
  load: 4,
  continuous: false,
  oneWayFt: 12,
  gauge: 12,
  protect: { ...classT, ratingA: 6 },
});
circuit({
  name: "vent fan",
  from: panel.branch,
  load: 1.5,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 3 },
});
