import { battery, build, cable, circuit, disconnect, fusePanel, load } from "loomwright";

// A radio that works from 11.5 V, at the end of everything.
build({ name: "signal cabin", voltage: 12, insulationC: 90 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 60, internalMilliohm: 8 });
const mainSwitch = disconnect({ name: "switch", ratedA: 60 });
const panel = fusePanel({ name: "panel", positions: 4 });
cable({ name: "plus", from: bank.positive, to: mainSwitch.line, lengthFt: 6, gauge: 12, protect: 30 });
cable({ name: "to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 10, gauge: 12 });
cable({ name: "minus", from: panel.negative, to: bank.negative, lengthFt: 16, gauge: 12 });
const radio = load({ name: "radio", powerW: 120, minimumV: 11.2, critical: true });
circuit({ name: "radio cable", from: panel.branch, to: radio, oneWayFt: 8, gauge: 14, protect: 15 });
circuit({ name: "fan", from: panel.branch, load: 8, oneWayFt: 9, gauge: 16, protect: 10 });
