import { type AnyPartDescriptor, descriptorOfWord } from "../../model/parts/index.ts";
import type { LineEnd, Schematic, SchematicPart, SymbolName } from "./schematic.ts";

/** Whether the line is read from its `from` to its `to`: away from the sources, towards the loads. */
export function readsForward({ parts }: Schematic, from: LineEnd, to: LineEnd): boolean {
  const [one, other] = [stepsOut(parts[from.part]!, from), stepsOut(parts[to.part]!, to)];
  // The order of the plan breaks a tie, the same way for every line between the two; no circle arises.
  return one === other ? from.part <= to.part : one < other;
}

/** The side of a part that a terminal must be on, for any line that ends there; undefined: the side that the line comes from. */
export function fixedSide(symbol: SymbolName, terminal: string): "west" | "east" | undefined {
  const { role, ports } = descriptorOfSymbol(symbol);
  if (role !== "converter") return undefined;
  const draws = ports.some(
    (port) => port.does === "draws" && [port.positive, port.negative].includes(terminal),
  );
  return draws ? "west" : "east";
}

/** Greater further from the sources. A converter takes on one side and gives on the other. */
function stepsOut({ symbol, hops }: SchematicPart, { terminal }: LineEnd): number {
  const side = fixedSide(symbol, terminal);
  if (side) return side === "west" ? beyondAll - 1 : -2;
  const { role, chargesWith } = descriptorOfSymbol(symbol);
  switch (role) {
    case "source":
      return chargesWith === undefined ? -1 : -3;
    case "consumer":
      return beyondAll + hops;
    case "converter":
    case "passes current on":
    case "metal":
      return hops;
  }
}

const beyondAll = 1e6;

/** A supply that the plan does not state is drawn as a battery is. */
function descriptorOfSymbol(symbol: SymbolName): AnyPartDescriptor {
  return descriptorOfWord(symbol === "supply" ? "battery" : symbol);
}
