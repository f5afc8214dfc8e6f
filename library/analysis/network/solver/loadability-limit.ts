import type { Branch, Netlist } from "./netlist.ts";
import { type NodeVoltages, voltageOver } from "./node-voltages.ts";
import type { OperatingPoint, OperatingPointSolver } from "./operating-point.ts";

/**
 * How much of the constant powers a network can feed if it cannot feed all: the greatest share that still has an operating
 * point. Found by bisection; each search starts at the last point found.
 */
export type LoadabilityLimit =
  | { readonly state: "found"; readonly point: OperatingPoint }
  | {
      readonly state: "none";
      readonly why: "collapse" | "not-converged";
      readonly reachedShare: number;
      /** Parts of constant power, the one whose voltage falls the fastest at the limit first. */
      readonly culprits: readonly number[];
    };

export function loadabilityLimit(netlist: Netlist, solver: OperatingPointSolver): LoadabilityLimit {
  const unloaded = solver.solve(0);
  if (unloaded.state !== "found") {
    return { state: "none", why: "not-converged", reachedShare: 0, culprits: [] };
  }
  // The first search began at voltages that sources with a limit may not be able to hold. The held voltages, and the devices
  // that run at all, are known now.
  solver.takeAsUnloaded(unloaded.voltages);
  const full = solver.solve(1, unloaded.voltages);
  if (full.state === "found") return { state: "found", point: full };
  let reachedShare = 0;
  let reached = unloaded;
  let failedShare = 1;
  let anyCollapsed = full.state === "collapsed";
  for (let round = 0; round < mostRounds; round++) {
    while (failedShare - reachedShare > shareAccuracy) {
      const share = (reachedShare + failedShare) / 2;
      const next = solver.solve(share, reached.voltages);
      if (next.state === "found") {
        reached = next;
        reachedShare = share;
      } else {
        failedShare = share;
        anyCollapsed ||= next.state === "collapsed";
      }
    }
    // The search tried that share from further off. It may succeed from close by; then there is more above it.
    const again = solver.solve(failedShare, reached.voltages);
    if (again.state !== "found") break;
    if (failedShare === 1) return { state: "found", point: again };
    reached = again;
    reachedShare = failedShare;
    failedShare = 1;
  }
  return {
    state: "none",
    why: anyCollapsed ? "collapse" : "not-converged",
    reachedShare,
    culprits: collapsingLoadsAt(netlist, solver, { share: reachedShare, voltages: reached.voltages }),
  };
}

const mostRounds = 10;
/** Three significant figures are shown. */
const shareAccuracy = 1e-5;

/** Constant powers by the relative voltage loss of each for a small rise of power; those that lose hardly any are left out. */
function collapsingLoadsAt(
  netlist: Netlist,
  solver: OperatingPointSolver,
  at: { share: number; voltages: NodeVoltages },
): readonly number[] {
  solver.goTo(at.voltages);
  const change = solver.sensitivity(at.share);
  const draws: { part: number; between: Branch }[] = [
    ...netlist.powers.map((power) => ({ part: power.part, between: power })),
    ...netlist.converters.flatMap(({ part, input, passes }) => (passes ? [] : [{ part, between: input }])),
  ];
  const falls = draws
    .map(({ part, between }) => {
      const voltageV = voltageOver(at.voltages, between);
      const fallV = Math.abs(change[between.a]! - change[between.b]!);
      return { part, fallShare: voltageV === 0 ? 0 : fallV / Math.abs(voltageV) };
    })
    .filter(({ fallShare }) => fallShare > 0)
    .sort((one, other) => other.fallShare - one.fallShare);
  const worst = falls[0]?.fallShare ?? 0;
  return falls.filter(({ fallShare }) => fallShare >= worst / 10).map(({ part }) => part);
}
