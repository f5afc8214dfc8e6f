import { circuit } from "loomwright";

// plan/too-slow: the loop never ends, because `run` is never counted up.
let run = 0;
while (run < 4) {
  circuit({ name: `shelf ${run}`, load: 1, oneWayFt: 8, gauge: 16, insulationC: 105, protect: 2 });
  if (run > 4) run += 1;
}
