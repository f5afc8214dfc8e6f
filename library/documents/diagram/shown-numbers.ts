import { numberText } from "../schedules/cells.ts";
import type { NumberedWires } from "../schedules/wire-numbers.ts";
import type { WireColours, WireNumbers } from "./drawing.ts";

/** The numbers of a plan's wires in the form a drawing needs; those not kept yet are marked as in the schedules. */
export function shownNumbers({ wires }: NumberedWires): WireNumbers {
  const numbers = new Map(wires.map((one) => [`${one.wire.record} ${one.wire.role}`, numberText(one)]));
  return (record, role) => numbers.get(`${record} ${role}`);
}

/** The colours of a plan's wires, as the wire schedule states them. */
export function shownColours({ wires }: NumberedWires): WireColours {
  const colours = new Map(wires.map(({ wire }) => [`${wire.record} ${wire.role}`, wire.colour]));
  return (record, role) => colours.get(`${record} ${role}`);
}
