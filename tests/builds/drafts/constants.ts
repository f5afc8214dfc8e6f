import { build, circuit } from "loomwright";

// A plan with one constant for every wire and one for every fuse.
build({ name: "constants", voltage: 12 });

const wire = 14 as const;
const fuseA = 30;
circuit({ name: "pump", load: 9, oneWayFt: 16, gauge: wire, protect: fuseA, critical: true });
circuit({ name: "fan", load: 3, oneWayFt: 12, gauge: wire, protect: fuseA });
circuit({ name: "lamps", load: 4, oneWayFt: 33, gauge: wire, protect: fuseA });
