import type { Conductor, Run, TerminalSize } from "../model/run.ts";
import { crossSectionMm2 } from "./copper-area.ts";
import { sizesAbove } from "./made-sizes.ts";

/** The terminal that takes the least of those at the ends of a run, as far as they state it. */
export function tightestTerminal({
  terminalSizes = [],
}: Pick<Run, "terminalSizes">): TerminalSize | undefined {
  return terminalSizes.reduce<TerminalSize | undefined>(
    (tightest, one) =>
      tightest && crossSectionMm2(tightest.largest) <= crossSectionMm2(one.largest) ? tightest : one,
    undefined,
  );
}

/**
 * Whether a single wire of that size goes into every terminal of a run that states the largest. Compared by cross-section: a terminal
 * for 16 mm² takes 6 AWG (13.3 mm²).
 */
export function fitsTerminals(run: Pick<Run, "terminalSizes">, conductor: Conductor): boolean {
  const tightest = tightestTerminal(run);
  return !tightest || crossSectionMm2(conductor) <= crossSectionMm2(tightest.largest) * (1 + withinRounding);
}

/** Metric and AWG areas come from two tables. */
const withinRounding = 1e-3;

/** Whether a run may get that size: it goes into its terminals, or is no thicker than the one in the plan. */
export function mayBecome(run: Pick<Run, "terminalSizes" | "conductor">, conductor: Conductor): boolean {
  return fitsTerminals(run, conductor) || sizesAbove(conductor, run.conductor) <= 0;
}
