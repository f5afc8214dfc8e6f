import { battery, build, cable, circuit, fusePanel } from "loomwright";

// A first draft of a bus: one panel feeds the next, all with 10 AWG.
build({ name: "chained panels", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 200 });
const first = fusePanel({ name: "front panel", positions: 6, ratedA: 100 });
const second = fusePanel({ name: "rear panel", positions: 6, ratedA: 100 });
cable({ name: "bank plus", from: bank.positive, to: first.feed, lengthFt: 6, gauge: 10, protect: 100 });
cable({ name: "bank minus", from: first.negative, to: bank.negative, lengthFt: 6, gauge: 10 });
cable({ name: "rear plus", from: first.feed, to: second.feed, lengthFt: 15, gauge: 10 });
cable({ name: "rear minus", from: second.negative, to: first.negative, lengthFt: 15, gauge: 10 });
circuit({ name: "lamps", from: first.branch, load: 4, oneWayFt: 10, gauge: 16, protect: 10 });
circuit({ name: "heater", from: second.branch, load: 10, oneWayFt: 6, gauge: 14, protect: 15 });
circuit({ name: "fridge", from: second.branch, load: 6, oneWayFt: 10, gauge: 16, protect: 20 });
