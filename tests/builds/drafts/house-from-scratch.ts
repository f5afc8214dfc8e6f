import { battery, build, busBar, cable, circuit, disconnect, fusePanel, inverter } from "loomwright";

// A tiny house in one breath: panel, inverter, pump, all on 10 AWG.
build({ name: "tiny house", voltage: 12, insulationC: 105 });

const size = { gauge: 10 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 280,
  internalMilliohm: 3,
  maxDischargeA: 200,
});
const mainSwitch = disconnect({ name: "switch", ratedA: 200 });
const plus = busBar({ name: "plus", side: "positive" });
const minus = busBar({ name: "minus", side: "negative" });
cable({
  ...size,
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 3,
  protect: 150,
});
cable({ ...size, name: "switch to plus", from: mainSwitch.load, to: plus.stud, lengthFt: 2 });
cable({ ...size, name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 4 });
const kitchen = inverter({ name: "inverter", continuousW: 800 });
circuit({
  ...size,
  name: "inverter cable",
  from: plus.stud,
  returnTo: minus.stud,
  to: kitchen,
  oneWayFt: 5,
  protect: 80,
});
const panel = fusePanel({ name: "panel", positions: 8 });
circuit({
  ...size,
  name: "panel feeder",
  from: plus.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayFt: 12,
  protect: 40,
});
circuit({ ...size, name: "pump", from: panel.branch, load: 8, oneWayFt: 20, protect: 40, critical: true });
circuit({ ...size, name: "lamps", from: panel.branch, load: 6, oneWayFt: 30, protect: 40 });
