import type { Branch } from "./netlist.ts";

/**
 * A voltage in two parts. The coarse one is a whole number of 2⁻¹⁴ V, which makes its differences exact; the fine one is
 * the small rest. So the difference between the ends of a micro-ohm, at 12 V, keeps all its digits.
 */
export interface NodeVoltages {
  readonly coarse: Float64Array;
  readonly fine: Float64Array;
}

/** All zero. */
export function zeroVoltages(nodes: number): NodeVoltages {
  return { coarse: new Float64Array(nodes), fine: new Float64Array(nodes) };
}

export function copyOf({ coarse, fine }: NodeVoltages): NodeVoltages {
  return { coarse: coarse.slice(), fine: fine.slice() };
}

export function copyVoltages(from: NodeVoltages, to: NodeVoltages): void {
  to.coarse.set(from.coarse);
  to.fine.set(from.fine);
}

export function voltageOver({ coarse, fine }: NodeVoltages, { a, b }: Branch): number {
  return coarse[a]! - coarse[b]! + (fine[a]! - fine[b]!);
}

/** By how much the voltage over a branch is above a level; subtracted from the coarse part, where it costs no digits. */
export function voltageAbove({ coarse, fine }: NodeVoltages, { a, b }: Branch, levelV: number): number {
  return coarse[a]! - coarse[b]! - levelV + (fine[a]! - fine[b]!);
}

/** `to` = `from` + `length` · `step`, with coarse and fine parts normalised. `to` and `from` may be the same. */
export function move(from: NodeVoltages, to: NodeVoltages, step: Float64Array, length: number): void {
  for (let node = 0; node < step.length; node++) {
    const fine = from.fine[node]! + length * step[node]!;
    const carry = Math.round(fine * coarseParts) / coarseParts;
    to.coarse[node] = from.coarse[node]! + carry;
    to.fine[node] = fine - carry;
  }
}

const coarseParts = 2 ** 14;

/** The voltages with `addedV` added, by node. */
export function moved(voltages: NodeVoltages, addedV: Float64Array): NodeVoltages {
  const to = copyOf(voltages);
  move(voltages, to, addedV, 1);
  return to;
}
