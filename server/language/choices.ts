import { analyseCircuit } from "../../library/analysis/analyse-circuit.ts";
import type { CircuitResult } from "../../library/analysis/circuit-result.ts";
import { madeRatings } from "../../library/analysis/made-ratings.ts";
import { madeSizes } from "../../library/analysis/made-sizes.ts";
import { solveScenarios } from "../../library/analysis/network/solver/solve-scenarios.ts";
import { defaultBench } from "../../library/model/bench-settings.ts";
import type { Network } from "../../library/model/network.ts";
import type { Protection, Run } from "../../library/model/run.ts";
import type { Finding } from "../../library/rules/finding.ts";
import { rules } from "../../library/rules/registry.ts";

/** One value that a builder could choose, and its results. */
export interface Choice {
  /** As written in a plan: `4`, `"1/0"`, `50`. */
  readonly written: string;
  readonly circuit: Run;
  readonly result: CircuitResult;
  /** Errors and warnings that this circuit would have with it, not counting accepted ones. */
  readonly faults: readonly Finding[];
}

/**
 * Every made size of the circuit's own system, thinnest first. In a network each with the current that would flow with it: of two
 * leads side by side the thicker one takes more.
 */
export function sizeChoices(circuit: Run, network?: Network): Choice[] {
  return madeSizes(circuit.conductor).map((conductor) => {
    const sized = { ...circuit, conductor };
    return choice(
      JSON.stringify(conductor.system === "awg" ? conductor.awg : conductor.mm2),
      network && circuit.inNetwork ? { ...sized, loadA: flowWith(sized, network) } : sized,
    );
  });
}

/** The maximum lasting current of any solved scenario, or the circuit's own stated one; else the present one. */
function flowWith({ record, conductor, loadA }: Run, network: Network): number {
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
  return flows.length === 0 ? loadA : Math.max(conductors[own]?.run.loadA ?? 0, ...flows);
}

/** Fifteen sizes are tried at a keystroke: a network of more conductors than this is not solved for each. */
const mostToSolveAgain = 400;

/** Every made rating (of the stated family, else of any) for the protection at one end, smallest first. */
export function ratingChoices(circuit: Run, end: "protection" | "protectionFarEnd"): Choice[] {
  const stated: Protection | null = circuit[end];
  if (!stated) return [];
  return madeRatings(stated.family).map((ratingA) =>
    choice(String(ratingA), { ...circuit, [end]: { ...stated, ratingA } }),
  );
}

/**
 * Applies the rules that check the plan to this one circuit: a choice can never be praised here and refused there. The effect on
 * the rest of a network is not considered; the caller must state this beside the choice.
 */
function choice(written: string, circuit: Run): Choice {
  const result = analyseCircuit(circuit);
  const plan = {
    model: {
      build: { voltageStated: true, bench: defaultBench },
      circuits: [circuit],
      network: undefined,
      networkUnread: false,
      unjudged: [],
      invalid: [],
    },
    circuits: [{ circuit, result }],
    network: undefined,
    problems: [],
  };
  const faults = rules.flatMap((rule) =>
    rule.check(plan).flatMap((found): Finding[] => {
      const severity = found.severity ?? rule.severity;
      const accepted = rule.acceptable && (circuit.accept[rule.id]?.trim() ?? "") !== "";
      if (accepted || (severity !== "error" && severity !== "warning")) return [];
      return [{ related: [], fixes: [], ...found, rule: rule.id, severity }];
    }),
  );
  return { written, circuit, result, faults };
}
