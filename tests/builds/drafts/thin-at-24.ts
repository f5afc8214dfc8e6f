import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A first draft of a tiny house at 24 V, in metric sizes, with household wire.
build({ name: "tiny house at 24", voltage: 24, insulationC: 75, installedIn: "building" });
const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 200 });
const off = disconnect({ name: "switch", ratedA: 125 });
const panel = fusePanel({ name: "panel", positions: 8, ratedA: 80, branchRatedA: 20 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthM: 0.5, mm2: 16, protect: 125 });
cable({ name: "feed", from: off.load, to: panel.feed, lengthM: 4, mm2: 10 });
cable({ name: "minus", from: panel.negative, to: bank.negative, lengthM: 4.5, mm2: 10 });
circuit({ name: "kitchen lamps", from: panel.branch, load: 3, oneWayM: 9, mm2: 1.5, protect: 16 });
circuit({ name: "fridge", from: panel.branch, load: 4, oneWayM: 6, mm2: 1.5, protect: 16 });
circuit({ name: "well pump", from: panel.branch, load: 12, oneWayM: 22, mm2: 2.5, protect: 25 });
