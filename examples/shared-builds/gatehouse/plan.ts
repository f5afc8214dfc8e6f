import { circuit } from "loomwright";
import { workLights } from "../shared/runs.ts";

// The hut beside the gate: light, and the lock of the gate itself, which must open on a weak battery too.
workLights("desk light", 9);
circuit({
  name: "gate lock",
  load: 4,
  continuous: false,
  critical: true,
  oneWayFt: 22,
  gauge: 10,
  protect: 5,
  insulationC: 105,
});
