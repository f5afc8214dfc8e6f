import { isDevice } from "./part-roles.ts";
import { asClosed, type PartState } from "./parts/define-part.ts";
import type { Part } from "./parts/index.ts";
import { descriptorOf } from "./parts/index.ts";
import type { Join } from "./parts/other-part.ts";

/**
 * The connections between terminals inside a part, by their indices in the network. None through loads, sources and converters;
 * but the negatives of a DC-DC charger that is not isolated are one. Fuses and contacts have the resistance that the plan or a default
 * gives them, mostly none. In any state that is not given, contacts are closed.
 */
export function internalConnections(part: Part, state: PartState = asClosed): readonly Join[] {
  if (part.kind === "part") return part.joins;
  const terminals: Readonly<Record<string, number>> = part.terminals;
  const inside = descriptorOf(part).inside?.(part, state) ?? [];
  const connections = inside.map(
    ({ between: [one, other], ohm }): Join => ({ between: [terminals[one]!, terminals[other]!], ohm }),
  );
  // A device sits on the other part's terminal, metal on metal.
  return isDevice(part) && part.mountedOn !== undefined
    ? [{ between: [part.mountedOn, part.terminals.line], ohm: 0 }, ...connections]
    : connections;
}

/** It passes current on through a resistance of its own, such as that of a shunt, or of a fuse for which the plan states one. */
export function resistsCurrent(part: Part): boolean {
  return (
    descriptorOf(part).role === "passes current on" && internalConnections(part).some(({ ohm }) => ohm > 0)
  );
}
