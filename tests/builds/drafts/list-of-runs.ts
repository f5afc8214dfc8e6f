import { build, circuit } from "loomwright";

// A table of runs, copied from a forum.
build({ name: "list of runs", voltage: 12 });

const runs = [
  { name: "fridge", load: 8, oneWayFt: 25, gauge: 16, protect: 15 },
  { name: "heater", load: 20, oneWayFt: 12, gauge: 14, protect: 40 },
  { name: "lamps", load: 4, oneWayFt: 30, gauge: 18, protect: 7 },
  { name: "compressor", load: 45, oneWayFt: 9, gauge: 10, protect: 50 },
] as const;
for (const run of runs) circuit(run);
