import type { LineEnd, Schematic, SchematicPart, SymbolName } from "./schematic.ts";

/** Whether the line is read from its `from` to its `to`: away from the sources, towards the loads. */
export function readsForward({ parts }: Schematic, from: LineEnd, to: LineEnd): boolean {
  const [one, other] = [stepsOut(parts[from.part]!, from), stepsOut(parts[to.part]!, to)];
  // The order of the plan breaks a tie, the same way for every line between the two; no circle arises.
  return one === other ? from.part <= to.part : one < other;
}

/** The side of a part that a terminal must be on, for any line that ends there; undefined: the side that the line comes from. */
export function fixedSide(symbol: SymbolName, terminal: string): "west" | "east" | undefined {
  if (symbol === "dcDcCharger") return terminal.startsWith("input") ? "west" : "east";
  if (symbol === "solarController") return terminal.startsWith("solar") ? "west" : "east";
  return undefined;
}

/** Greater further from the sources. A converter takes on one side and gives on the other. */
function stepsOut({ symbol, hops }: SchematicPart, { terminal }: LineEnd): number {
  const side = fixedSide(symbol, terminal);
  if (side) return side === "west" ? beyondAll - 1 : -2;
  if (givesOnly.has(symbol)) return -3;
  if (takesOnly.has(symbol)) return beyondAll + hops;
  return symbol === "battery" || symbol === "supply" ? -1 : hops;
}

const beyondAll = 1e6;
const givesOnly: ReadonlySet<SymbolName> = new Set(["alternator", "shoreCharger", "solarArray"]);
const takesOnly: ReadonlySet<SymbolName> = new Set(["load", "motor", "inverter"]);
