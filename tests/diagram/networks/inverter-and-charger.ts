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
  shunt,
} from "loomwright";

// An inverter and a charger in one case: both on the same buses, each in its role.
build({ name: "inverter and charger", voltage: 24 });
const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 280, nominalV: 25.6 });
const meter = shunt({ name: "shunt", ratedA: 500 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 300 });
const plus = busBar({ name: "plus bus", side: "positive" });
const minus = busBar({ name: "minus bus", side: "negative" });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 0.5,
  mm2: 70,
  protect: 250,
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plus.stud, lengthM: 0.5, mm2: 70 });
cable({ name: "bank to shunt", from: bank.negative, to: meter.batterySide, lengthM: 0.5, mm2: 70 });
cable({ name: "shunt to bus", from: meter.systemSide, to: minus.stud, lengthM: 0.5, mm2: 70 });
const feeding = inverter({ name: "inverter", continuousW: 3000, surgeW: 6000 });
const charging = shoreCharger({ name: "charger of the inverter", outputA: 70, outputV: 28.4 });
circuit({
  name: "inverter supply",
  from: plus.stud,
  returnTo: minus.stud,
  to: feeding,
  oneWayM: 1,
  mm2: 70,
  protect: 200,
});
circuit({
  name: "charger output",
  from: plus.stud,
  returnTo: minus.stud,
  to: charging,
  oneWayM: 1,
  mm2: 25,
  protect: 80,
});
const panel = fusePanel({ name: "panel", positions: 6 });
circuit({
  name: "panel feeder",
  from: plus.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayM: 2,
  mm2: 16,
  protect: 60,
});
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayM: 4, mm2: 1.5, protect: 5 });
circuit({ name: "fridge", from: panel.branch, load: 4, oneWayM: 3, mm2: 2.5, protect: 7.5 });
