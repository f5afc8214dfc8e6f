import { battery, build, busBar, cable, circuit, disconnect, fusePanel } from "loomwright";

// The feed of the panel comes over a switch and two buses, its return goes straight to the battery.
build({ name: "return straight to the battery", voltage: 12 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
const first = busBar({ name: "main bus", side: "positive" });
const second = busBar({ name: "cabin bus", side: "positive" });
const panel = fusePanel({ name: "panel", positions: 8 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthM: 2, mm2: 10 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 1,
  mm2: 25,
  protect: 100,
});
cable({ name: "switch to bus", from: mainSwitch.load, to: first.stud, lengthM: 1, mm2: 25 });
cable({ name: "bus to bus", from: first.stud, to: second.stud, lengthM: 3, mm2: 16, protect: 80 });
cable({ name: "panel feed", from: second.stud, to: panel.feed, lengthM: 1, mm2: 10, protect: 50 });
circuit({
  name: "heater",
  from: second.stud,
  returnTo: bank.negative,
  load: 15,
  oneWayM: 3,
  mm2: 6,
  protect: 20,
});
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayM: 4, mm2: 1.5, protect: 5 });
circuit({ name: "fan", from: panel.branch, load: 2, oneWayM: 5, mm2: 1.5, protect: 3 });
circuit({ name: "pump", from: panel.branch, load: 5, oneWayM: 3, mm2: 2.5, protect: 7.5 });
