import type { Estimate } from "../../model/estimate.ts";
import type { Network, NetworkConductor, Part } from "../../model/network.ts";
import { isDevice, passesCurrentOn } from "../../model/part-roles.ts";
import { type LoadForHours, loadsForMinutes, ratingOver } from "../load-for-hours.ts";
import type {
  ConductorWorst,
  NetworkResult,
  PartWorst,
  ScenarioResult,
  SolvedScenario,
  WorstAlone,
  WorstInScenario,
  WorstOf,
} from "../network-result.ts";
import { estimatesOf } from "./estimates.ts";
import type { LowVoltage } from "./low-voltage.ts";
import type { NetworkTopology } from "./topology/network-topology.ts";
import { hasUnknownLength, unknownSharesOf } from "./unknown-shares.ts";
import { aloneCurrents } from "./worst-alone.ts";
import { supplyPathsOf } from "./worst-case-paths.ts";

/**
 * The worst over all scenarios, for each conductor, each part, and each path from a bank to a device. `lowVoltage`: the same scenarios
 * with nearly empty batteries; they count for currents, not for voltages. No current is less than that of any single device alone.
 */
export function worstCaseOver({
  network,
  topology,
  scenarios,
  lowVoltage,
  continuous,
  shares,
}: {
  readonly network: Network;
  readonly topology: NetworkTopology;
  readonly scenarios: readonly ScenarioResult[];
  readonly lowVoltage: LowVoltage;
  /** Scenarios without the loads that do not run for hours, by index. */
  readonly continuous: ReadonlyMap<number, SolvedScenario>;
  /** "divided": currents that divide by unknown lengths count as solved, with the shortest length for each. */
  readonly shares: "undivided" | "divided";
}): Pick<NetworkResult, "conductors" | "parts" | "supplyPaths"> {
  const solved = scenarios.filter((result): result is SolvedScenario => result.state === "solved");
  const unknown = unknownSharesOf(network);
  const atMost = (result: SolvedScenario) => (shares === "divided" ? result : unknown.atMost(result));
  // The current of a starting motor is over before it heats a conductor.
  const lastingAsSolved = solved.filter(({ scenario }) => !network.scenarios[scenario]?.momentary);
  const lasting = lastingAsSolved.map(atMost);
  const momentary = solved.filter(({ scenario }) => network.scenarios[scenario]?.momentary).map(atMost);
  const allAtLow = lowVoltage.allDevices.map(atMost);
  // Inverters and chargers take more behind a long conductor, and an unknown length may be any.
  const loadsAtLow = hasUnknownLength(network) ? allAtLow : lowVoltage.loads.map(atMost);
  const estimates = estimatesOf(network);
  const byScenario = new Map(lasting.map((result) => [result.scenario, result]));
  const estimatedAt = (part: number, worst: WorstInScenario | undefined) =>
    worst && withEstimate(worst, estimates.ofCurrent(byScenario.get(worst.scenario)!, part));
  /** The current in the conductors of a circuit is that of the load that it states itself; another one may come from several. */
  const estimatedIn = (conductor: NetworkConductor, worst: WorstInScenario | undefined) => {
    const end = network.terminals[conductor.role === "return" ? conductor.from : conductor.to]!.part;
    const { record } = network.parts[end]!;
    return record === conductor.record
      ? worst && withEstimate(worst, estimates.ofDevices(byScenario.get(worst.scenario)!, [end]))
      : estimatedAt(network.terminals[conductor.from]!.part, worst);
  };
  const greatestAt = (
    part: number,
    atLowVoltage: readonly SolvedScenario[],
    currentIn: CurrentIn,
    estimated = (worst: WorstInScenario | undefined) => estimatedAt(part, worst),
  ) => {
    const worst = greatest(lasting, currentIn);
    const atLow = greatest(atLowVoltage, currentIn);
    if (worst && atLow && atLow.currentA > worst.currentA * moreThanRounding)
      return withEstimate(atLow, estimates.atLowVoltage(atLow.scenario, part));
    return estimated(worst);
  };
  const forMinutes = loadsForMinutes(network);
  const forHours = (currentIn: CurrentIn, ...own: readonly (WorstAlone | undefined)[]) => {
    let most: LoadForHours | undefined;
    const compare = (currentA: number, continuousA: number) => {
      // Of several loads that ask for equal ratings the first.
      if (!most || ratingOver({ currentA, continuousA }) > ratingOver(most) * moreThanRounding)
        most = { currentA, continuousA };
    };
    for (const result of lasting) {
      const withoutMinutes = continuous.get(result.scenario);
      const continuousA = currentIn(withoutMinutes ? atMost(withoutMinutes) : result);
      compare(Math.max(currentIn(result), continuousA), continuousA);
    }
    for (const one of own) if (one) compare(one.currentA, forMinutes.has(one.alone) ? 0 : one.currentA);
    return most;
  };
  const undivided = unknown.undivided();
  /** Marks a current that is the whole of several ways. */
  const marked = (worst: WorstOf | undefined, currentIn: CurrentIn): WorstOf | undefined => {
    const solvedA = greatest(lastingAsSolved, currentIn)?.currentA ?? 0;
    return worst && worst.currentA > solvedA * moreThanRounding
      ? { ...worst, estimate: { ...worst.estimate, undivided: true } }
      : worst;
  };
  const alone = aloneCurrents(network, topology, lasting, shares);
  // A scenario that could not be solved may be the worst one; without any that lasts, a device alone is the worst.
  const isKnown = lasting.length > 0 || scenarios.length === momentary.length;
  const ifKnown = (least: WorstOf | undefined) => (isKnown ? least : undefined);
  return {
    conductors: network.conductors.map((its, conductor): ConductorWorst => {
      const currentIn: CurrentIn = ({ conductorA }) => Math.abs(conductorA[conductor]!);
      const { part } = network.terminals[its.from]!;
      const estimated = (worst: WorstInScenario | undefined) => estimatedIn(its, worst);
      const own = alone.conductors[conductor];
      const mark = (worst: WorstOf | undefined) =>
        undivided.conductors.has(conductor) ? marked(worst, currentIn) : worst;
      const least = {
        worst: mark(greaterOf(estimated(greatest(lasting, currentIn)), own?.worst)),
        design: mark(greaterOf(greatestAt(part, loadsAtLow, currentIn, estimated), own?.design)),
      };
      return {
        worst: ifKnown(least.worst),
        design: ifKnown(least.design),
        forHours: isKnown ? forHours(currentIn, own?.worst) : undefined,
        least,
      };
    }),
    parts: network.parts.map((part): PartWorst => {
      const { index } = part;
      const fed: CurrentIn = ({ partA }) => fedOrPassedOn(part, partA[index]!);
      const drawn: CurrentIn = ({ partA, inputA }) => Math.max(inputA[index]!, drawnBy(part, partA[index]!));
      const ofPart = isDevice(part) ? loadsAtLow : allAtLow;
      const [ownFed, ownDrawn] = [alone.feeds[index], alone.draws[index]];
      const mark = (worst: WorstOf | undefined, currentIn: CurrentIn) =>
        undivided.parts.has(index) ? marked(worst, currentIn) : worst;
      const feeds = mark(greaterOf(greatestAt(index, ofPart, fed), ownFed?.design), fed);
      const draws = mark(greaterOf(greatestAt(index, ofPart, drawn), ownDrawn?.design), drawn);
      return {
        feeds: ifKnown(feeds),
        draws: ifKnown(draws),
        forHours: isKnown
          ? forHours((result) => Math.max(fed(result), drawn(result)), ownFed?.worst, ownDrawn?.worst)
          : undefined,
        least: greaterOf(feeds, draws),
        surge: greatest(momentary, ({ partA, inputA }) => Math.max(inputA[index]!, Math.abs(partA[index]!))),
        lowestV: lowestVoltage(network, solved, index),
      };
    }),
    supplyPaths: supplyPathsOf(network, topology, lastingAsSolved),
  };
}

/** The same current in two scenarios differs in its last digits. */
const moreThanRounding = 1 + 1e-9;

function withEstimate(worst: WorstInScenario, estimate: Estimate | undefined): WorstOf {
  return estimate ? { estimate, ...worst } : worst;
}

type CurrentIn = (result: SolvedScenario) => number;

/** A scenario that reaches the current of a device alone is the one to name. */
function greaterOf(worst: WorstOf | undefined, alone: WorstOf | undefined): WorstOf | undefined {
  return alone && (!worst || alone.currentA > worst.currentA * moreThanRounding) ? alone : worst;
}

/** Of several equally bad scenarios the first; undefined if there is none. */
function greatest(scenarios: readonly SolvedScenario[], currentIn: CurrentIn): WorstInScenario | undefined {
  let worst: WorstInScenario | undefined;
  for (const result of scenarios) {
    const currentA = currentIn(result);
    if (worst === undefined || currentA > worst.currentA * moreThanRounding)
      worst = { currentA, scenario: result.scenario };
  }
  return worst;
}

/** Parts that only pass current on do so in both directions; all others feed if their current is positive. */
function fedOrPassedOn(part: Part, partA: number): number {
  return passesCurrentOn(part) ? Math.abs(partA) : Math.max(0, partA);
}

function drawnBy(part: Part, partA: number): number {
  return passesCurrentOn(part) ? 0 : Math.max(0, -partA);
}

/** While it is on; starting motors included. */
function lowestVoltage(
  network: Network,
  solved: readonly SolvedScenario[],
  part: number,
): PartWorst["lowestV"] {
  let lowest: PartWorst["lowestV"];
  for (const { partV, scenario } of solved) {
    const voltageV = partV[part]!;
    if (Number.isNaN(voltageV) || !network.scenarios[scenario]?.on[part]) continue;
    if (lowest === undefined || voltageV < lowest.voltageV) lowest = { voltageV, scenario };
  }
  return lowest;
}
