import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A first draft of a canal boat: a thick trunk along the hull, and three thin wires tapped off it.
build({ name: "trunk with taps", voltage: 12, insulationC: 105, installedIn: "boat" });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 200 });
const off = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: 150 });
const mid = busBar({ name: "mid tap" });
const bow = busBar({ name: "bow tap" });
const minus = busBar({ name: "minus" });
cable({ name: "trunk", from: off.load, to: mid.stud, lengthFt: 15, gauge: 2 });
cable({ name: "trunk to bow", from: mid.stud, to: bow.stud, lengthFt: 15, gauge: 6 });
cable({ name: "minus trunk", from: minus.stud, to: bank.negative, lengthFt: 15, gauge: 2 });
circuit({ name: "galley lamp", from: mid.stud, returnTo: minus.stud, load: 2, oneWayFt: 6, gauge: 16 });
circuit({ name: "water pump", from: mid.stud, returnTo: minus.stud, load: 7, oneWayFt: 10, gauge: 14 });
circuit({ name: "head light", from: bow.stud, returnTo: minus.stud, load: 8, oneWayFt: 18, gauge: 14 });
