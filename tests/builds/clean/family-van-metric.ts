import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fuseHolder,
  fusePanel,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// A family's van in metric sizes: 12 V, 280 Ah lithium, sun, and a blade-fuse panel that feeds everything.
build({ name: "family van", voltage: 12, insulationC: 90, lowestC: -10 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 280,
  internalMilliohm: 3,
  maxDischargeA: 200,
  maxChargeA: 140,
});
const mainFuse = fuseHolder({ ...classT, name: "main fuse", on: bank.positive, ratingA: 125 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
const meter = shunt({ name: "meter", ratedA: 500 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 200, studs: 5 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 200, studs: 5 });
cable({ name: "fuse to switch", from: mainFuse.load, to: mainSwitch.line, lengthM: 0.4, mm2: 35 });
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthM: 0.3, mm2: 35 });
cable({ name: "bank to meter", from: bank.negative, to: meter.batterySide, lengthM: 0.4, mm2: 35 });
cable({ name: "meter to bus", from: meter.systemSide, to: minusBus.stud, lengthM: 0.3, mm2: 35 });

const panel = fusePanel({ name: "fuse panel", positions: 12, ratedA: 100, branchRatedA: 30 });
circuit({
  name: "panel feeder",
  from: plusBus.stud,
  returnTo: minusBus.stud,
  to: panel,
  oneWayM: 2,
  mm2: 16,
  protect: { ...classT, ratingA: 60, distanceMm: 120 },
});
circuit({ name: "cool box", from: panel.branch, load: 5, oneWayM: 3, mm2: 2.5, protect: 7.5 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayM: 6, mm2: 1.5, protect: 5 });
circuit({
  name: "tap pump",
  from: panel.branch,
  load: 5,
  continuous: false,
  oneWayM: 5,
  mm2: 2.5,
  protect: 7.5,
});
circuit({ name: "air heater", from: panel.branch, load: 9, oneWayM: 4, mm2: 4, protect: 15 });
circuit({ name: "sockets", from: panel.branch, load: 10, oneWayM: 3, mm2: 4, protect: 15 });

const roof = solarArray({
  name: "roof modules",
  openCircuitV: 24.8,
  shortCircuitA: 9.9,
  maxPowerV: 20.7,
  maxPowerA: 9.2,
  openCircuitPercentPerC: -0.28,
  series: 2,
});
const sun = solarController({ name: "sun controller", maxInputV: 100, outputA: 30, outputV: 14.2 });
circuit({ name: "roof to controller", from: roof.positive, to: sun, oneWayM: 5, mm2: 6 });
cable({
  name: "sun plus",
  from: sun.positive,
  to: plusBus.stud,
  lengthM: 1.2,
  mm2: 10,
  protectFarEnd: { ...classT, ratingA: 40, distanceMm: 120 },
});
cable({ name: "sun minus", from: sun.negative, to: minusBus.stud, lengthM: 1.2, mm2: 10 });
