import type { Measured, Run } from "../model/run.ts";
import { ampacityOf } from "./ampacity.ts";
import type { CircuitResult, KnownDrop } from "./circuit-result.ts";
import { protectionRangeOf } from "./protection-range.ts";
import { dropOf } from "./voltage-drop.ts";

/**
 * All results for one circuit. A pure function of its argument, made to be called on every keystroke
 * and for every size that a completion offers: `analyseCircuit({ ...circuit, conductor })` is the result for another size.
 */
export function analyseCircuit(circuit: Measured): CircuitResult & { readonly drop: KnownDrop };
export function analyseCircuit(circuit: Run): CircuitResult;
export function analyseCircuit(circuit: Run): CircuitResult {
  const ampacity = ampacityOf(circuit);
  return {
    ampacity,
    drop: dropOf(circuit, ampacity),
    protection: protectionRangeOf(circuit, ampacity),
  };
}
