import { circuit } from "loomwright";

// A first plan without a word about the build.
circuit({ name: "fridge", load: 10, oneWayFt: 20, gauge: 18, protect: 25 });
circuit({ name: "lamp", loadW: 30, oneWayFt: 35, gauge: 18 });
circuit({ name: "inverter", loadW: 600, oneWayFt: 10, gauge: 12, critical: true, protect: 60 });
