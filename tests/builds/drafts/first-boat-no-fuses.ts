import { battery, build, cable, circuit, disconnect } from "loomwright";

// A first draft of an old boat: thin wires, hardly a fuse.
build({ name: "first boat", voltage: 12, installedIn: "boat" });
const bank = battery({ name: "battery", chemistry: "flooded lead-acid", capacityAh: 90 });
const off = disconnect({ name: "switch", ratedA: 60 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 3, gauge: 8 });
const rails = { from: off.load, returnTo: bank.negative } as const;
circuit({ ...rails, name: "bilge pump", load: 6, oneWayFt: 14, gauge: 18, critical: true });
circuit({ ...rails, name: "cabin lamps", load: 4, oneWayFt: 16, gauge: 16, protect: 20 });
circuit({ ...rails, name: "radio", load: 5, oneWayFt: 10, gauge: 16 });
circuit({ ...rails, name: "anchor lamp", load: 1, oneWayFt: 50, gauge: 18, critical: true });
