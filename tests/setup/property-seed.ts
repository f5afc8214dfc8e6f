import fc from "fast-check";
import { sampledRuns } from "./sampled.ts";

// Checks of "any" plan or network use the same ones each time: the gate gives the same result for the same text. A search for new
// ones is deliberate: LOOMWRIGHT_SEED is any whole number.
fc.configureGlobal({
  ...fc.readConfigureGlobal(),
  seed: Number(process.env.LOOMWRIGHT_SEED ?? 1),
  numRuns: sampledRuns(100),
});
