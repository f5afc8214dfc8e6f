import type { Network } from "../model/network.ts";
import type { Run } from "../model/run.ts";
import { type LoadForHours, ratingOver } from "./load-for-hours.ts";
import { machineLimit } from "./machine-protection.ts";
import { crankingFeeds } from "./network/topology/cranking-feeds.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import type { ConductorWorst } from "./network-result.ts";
import { permittedFuseIn } from "./permitted-fuse.ts";
import { withoutDust } from "./rounding-dust.ts";
import { isOnInNone } from "./single-draw.ts";

/** The properties of a run that follow from its network. */
type RunCurrent = Pick<
  Run,
  | "loadA"
  | "forHours"
  | "lowVoltageA"
  | "estimate"
  | "loadEstimate"
  | "loadIsOf"
  | "loadIsLeast"
  | "machineMaxA"
  | "maxFuseA"
  | "crankingFeed"
>;

/**
 * The runs of a network with their maximum currents, A. Both conductors of a circuit are one run. Usually they carry the same
 * current; with another return joined, one carries more. A run whose current is the same as at the last call is the same object.
 */
export function runsWithCurrents(network: Network, conductors: readonly ConductorWorst[]): readonly Run[] {
  const currents = new Map<Run, RunCurrent>();
  const cranking = crankingFeeds(networkGraph(network));
  network.conductors.forEach(({ run }, index) => {
    const { worst, design, least, forHours: exactForHours } = conductors[index] ?? {};
    const forHours = exactForHours && withoutDustForHours(exactForHours);
    const known: RunCurrent = currents.get(run) ?? run;
    const flows = worst ?? least?.worst;
    const loadA = Math.max(known.loadA, withoutDust(flows?.currentA ?? 0));
    const atLow = design ?? least?.design;
    const atLowA = withoutDust(atLow?.currentA ?? 0);
    const isHighest = atLow !== undefined && atLowA >= Math.max(loadA, known.lowVoltageA ?? 0);
    const lowVoltageA = isHighest ? atLowA : (known.lowVoltageA ?? 0);
    const estimate = isHighest ? atLow.estimate : known.estimate;
    const loadEstimate = loadA > known.loadA ? flows?.estimate : known.loadEstimate;
    const asksMore =
      // A load that the circuit states itself runs as long as the circuit states.
      !run.statesLoad &&
      forHours &&
      forHours.continuousA < loadA &&
      (!known.forHours || ratingOver(forHours) > ratingOver(known.forHours));
    const greatestForHours = asksMore ? forHours : known.forHours;
    const decides = isHighest ? atLow : loadA > known.loadA ? flows : undefined;
    const loadIsOf = decides ? soleDevice(network, run, decides.alone) : known.loadIsOf;
    const machine = machineLimit(network, index);
    const machineMaxA = machine?.maxA ?? known.machineMaxA;
    const maxFuseA = permittedFuseIn(network, index) ?? known.maxFuseA;
    currents.set(run, {
      loadA,
      ...(greatestForHours && { forHours: greatestForHours }),
      ...(lowVoltageA > loadA && { lowVoltageA }),
      ...(estimate && { estimate }),
      ...(loadEstimate && { loadEstimate }),
      ...(loadIsOf && { loadIsOf }),
      ...((!worst || known.loadIsLeast) && { loadIsLeast: true }),
      ...(machineMaxA !== undefined && { machineMaxA }),
      ...(maxFuseA !== undefined && { maxFuseA }),
      ...((cranking.has(index) || known.crankingFeed) && { crankingFeed: true }),
    });
  });
  return [...currents].map(([run, current]) => runWith(run, current));
}

function withoutDustForHours({ currentA, continuousA }: LoadForHours): LoadForHours {
  return { currentA: withoutDust(currentA), continuousA: withoutDust(continuousA) };
}

/** Not for the load of the circuit itself, which needs no mention. */
function soleDevice(network: Network, run: Run, alone: number | undefined): Run["loadIsOf"] {
  const part = alone === undefined ? undefined : network.parts[alone];
  if (!part || part.record === run.record) return undefined;
  return { record: part.record, name: part.name, onInNone: isOnInNone(network, part) };
}

/** By run as its plan states it: the last one with a current. */
const lastOf = new WeakMap<Run, { readonly current: string; readonly run: Run }>();

function runWith(stated: Run, current: RunCurrent): Run {
  const key = JSON.stringify(current);
  const last = lastOf.get(stated);
  if (last?.current === key) return last.run;
  const { lowVoltageA: _, estimate: __, loadEstimate: ___, loadIsOf: ____, ...rest } = stated;
  const run = { ...rest, ...current };
  lastOf.set(stated, { current: key, run });
  return run;
}
