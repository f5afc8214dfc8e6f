import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A van in one evening: every wire 16 AWG, every fuse 20 A, and the long way round.
build({ name: "first van", voltage: 12 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 100 });
const mainSwitch = disconnect({ name: "switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 8 });
cable({ name: "plus", from: bank.positive, to: mainSwitch.line, lengthFt: 3, gauge: 10, protect: 100 });
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 8, gauge: 12 });
cable({ name: "minus", from: panel.negative, to: bank.negative, lengthFt: 10, gauge: 12 });
circuit({ name: "fridge", from: panel.branch, load: 6, oneWayFt: 14, gauge: 16, protect: 20 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 22, gauge: 16, protect: 20 });
circuit({ name: "pump", from: panel.branch, load: 7, oneWayFt: 18, gauge: 16, protect: 20, critical: true });
