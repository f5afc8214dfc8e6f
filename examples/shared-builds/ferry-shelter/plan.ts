import { circuit } from "loomwright";
import { workLights } from "../shared/runs.ts";

// Where people wait for the small ferry: a light, and the lamp that calls it.
workLights("bench light", 11);
circuit({
  name: "calling lamp",
  load: 2,
  critical: true,
  oneWayFt: 30,
  gauge: 12,
  protect: 5,
  insulationC: 105,
});
