import { build, circuit } from "loomwright";

build({ name: "canal camper", voltage: 12 });
circuit({ name: "winch", load: 80, oneWayFt: 18, gauge: 6, protect: 100 });
circuit({ name: "fridge", loadW: 60, minimumV: 10.5, oneWayFt: 16, gauge: 16, protect: 20, critical: true });
circuit({ name: "bow light", load: 1.5, oneWayFt: 24, gauge: 18 });
circuit({ name: "pump", load: 7, oneWayFt: 12, gauge: 18, protect: 7, critical: true });
circuit({ name: "radio", load: 10, oneWayFt: 10, gauge: 14, protect: 12 });
circuit({ name: "stove", load: 12, oneWayFt: 8, gauge: 10, protect: 40, engineSpace: true });
