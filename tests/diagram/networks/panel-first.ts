import { battery, build, busBar, cable, circuit, disconnect, fusePanel, shunt } from "loomwright";

// The panel is the first part of the plan, and its cables are written from the panel back to the battery.
build({ name: "panel first", voltage: 12 });
const panel = fusePanel({ name: "panel", positions: 8 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayM: 4, mm2: 1.5, protect: 5 });
circuit({ name: "fan", from: panel.branch, load: 2, oneWayM: 5, mm2: 1.5, protect: 3 });
circuit({ name: "pump", from: panel.branch, load: 5, oneWayM: 3, mm2: 2.5, protect: 7.5 });
const plus = busBar({ name: "plus bus", side: "positive" });
const minus = busBar({ name: "minus bus", side: "negative" });
cable({ name: "panel feed", from: panel.feed, to: plus.stud, lengthM: 1, mm2: 10, protectFarEnd: 50 });
cable({ name: "panel return", from: panel.negative, to: minus.stud, lengthM: 1, mm2: 10 });
const meter = shunt({ name: "meter", ratedA: 300 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100 });
cable({ name: "bus to switch", from: plus.stud, to: mainSwitch.load, lengthM: 1, mm2: 25 });
cable({
  name: "switch to battery",
  from: mainSwitch.line,
  to: bank.positive,
  lengthM: 1,
  mm2: 25,
  protectFarEnd: 100,
});
cable({ name: "bus to meter", from: minus.stud, to: meter.systemSide, lengthM: 1, mm2: 25 });
cable({ name: "meter to battery", from: meter.batterySide, to: bank.negative, lengthM: 1, mm2: 25 });
circuit({ name: "winch", from: plus.stud, returnTo: minus.stud, load: 60, oneWayM: 3, mm2: 25, protect: 80 });
