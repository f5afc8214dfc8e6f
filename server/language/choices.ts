import { analyseCircuit } from "../../library/analysis/analyse-circuit.ts";
import type { CircuitResult, ProtectionRange } from "../../library/analysis/circuit-result.ts";
import { madeRatings } from "../../library/analysis/made-ratings.ts";
import { madeSizes } from "../../library/analysis/made-sizes.ts";
import { solveScenarios } from "../../library/analysis/network/solver/solve-scenarios.ts";
import { topologyOf } from "../../library/analysis/network/topology/topology.ts";
import { protectionRangeOfPart } from "../../library/analysis/protection-range.ts";
import { defaultBench } from "../../library/model/bench-settings.ts";
import type { Network } from "../../library/model/network.ts";
import type { DevicePart } from "../../library/model/part-roles.ts";
import type { Protection, Run } from "../../library/model/run.ts";
import type { Finding } from "../../library/rules/finding.ts";
import { rules } from "../../library/rules/registry.ts";
import type { JudgedNetwork, JudgedPlan } from "../../library/rules/rule.ts";

/** One value that a builder could choose, and its results. */
export interface Choice {
  /** As written in a plan: `4`, `"1/0"`, `50`. */
  readonly written: string;
  /** Errors and warnings that its circuit or part would have with it, not counting accepted ones. */
  readonly faults: readonly Finding[];
  /** "judged": `faults` are those of the check of the whole plan. "unknown": those of its circuit or part alone. */
  readonly inPlan: "judged" | "unknown";
}

/** A size or rating of a circuit or cable. */
export interface RunChoice extends Choice {
  readonly circuit: Run;
  readonly result: CircuitResult;
}

/** A rating of a fuse or breaker that is a part. */
export interface DeviceChoice extends Choice {
  readonly part: DevicePart;
  readonly ratingA: number;
  readonly range: ProtectionRange;
}

/**
 * Every made size of the circuit's own system, thinnest first. In a network each with the current that would flow with it: of two
 * leads side by side the thicker one takes more. If the thinnest and the thickest carry the same, so do all between.
 */
export function sizeChoices(circuit: Run, network?: Network): RunChoice[] {
  const sized = madeSizes(circuit.conductor).map((conductor) => ({ ...circuit, conductor }));
  const [thinnest, thickest] = [sized[0]!, sized.at(-1)!];
  const flow = (run: Run) => (network && run.inNetwork ? flowWith(run, network) : run.loadA);
  const [leastA, mostA] = [flow(thinnest), flow(thickest)];
  const isSame = Math.abs(mostA - leastA) <= sameFlow * mostA;
  const loadOf = (run: Run) => (run === thinnest ? leastA : isSame || run === thickest ? mostA : flow(run));
  return sized.map((run) => {
    const { conductor } = run;
    const written = JSON.stringify(conductor.system === "awg" ? conductor.awg : conductor.mm2);
    return choice(written, { ...run, loadA: loadOf(run) });
  });
}

/** A difference that three significant figures do not show. */
const sameFlow = 5e-4;

/** The maximum lasting current of any solved scenario, or the circuit's own stated one; else the present one. */
function flowWith({ record, conductor, loadA, loadIsOf }: Run, network: Network): number {
  if (network.conductors.length > mostToSolveAgain) return loadA;
  const conductors = network.conductors.map((one) =>
    one.record === record ? { ...one, run: { ...one.run, conductor } } : one,
  );
  const own = conductors.findIndex((one) => one.record === record && one.role !== "return");
  const flows = solveScenarios({ ...network, conductors }).flatMap((solved) =>
    solved.state === "solved" && !network.scenarios[solved.scenario]?.momentary
      ? [Math.abs(solved.conductorA[own] ?? 0)]
      : [],
  );
  const leastA = loadIsOf ? loadA : (conductors[own]?.run.loadA ?? 0);
  return flows.length === 0 ? loadA : Math.max(leastA, ...flows);
}

/** Fifteen sizes are tried at a keystroke: a network of more conductors than this is not solved for each. */
const mostToSolveAgain = 400;

/** Every made rating (of the stated family, else of any) for the protection at one end, smallest first. */
export function ratingChoices(circuit: Run, end: "protection" | "protectionFarEnd"): RunChoice[] {
  const stated: Protection | null = circuit[end];
  if (!stated) return [];
  return madeRatings(stated.family).map((ratingA) =>
    choice(String(ratingA), { ...circuit, [end]: { ...stated, ratingA } }),
  );
}

/**
 * The same for a fuse or breaker that is a part. The currents of the network do not depend on its rating; the paths that it
 * protects do. Empty in a network that is too large.
 */
export function deviceChoices(
  plan: JudgedPlan,
  { network, result }: JudgedNetwork,
  part: DevicePart,
): DeviceChoice[] {
  if (network.conductors.length > mostToSolveAgain) return [];
  const range = protectionRangeOfPart({ network, result }, part);
  return madeRatings(part.family).map((ratingA) => {
    const rated: Network = {
      ...network,
      parts: network.parts.map((one) => (one.index === part.index ? { ...part, ratingA } : one)),
      devices: network.devices.map((device) =>
        device.place.at === "part" && device.place.part === part.index ? { ...device, ratingA } : device,
      ),
    };
    // Findings about runs and drops do not depend on it, and would cost the most.
    const judged = { network: rated, result: { ...result, topology: topologyOf(rated), supplyPaths: [] } };
    const faults = faultsIn({ ...plan, circuits: [], network: judged }, part).filter(({ at, related }) =>
      [at, ...related.map((one) => one.at)].some(
        (place) => "record" in place && place.record === part.record,
      ),
    );
    return { written: String(ratingA), faults, inPlan: "unknown", part, ratingA, range };
  });
}

/**
 * Applies the rules that check the plan to this one circuit. The effect on the rest of a network is not considered here, but in
 * `judgedInPlan`.
 */
function choice(written: string, circuit: Run): RunChoice {
  const result = analyseCircuit(circuit);
  const plan = {
    model: {
      build: { voltageStated: true, bench: defaultBench },
      circuits: [circuit],
      network: undefined,
      networkUnread: false,
      layout: undefined,
      lengthUnit: circuit.lengthUnit,
      periods: [],
      withoutCircuits: [],
      unjudged: [],
      invalid: [],
    },
    circuits: [{ circuit, result }],
    network: undefined,
    problems: [],
    energy: [],
    placement: undefined,
  };
  // A circuit on its own is a whole plan.
  const inPlan = circuit.inNetwork ? "unknown" : "judged";
  return { written, circuit, result, faults: faultsIn(plan, circuit), inPlan };
}

/** The errors and warnings of a plan, without those that the circuit or part accepts for itself. */
function faultsIn(plan: JudgedPlan, { record, accept }: Pick<Run, "record" | "accept">): Finding[] {
  return rules.flatMap((rule) =>
    rule.check(plan).flatMap((found): Finding[] => {
      const severity = found.severity ?? rule.severity;
      const isOwn = "record" in found.at && found.at.record === record;
      const accepted = isOwn && rule.acceptable && (accept[rule.id]?.trim() ?? "") !== "";
      if (accepted || (severity !== "error" && severity !== "warning")) return [];
      return [{ related: [], fixes: [], ...found, rule: rule.id, severity }];
    }),
  );
}
