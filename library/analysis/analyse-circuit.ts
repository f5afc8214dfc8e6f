import type { Run } from "../model/run.ts";
import { ampacityOf } from "./ampacity.ts";
import type { CircuitResult } from "./circuit-result.ts";
import { protectionRangeOf } from "./protection-range.ts";
import { dropOf } from "./voltage-drop.ts";

/**
 * Everything that is computed of one circuit. A pure function of its argument, made to be called on every keystroke
 * and for every size that a completion offers: `analyseCircuit({ ...circuit, conductor })` is what another size would do.
 */
export function analyseCircuit(circuit: Run): CircuitResult {
  const ampacity = ampacityOf(circuit);
  return {
    ampacity,
    drop: dropOf(circuit, ampacity),
    protection: protectionRangeOf(circuit, ampacity),
  };
}
