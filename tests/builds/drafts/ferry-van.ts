import { battery, build, busBar, cable, circuit, fusePanel, inverter } from "loomwright";

// A van of 12 V: a second lead passes the main fuse by, to the inverter's bus.
build({ name: "ferry van", voltage: 12 });

const bank = battery({ name: "leisure battery", chemistry: "LiFePO4", capacityAh: 200 });
const bus = busBar({ name: "plus bus", ratedA: 250 });
const minus = busBar({ name: "minus bus", side: "negative", ratedA: 250 });
cable({ name: "main plus", from: bank.positive, to: bus.stud, lengthFt: 2, gauge: 2, protect: 150 });
cable({ name: "second plus", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: 2 });
cable({ name: "main minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
const panel = fusePanel({ name: "panel", positions: 6 });
cable({ name: "panel feed", from: bus.stud, to: panel.feed, lengthFt: 6, gauge: 8 });
cable({ name: "panel return", from: panel.negative, to: minus.stud, lengthFt: 6, gauge: 8 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 15, gauge: 16, protect: 10 });
circuit({ name: "pump", from: panel.branch, load: 8, oneWayFt: 20, gauge: 16, protect: 10 });
circuit({ name: "lamps", from: panel.branch, load: 2, oneWayFt: 25, gauge: 18, protect: 10 });
const mains = inverter({ name: "inverter", continuousW: 1500 });
circuit({ name: "inverter leads", from: bus.stud, returnTo: minus.stud, to: mains, oneWayFt: 4, gauge: 4 });
