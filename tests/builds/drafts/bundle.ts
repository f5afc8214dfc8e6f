import { build, circuit } from "loomwright";

// Eight loaded wires in one loom, each at its limit.
build({ name: "loom", voltage: 12, insulationC: 75 });

for (const [name, load] of [
  ["left lamp", 12],
  ["right lamp", 12],
  ["pump", 14],
  ["fan", 10],
] as const)
  circuit({ name, load, oneWayFt: 9, gauge: 14, bundledWith: 7, protect: 20 });
