import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A first draft of a shed at 48 V: ratings alone, no families.
build({ name: "48 volt shed", voltage: 48, installedIn: "building" });
const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 100 });
const off = disconnect({ name: "switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 60 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 6, protect: 80 });
cable({ name: "feed", from: off.load, to: panel.feed, lengthFt: 4, gauge: 6 });
cable({ name: "minus", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 8 });
circuit({ name: "lamps", from: panel.branch, load: 1, oneWayFt: 20, gauge: 16, protect: 5 });
circuit({ name: "pump", from: panel.branch, load: 6, oneWayFt: 30, gauge: 16, protect: 15 });
