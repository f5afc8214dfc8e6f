import type { Part } from "./network.ts";
import type { FoundCircuit } from "./network-records.ts";
import type { CircuitRun, DropLimit } from "./run.ts";
import { keptIfEqual } from "./same-plain-data.ts";

/** A circuit of the network that ends at a part of the plan. */
interface EndingAtPart {
  readonly circuit: CircuitRun;
  readonly values: FoundCircuit["values"];
  /** Index of the part. */
  readonly part: number;
  /** Whether the part itself states a limit. */
  readonly partStates: boolean;
}

/**
 * A circuit that ends at a load, inverter or charger, and that device, have one drop limit. The circuit's counts if it states one
 * or is critical, and the lesser of both if the device states one as well; otherwise the device's counts for the circuit too.
 */
export function shareDropLimits(
  endings: readonly EndingAtPart[],
  parts: readonly Part[],
): {
  readonly parts: readonly Part[];
  readonly circuits: ReadonlyMap<number, CircuitRun>;
} {
  const limits = new Map<number, DropLimit>();
  for (const { circuit, values, part: index, partStates } of endings) {
    const own = limitOf(parts[index]);
    if (!own || (values.dropLimitPercent === undefined && !values.critical)) continue;
    const known = limits.get(index) ?? (partStates ? own : undefined);
    if (!known || circuit.dropLimitPercent < known.dropLimitPercent) limits.set(index, onlyLimit(circuit));
  }
  const after = Array.from(parts, (part) => {
    const limit = limits.get(part.index);
    return limit ? keptPart(part, { ...part, ...limit } as Part) : part;
  });
  const circuits = new Map<number, CircuitRun>();
  for (const { circuit, values, part } of endings) {
    const limit = limitOf(after[part]);
    if (limit && values.dropLimitPercent === undefined && !values.critical)
      circuits.set(circuit.record, keptCircuit(circuit, { ...circuit, ...limit }));
  }
  return { parts: after, circuits };
}

const keptPart = keptIfEqual<Part, Part>();
const keptCircuit = keptIfEqual<CircuitRun, CircuitRun>();

function limitOf(part: Part | undefined): DropLimit | undefined {
  return part && "dropLimitPercent" in part ? onlyLimit(part) : undefined;
}

function onlyLimit({ dropLimitPercent, dropLimitStated, dropLimitSource }: DropLimit): DropLimit {
  return { dropLimitPercent, dropLimitStated, dropLimitSource };
}
