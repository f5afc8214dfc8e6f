import { build, circuit } from "loomwright";

// Fuses chosen by what was in the box, all too small.
build({ name: "box of fuses", voltage: 12, insulationC: 90 });

circuit({ name: "heater", load: 25, oneWayFt: 6, gauge: 10, protect: 20 });
circuit({ name: "fridge", load: 6, oneWayFt: 9, gauge: 14, protect: 5 });
circuit({ name: "fan", load: 4, oneWayFt: 12, gauge: 14, protect: 4 });
