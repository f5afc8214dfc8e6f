import { circuit } from "loomwright";
import { workLights } from "../shared/runs.ts";

// A trailer that stands beside the road for a week: lights at both ends, and a charger for the tools.
workLights("light over the bench", 8);
workLights("light at the ramp", 14);
circuit({ name: "tool charger", load: 12, oneWayFt: 6, gauge: 10, protect: 15, insulationC: 105 });
