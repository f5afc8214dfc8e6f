import { battery, build, cable, circuit, fuseHolder, fusePanel } from "loomwright";

build({ name: "quiet bank" });
const bank = battery({ chemistry: "LiFePO4", capacityAh: 200, maxDischargeA: 200 });
const main = fuseHolder({ ratingA: 250 });
const panel = fusePanel({ positions: 6, ratedA: 100 });
cable({ from: bank.positive, to: main.line, lengthFt: 1, gauge: 2 });
cable({ name: "feed", from: main.load, to: panel.feed, lengthFt: 6, gauge: 2 });
cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: 6, gauge: 2 });
circuit({ name: "lamp", from: panel.branch, load: 3, oneWayFt: 8, gauge: 14, protect: 5 });
circuit({ name: "fridge", from: panel.branch, load: 6, oneWayFt: 8, gauge: 14, protect: 10 });
circuit({ name: "heater", from: panel.branch, load: 12, oneWayFt: 8, gauge: 12, protect: 20 });
