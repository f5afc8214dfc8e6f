import { build, circuit } from "loomwright";

// Runs of a shed, each on its own: the door lamp has no fuse.
// Expected: error protection/missing at door lamp
// Because: 33 CFR 183.455(a): each ungrounded current-carrying conductor is protected.
build({ name: "no fuse on branch", voltage: 12, insulationC: 105 });

circuit({ name: "bench lamp", load: 2, oneWayFt: 9, gauge: 14, protect: 5 });
circuit({ name: "door lamp", load: 1, oneWayFt: 14, gauge: 14 });
