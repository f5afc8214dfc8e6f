import { build, circuit } from "loomwright";

// Before the battery is chosen: the runs of an allotment shed on their own, each with its fuse.
build({ name: "allotment shed", voltage: 12, insulationC: 75 });

circuit({ name: "bench lamp", load: 1.5, oneWayFt: 8, gauge: 16, protect: 3 });
circuit({ name: "greenhouse fan", load: 3, oneWayFt: 30, gauge: 12, protect: 5 });
circuit({ name: "irrigation pump", load: 8, oneWayFt: 18, gauge: 8, protect: 10, critical: true });
circuit({ name: "radio", loadW: 12, oneWayFt: 6, gauge: 16, minimumV: 11, protect: 2 });
