import { battery, build, busBar, cable, circuit, fuseHolder, fusePanel, inverter } from "loomwright";

build({ name: "expedition truck" });
const house = battery({ chemistry: "LiFePO4", capacityAh: 300 });
const main = fuseHolder({ ratingA: 250 });
const plus = busBar({ ratedA: 250, studs: 4 });
const minus = busBar({ ratedA: 250, studs: 4 });
const panel = fusePanel({ positions: 10, ratedA: 100 });
const converter = inverter({ continuousW: 2000 });
cable({ from: house.positive, to: main.line, lengthFt: 1, gauge: "2/0" });
cable({ from: main.load, to: plus.stud, lengthFt: 2, gauge: "2/0" });
cable({ from: minus.stud, to: house.negative, lengthFt: 3, gauge: "2/0" });
circuit({
  name: "inverter",
  from: plus.stud,
  to: converter,
  returnTo: minus.stud,
  oneWayFt: 3,
  gauge: 4,
  protect: 150,
});
cable({ name: "panel feed", from: plus.stud, to: panel.feed, lengthFt: 8, gauge: 10, protect: 80 });
cable({ name: "panel return", from: panel.negative, to: minus.stud, lengthFt: 8, gauge: 10 });
circuit({
  name: "diesel heater",
  from: panel.branch,
  load: 10,
  oneWayFt: 12,
  gauge: 16,
  protect: 20,
  minimumV: 11.5,
});
circuit({ name: "compressor fridge", from: panel.branch, load: 8, oneWayFt: 15, gauge: 16, protect: 10 });
circuit({ name: "pump", from: panel.branch, load: 7, oneWayFt: 20, gauge: 16, protect: 10, critical: true });
circuit({ name: "USB", from: panel.branch, load: 4, oneWayFt: 10, gauge: 18, protect: 10 });
