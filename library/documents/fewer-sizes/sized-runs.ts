import { crossSectionMm2 } from "../../analysis/copper-area.ts";
import { sizesAbove } from "../../analysis/made-sizes.ts";
import type { Judgement } from "../../judge.ts";
import type { Conductor } from "../../model/run.ts";
import type { Termination } from "../../plan/termination.ts";
import { withKnownCurrent } from "../../rules/rule.ts";
import { type Wire, wiresOf } from "../schedules/wires.ts";

/** A circuit or cable of the plan, with its possible sizes. */
export interface SizedRun {
  readonly record: number;
  readonly name: string;
  /** Its own size first, then the thicker ones in use, thinnest first. All with its own number of parallel wires. */
  readonly choices: readonly [Conductor, ...Conductor[]];
  /** Cut length of all its wires together, m. */
  readonly wireM: number;
  /** The plan does not state which sizes its terminals take: it keeps its size. */
  readonly heldByTerminal: boolean;
}

/**
 * Every run of the plan. One keeps its size if it is unknown whether a thicker one fits its terminals, if its length is unknown, or if
 * it was not judged: nothing could be proved of it then.
 */
export function sizedRuns(plan: Judgement): readonly SizedRun[] {
  const judged = new Set(withKnownCurrent(plan.circuits).map(({ circuit }) => circuit.record));
  const wires = new Map<number, Wire[]>();
  for (const wire of singleWires(plan)) wires.set(wire.record, [...(wires.get(wire.record) ?? []), wire]);
  const sizes = [...wires.values()].map(([wire]) => wire!.size);
  return [...wires].map(([record, own]): SizedRun => {
    const { size, name } = own[0]!;
    const heldByTerminal = own.some(({ from, to }) => isTight(from.termination) || isTight(to.termination));
    const isMeasured = own.every(({ cutLengthM }) => cutLengthM !== undefined);
    const thicker = heldByTerminal || !judged.has(record) || !isMeasured ? [] : thickerInUse(size, sizes);
    const wireM = own.reduce((sum, wire) => sum + wireOf(wire), 0);
    return { record, name, choices: [size, ...thicker], wireM, heldByTerminal };
  });
}

/** A two-conductor cable is bought apart from single wire, and keeps its size. */
function singleWires(plan: Judgement): readonly Wire[] {
  return wiresOf(plan).filter(({ duplex }) => duplex === undefined);
}

/** A thicker conductor must still fit: common practice, no source. */
export const mostSizesThicker = 2;

/** A ring is made for many sizes; the plan does not state the sizes that a clamp, or a receptacle for a tab, takes. */
function isTight(termination: Termination | undefined): boolean {
  return termination === "screw clamp" || termination === "6.3 mm tab";
}

function thickerInUse(size: Conductor, sizes: readonly Conductor[]): readonly Conductor[] {
  const thicker = new Map<string, Conductor>();
  for (const other of sizes) {
    if (other.system !== size.system) continue;
    const above = sizesAbove(other, size);
    if (above > 0 && above <= mostSizesThicker)
      thicker.set(sizeKey(other), { ...other, parallel: size.parallel });
  }
  return [...thicker.values()].sort((one, other) => sizesAbove(one, other));
}

function wireOf({ cutLengthM = 0, size }: Wire): number {
  return cutLengthM * size.parallel;
}

/** One text for each size that can be bought, for any number of wires side by side. */
export function sizeKey(size: Conductor): string {
  return size.system === "awg" ? `${size.awg} AWG` : `${size.mm2} mm²`;
}

/** The different sizes of some conductors, each as one wire: AWG before metric, thinnest first. */
export function differentSizes(conductors: Iterable<Conductor>): readonly Conductor[] {
  const sizes = new Map<string, Conductor>();
  for (const conductor of conductors) sizes.set(sizeKey(conductor), { ...conductor, parallel: 1 });
  return [...sizes.values()].sort(
    (one, other) =>
      Number(one.system === "metric") - Number(other.system === "metric") || sizesAbove(one, other),
  );
}

/** Copper of a run in one of its choices, mm²·m. */
export function copperOf({ choices, wireM }: SizedRun, choice: number): number {
  return crossSectionMm2(choices[choice]!) * wireM;
}
