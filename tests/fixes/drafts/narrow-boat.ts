import { battery, build, busBar, cable, circuit, disconnect, fuseHolder, fusePanel } from "loomwright";

build({ name: "narrow boat", criticalDropPercent: 3 });
const bank = battery({ chemistry: "AGM", capacityAh: 220 });
const main = fuseHolder({ ratingA: 250 });
const isolator = disconnect({ ratedA: 300 });
const negative = busBar({ ratedA: 150 });
const panel = fusePanel({ positions: 8, ratedA: 100, negativeBus: false });
cable({ from: bank.positive, to: main.line, lengthM: 0.3, mm2: 25 });
cable({ from: main.load, to: isolator.line, lengthM: 0.5, mm2: 25 });
cable({ name: "feed forward", from: isolator.load, to: panel.feed, lengthM: 8, mm2: 10 });
cable({ name: "return aft", from: negative.stud, to: bank.negative, lengthM: 8, mm2: 10 });
const to = negative.stud;
circuit({
  name: "bilge pump",
  from: panel.branch,
  returnTo: to,
  load: 6,
  oneWayM: 4,
  mm2: 1.5,
  protect: 10,
  critical: true,
});
circuit({
  name: "nav lights",
  from: panel.branch,
  returnTo: to,
  load: 2,
  oneWayM: 9,
  mm2: 1,
  protect: 5,
  critical: true,
});
circuit({ name: "fridge", from: panel.branch, returnTo: to, loadW: 60, oneWayM: 3, mm2: 2.5, protect: 15 });
circuit({
  name: "cabin heater",
  from: panel.branch,
  returnTo: to,
  load: 10,
  oneWayM: 5,
  mm2: 2.5,
  protect: 15,
  critical: true,
});
circuit({ name: "horn", from: panel.branch, returnTo: to, load: 8, oneWayM: 6, mm2: 1.5, protect: 10 });
