import { battery, build, busBar, cable, circuit, fuseHolder, fusePanel, inverter, motor } from "loomwright";

// A weekend van: a main fuse from the box of spares, a kettle inverter on the cable that was left over.
build({ name: "weekend van", voltage: 12, insulationC: 75 });

const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 200, maxDischargeA: 200 });
const main = fuseHolder({ name: "main fuse", ratingA: 300 });
const plus = busBar({ name: "plus bus", ratedA: 250 });
const minus = busBar({ name: "minus bus", ratedA: 250, side: "negative" });
cable({ name: "bank plus", from: bank.positive, to: main.line, lengthFt: 1, gauge: 4 });
cable({ name: "main to bus", from: main.load, to: plus.stud, lengthFt: 2, gauge: 4 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 3, gauge: 4 });
const kettle = inverter({ name: "inverter", continuousW: 1000 });
circuit({
  name: "inverter cable",
  from: plus.stud,
  returnTo: minus.stud,
  to: kettle,
  oneWayFt: 6,
  gauge: 6,
  protect: 80,
});
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100 });
cable({ name: "panel feed", from: plus.stud, to: panel.feed, lengthFt: 8, gauge: 10 });
cable({ name: "panel return", from: panel.negative, to: minus.stud, lengthFt: 8, gauge: 10 });
const pump = motor({ name: "water pump", runningA: 7, startingA: 28 });
circuit({ name: "pump wires", from: panel.branch, to: pump, oneWayFt: 14, gauge: 16, protect: 10 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 12, gauge: 16, protect: 10 });
circuit({ name: "roof fan", from: panel.branch, load: 3, oneWayFt: 16, gauge: 18, protect: 5 });
circuit({ name: "USB sockets", from: panel.branch, load: 6, oneWayFt: 18, gauge: 18, protect: 10 });
