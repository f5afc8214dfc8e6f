import { battery, build, cable, circuit, disconnect, fusePanel, shoreCharger } from "loomwright";

// A market trailer: 24 V from two 12 V AGM batteries in series, charged from the market's sockets.
build({ name: "market trailer", voltage: 24, insulationC: 90 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const half = {
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 150,
  internalMilliohm: 4,
  maxDischargeA: 300,
  maxChargeA: 45,
} as const;
const lower = battery({ ...half, name: "lower battery" });
const upper = battery({ ...half, name: "upper battery" });
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 8, ratedA: 100, branchRatedA: 30 });

cable({ name: "series link", from: lower.positive, to: upper.negative, lengthM: 0.4, mm2: 25 });
cable({
  name: "plus cable",
  from: upper.positive,
  to: mainSwitch.line,
  lengthM: 0.6,
  mm2: 25,
  protect: { ...classT, ratingA: 80, distanceMm: 150 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthM: 1, mm2: 25 });
cable({ name: "minus cable", from: lower.negative, to: panel.negative, lengthM: 1.4, mm2: 25 });

circuit({
  name: "cold counter",
  from: panel.branch,
  load: 9,
  oneWayM: 3,
  mm2: 4,
  protect: { ...classT, ratingA: 15 },
});
circuit({
  name: "till",
  from: panel.branch,
  loadW: 40,
  oneWayM: 2.5,
  mm2: 1.5,
  minimumV: 20,
  protect: { ...classT, ratingA: 3 },
});
circuit({
  name: "awning lamps",
  from: panel.branch,
  load: 2,
  oneWayM: 6,
  mm2: 1.5,
  protect: { ...classT, ratingA: 3 },
});
circuit({
  name: "water heater",
  from: panel.branch,
  load: 18,
  continuous: false,
  oneWayM: 2,
  mm2: 6,
  protect: { ...classT, ratingA: 25 },
});

const socket = shoreCharger({ name: "charger", outputA: 20, outputV: 28.8 });
circuit({
  name: "charger cable",
  from: panel.branch,
  to: socket,
  oneWayM: 1.5,
  mm2: 6,
  protect: { ...classT, ratingA: 30 },
});
