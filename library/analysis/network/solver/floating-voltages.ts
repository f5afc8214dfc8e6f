import { type DisjointSets, joinedBy } from "../../../model/disjoint-sets.ts";
import type { Branch, ConverterBranch, Netlist } from "./netlist.ts";
import { moved, type NodeVoltages, voltageOver } from "./node-voltages.ts";

/**
 * Sets floating components, connected only to sources that currently deliver nothing, to the highest of those sources' output
 * voltages. An example is the conductors behind an open disconnect between two chargers and the bank. Above that voltage no
 * source delivers anything, so any higher one fulfils the equations as well, and a search may end at any of them.
 * No current changes.
 */
export function withFloatingVoltages(netlist: Netlist, voltages: NodeVoltages): NodeVoltages {
  const outputs: Output[] = [
    ...netlist.sources.map((source) => ({ spareV: spareOf(source, voltages), ...source })),
    ...netlist.converters.map((one) => ({
      input: one.input,
      spareV: spareOfConverter(one, voltages),
      ...one.output,
    })),
  ];
  const blocked = outputs.filter(({ spareV }) => spareV >= 0);
  if (blocked.length === 0) return voltages;
  const { conductors, resistors, batteries, arrays, currents, powers } = netlist;
  const giving = outputs.filter(({ spareV }) => spareV < 0);
  const inputs = giving.flatMap(({ input }) => (input ? [input] : []));
  const steady = [conductors, resistors, batteries, arrays, currents, powers];
  const pieces = joinedBy(netlist.nodes, ...steady, giving, inputs);
  const shiftV = shiftsOf(blocked, pieces, netlist.references);
  if (shiftV.size === 0) return voltages;
  return moved(
    voltages,
    Float64Array.from({ length: netlist.nodes }, (_, node) => shiftV.get(pieces.find(node)) ?? 0),
  );
}

/** The output of a source, and by how much the voltage there could fall before it delivers; below 0 if it does deliver. */
interface Output extends Branch {
  readonly spareV: number;
  readonly input?: Branch;
}

function spareOf(source: Branch & { readonly outputV: number }, voltages: NodeVoltages): number {
  return voltageOver(voltages, source) - source.outputV;
}

/** A controller that passes current on also gives nothing above the voltage of its input. */
function spareOfConverter(
  { input, output, outputV, passes }: ConverterBranch,
  voltages: NodeVoltages,
): number {
  const heldV = passes ? Math.min(outputV, voltageOver(voltages, input)) : outputV;
  return spareOf({ outputV: heldV, ...output }, voltages);
}

/** Margin that keeps rounding from making a blocked source deliver current. */
const leastSpareV = 1e-10;

/**
 * The voltage to add, by component. Components with a reference keep their voltages. From them on, each next one comes as near
 * as the first of the sources between them allows.
 */
function shiftsOf(
  silent: readonly Output[],
  pieces: DisjointSets,
  references: readonly number[],
): ReadonlyMap<number, number> {
  const shiftV = new Map<number, number>();
  const settled = new Set(references.map(pieces.find));
  for (let waiting = silent; waiting.length > 0; ) {
    const nearV = new Map<number, { lowerV: number; raiseV: number }>();
    const later: Output[] = [];
    for (const source of waiting) {
      const [plus, minus] = [pieces.find(source.a), pieces.find(source.b)];
      if (settled.has(plus) === settled.has(minus)) {
        if (!settled.has(plus) && plus !== minus) later.push(source);
        continue;
      }
      const piece = settled.has(minus) ? plus : minus;
      const spareV = source.spareV - leastSpareV + (shiftV.get(plus) ?? 0) - (shiftV.get(minus) ?? 0);
      const near = nearV.get(piece) ?? { lowerV: Number.POSITIVE_INFINITY, raiseV: Number.POSITIVE_INFINITY };
      nearV.set(piece, near);
      if (piece === plus) near.lowerV = Math.min(near.lowerV, spareV);
      else near.raiseV = Math.min(near.raiseV, spareV);
    }
    if (nearV.size === 0) break;
    for (const [piece, { lowerV, raiseV }] of nearV) {
      shiftV.set(piece, lowerV < Number.POSITIVE_INFINITY ? -lowerV : raiseV);
      settled.add(piece);
    }
    waiting = later;
  }
  return shiftV;
}
