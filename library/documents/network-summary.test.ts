import { describe, expect, test } from "vitest";
import { analyseCircuit } from "../analysis/analyse-circuit.ts";
import { sampleNetwork } from "../analysis/network/sample-network.tester.ts";
import type { NetworkResult } from "../analysis/network-result.ts";
import type { Run } from "../model/run.ts";
import type { JudgedPlan } from "../rules/rule.ts";
import { networkDerivation } from "./network-derivation.ts";
import { hardestInWords, lowestInWords, networkStateInWords, networkSummary } from "./network-summary.ts";
import { dropsOf, worstDrop, worstDropInWords } from "./worst-drop.ts";

/** A bank, a lamp and an inverter, with results as if they had been calculated. */
function judgedPlan(): JudgedPlan & { readonly network: object } {
  const build = sampleNetwork();
  const bank = build.battery({ name: "bank" });
  const lamp = build.load(10);
  // 33 CFR 183.425 Table 5: 4 AWG, 75 °C: 125 A; 14 AWG: 20 A.
  const feed = build.cable(bank.positive, lamp.positive, { name: "feed" });
  build.cable(lamp.negative, bank.negative, {
    name: "thin return",
    conductor: { parallel: 1, system: "awg", awg: 14 },
  });
  const network = build.network();
  const result = {
    topology: { wayFromSource: () => undefined },
    scenarios: [
      { state: "solved", scenario: 0, residualA: 2e-12, largestA: 20 },
      { state: "unsolved", scenario: 1, why: "collapse", reachedShare: 0.7, culprits: [lamp.part] },
    ],
    // Ampacity is held to the current of nearly empty batteries: 10 A, of 9 A in use.
    conductors: [
      { worst: { currentA: 50, scenario: 0 }, design: { currentA: 50, scenario: 0 } },
      { worst: { currentA: 9, scenario: 0 }, design: { currentA: 10, scenario: 0 } },
    ],
    parts: network.parts.map(({ kind }) => ({
      lowestV: kind === "load" ? { voltageV: 11.44, scenario: 0 } : undefined,
    })),
    supplyPaths: [
      {
        part: lamp.part,
        dropPercent: 6,
        dropLimitPercent: 10,
        legs: [{ conductor: feed, dropV: 0.4 }],
        withoutLength: [],
      },
    ],
  } as unknown as NetworkResult;
  const circuits = network.conductors.map(({ run }) => ({ circuit: run, result: analyseCircuit(run) }));
  return {
    model: { networkUnread: false, withoutCircuits: [] as const } as unknown as JudgedPlan["model"],
    circuits,
    network: {
      network: { ...network, scenarios: [...network.scenarios, { ...network.scenarios[0]!, name: "flat" }] },
      result,
    },
    problems: [],
    energy: [],
    placement: undefined,
  };
}

describe("what a network comes to", () => {
  const plan = judgedPlan();
  const summary = networkSummary(plan, plan.network as NonNullable<JudgedPlan["network"]>);

  test("nearest to its ampacity is not what carries the most", () => {
    // 50 A of 125 A is 40 %, 10 A of 20 A is 50 %.
    expect(hardestInWords(summary.hardest!)).toBe(
      'nearest to its ampacity: cable 1, 10 A of 20 A in "everything on"',
    );
  });

  test("a current that a device alone causes is given with that device, not with a scenario of that name", () => {
    const [feed, back] = plan.network!.result.conductors;
    const alone = { currentA: 20, alone: plan.network!.result.supplyPaths[0]!.part };
    const conductors = [feed!, { ...back!, design: alone }];
    const result = { ...plan.network!.result, conductors };
    const { hardest } = networkSummary(plan, { ...plan.network!, result });
    expect(hardestInWords(hardest!)).toBe("nearest to its ampacity: cable 1, 20 A of 20 A with part 1 alone");
  });

  test("the lowest voltage is that of a device", () => {
    expect(lowestInWords(summary.lowest!)).toBe('lowest voltage: 11.4 V at part 1 in "everything on"');
  });

  test("what was not solved is counted and named", () => {
    expect(summary.unsolved).toEqual([{ scenario: "flat", why: "collapse" }]);
    expect(networkStateInWords(plan)).toBe("1 of 2 scenarios not solved");
  });
});

test.each([
  [{ model: { networkUnread: true, withoutCircuits: [] }, network: undefined }, "network not judged"],
  [
    { model: { networkUnread: false, withoutCircuits: [{}] }, network: undefined },
    "network judged without a circuit with an invalid value",
  ],
  [{ model: { networkUnread: false, withoutCircuits: [] }, network: undefined }, ""],
  [
    {
      model: { networkUnread: false, withoutCircuits: [] },
      network: { result: { scenarios: [{ state: "solved" }] } },
    },
    "",
  ],
])("%j says %j", (plan, words) => {
  expect(networkStateInWords(plan as unknown as JudgedPlan)).toBe(words);
});

test("how the network was worked out names what is left of Kirchhoff's sum", () => {
  const { network } = judgedPlan();
  const text = networkDerivation(network as NonNullable<JudgedPlan["network"]>);
  // 2e-12 A of 20 A.
  expect(text).toContain("1 of 2 scenarios were solved; the residual at any terminal is at most 1e-13");
});

test("the parts with a resistance are named as those that are not taken as 0 Ω", () => {
  const derived = (...made: readonly ((build: ReturnType<typeof sampleNetwork>) => unknown)[]) => {
    const build = sampleNetwork();
    for (const make of made) make(build);
    return networkDerivation({
      network: build.network(),
      result: { scenarios: [] } as unknown as NetworkResult,
    });
  };
  const metal = derived(
    (build) => build.chassis(0.001),
    (build) => build.shunt(0),
  );
  expect(metal).toContain("Fuses, contacts and studs are taken as 0 Ω.");
  const joined = [{ between: ["in", "out"] as [string, string], ohm: 0.002 }];
  const resisting = derived(
    (build) => build.shunt(0.0001),
    (build) => build.other(["in", "out"], joined),
  );
  expect(resisting).toContain("taken as 0 Ω, except in part 0 and part 1.");
});

describe("drops", () => {
  test("a cable has no limit of its own; the whole way has", () => {
    const drops = dropsOf(judgedPlan());
    expect(drops).toEqual([
      { dropPercent: 6, dropLimitPercent: 10, atLeast: false, name: "part 1", fromBank: true },
    ]);
    expect(worstDropInWords(drops[0]!, "lamp")).toBe("worst drop 6 %, limit 10 % (lamp, from the bank)");
  });

  test("a way over an overloaded conductor loses at least what is said", () => {
    const plan = judgedPlan();
    const hot: Run = { ...plan.circuits[0]!.circuit, loadA: 200 };
    const judged = { circuit: hot, result: analyseCircuit(hot) };
    const worst = worstDrop(dropsOf({ ...plan, circuits: [judged] }));
    expect(worstDropInWords(worst!, "lamp")).toContain("at least 6 %");
  });
});
