import { build, circuit } from "loomwright";

// A launch: everything beside the engine in wire for the cabin.
build({ name: "launch", voltage: 12, insulationC: 75, engineSpace: true });

circuit({ name: "blower", load: 8, oneWayFt: 14, gauge: 14, protect: 30, critical: true });
circuit({ name: "fuel pump", load: 6, oneWayFt: 10, gauge: 16, protect: 15, critical: true });
circuit({ name: "sea-water pump", load: 22, oneWayFt: 8, gauge: 12, protect: 30 });
