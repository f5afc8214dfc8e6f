import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A first draft of a boat: three branches straight off the battery switch, no fuse anywhere.
build({ name: "three branches", voltage: 12, installedIn: "boat" });
const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 100 });
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "battery plus", from: bank.positive, to: off.line, lengthFt: 3, gauge: 4 });
const plus = busBar({ name: "plus" });
cable({ name: "to bar", from: off.load, to: plus.stud, lengthFt: 2, gauge: 4 });
circuit({ name: "cabin lamps", from: plus.stud, returnTo: bank.negative, load: 4, oneWayFt: 12, gauge: 16 });
circuit({ name: "sounder", from: plus.stud, returnTo: bank.negative, load: 2, oneWayFt: 8, gauge: 16 });
circuit({ name: "bilge pump", from: plus.stud, returnTo: bank.negative, load: 6, oneWayFt: 14, gauge: 14 });
