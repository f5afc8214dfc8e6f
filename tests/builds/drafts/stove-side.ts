import { build, circuit } from "loomwright";

// A galley: wires of cheap insulation where it is hot.
build({ name: "galley", voltage: 12, insulationC: 60, ambientC: 55 });

circuit({ name: "oven lamp", load: 2, oneWayFt: 8, gauge: 18, protect: 10 });
circuit({ name: "hood", load: 5, oneWayFt: 12, gauge: 16, protect: 20 });
circuit({ name: "hob igniter", load: 1, oneWayFt: 6, gauge: 16, protect: 5 });
