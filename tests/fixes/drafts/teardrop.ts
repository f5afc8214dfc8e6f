import { battery, cable, circuit, fusePanel, motor } from "loomwright";

const house = battery({ chemistry: "AGM", capacityAh: 100 });
const panel = fusePanel({ positions: 6 });
const pump = motor({ runningA: 5, startingA: 20 });
cable({ from: house.positive, to: panel.feed, lengthFt: 12, gauge: 14, protect: 30 });
cable({ from: panel.negative, to: house.negative, lengthFt: 12, gauge: 14 });
circuit({ name: "galley pump", from: panel.branch, to: pump, oneWayFt: 10, gauge: 16, protect: 7.5 });
circuit({
  name: "cool box",
  from: panel.branch,
  load: 4.5,
  oneWayFt: 10,
  gauge: 16,
  protect: 5,
  minimumV: 11.4,
});
circuit({ name: "cabin light", from: panel.branch, load: 1, oneWayFt: 12, gauge: 18, protect: 12 });
circuit({ name: "fan", from: panel.branch, load: 2, oneWayFt: 12, gauge: 18, protect: 3 });
