import { readdirSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { solvedLoop } from "../../library/analysis/energy/draws-alone.ts";
import { waysOfCurrent } from "../../library/analysis/energy/ways-of-current.ts";
import { currentInLoop } from "../../library/analysis/network/solver/loop-current.ts";
import { portionSolver, scenarioSolver } from "../../library/analysis/network/solver/solve-scenarios.ts";
import type { Network, Part, Scenario } from "../../library/model/network.ts";
import { isCharging, isConsumer } from "../../library/model/part-roles.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";

// The balance of energy solves a consumer alone as a loop of one current, or with the portion of the network that it can use. Both are
// held against a solution of the whole network.

const folder = fileURLToPath(new URL("./correct/", import.meta.url));
const checker = createChecker(diskWorkspace([pathToFileURL(folder).href]));
afterAll(() => checker.dispose());

const networks = await Promise.all(
  readdirSync(folder)
    .filter((name) => name.endsWith(".ts"))
    .map(async (name) => {
      const outcome = await checker.check(pathToFileURL(`${folder}${name}`).href);
      if (outcome.state !== "checked") throw new Error(`${name} is ${outcome.state}`);
      return { name, network: outcome.judgement.network!.network };
    }),
);

const cases = networks.flatMap(({ name, network }) =>
  network.parts.filter(isConsumer).map((consumer) => ({ plan: name, consumer, network })),
);

test.each(cases)("$plan, $consumer.name", ({ consumer, network }) => {
  const state = aloneWith(consumer, network);
  const whole = scenarioSolver(network)(state, 0);
  if (whole.state !== "solved") throw new Error("not solved");
  const { loopOf, portionWith } = waysOfCurrent(network, state);
  const portion = portionSolver(network, new Map())(state, portionWith(state.on));
  expect(portion).toBeDefined();
  const loop = loopOf(consumer);
  for (const solved of [portion!, loop && solvedLoop(network, loop, consumer)])
    for (const { kind, index } of solved ? network.parts : []) {
      if (kind !== "battery") continue;
      expect(solved!.partA[index]! - whole.partA[index]!).toBeCloseTo(0, 9);
      if (whole.partA[index] !== 0) expect(solved!.partV[index]! - whole.partV[index]!).toBeCloseTo(0, 9);
    }
});

test("most of them are a loop, and those with several ways are not", () => {
  const isLoop = ({ consumer, network }: (typeof cases)[number]) =>
    waysOfCurrent(network, aloneWith(consumer, network)).loopOf(consumer) !== undefined;
  expect(cases.filter(isLoop).length).toBeGreaterThan(cases.length / 2);
  const parallel = cases.filter(({ plan }) => plan === "two-ways-between-buses.ts");
  expect(parallel.map(isLoop)).toEqual(parallel.map(() => false));
});

describe("a loop of one current", () => {
  const loop = { conductors: [], ohm: 0.1, emfV: 12 };

  test.each([
    [{ as: "current", currentA: 20 }, 20],
    [{ as: "resistance", ohm: 0.5 }, 20],
    // (12 V − 0.1 Ω · 20 A) · 20 A.
    [{ as: "power", powerW: 200 }, 20],
    [{ as: "power", powerW: 0 }, 0],
  ] as const)("%j draws %d A", (draw, currentA) => {
    expect(currentInLoop(loop, draw)).toBeCloseTo(currentA, 9);
  });

  test.each([
    ["has less than half of its voltage left", { as: "current", currentA: 61 }],
    ["cannot give the power at all", { as: "power", powerW: 361 }],
    ["is nearly a short circuit", { as: "resistance", ohm: 0.09 }],
  ] as const)("leaves it to the general solver if it %s", (_, draw) => {
    expect(currentInLoop(loop, draw)).toBeUndefined();
  });
});

function aloneWith(consumer: Part, { parts }: Network): Scenario {
  return {
    name: "",
    on: parts.map((part) => part === consumer || !(isConsumer(part) || isCharging(part))),
    starting: parts.map(() => false),
    restV: parts.map((part) => (part.kind === "battery" ? part.usualRestV : undefined)),
    restFrom: parts.map((part) => (part.kind === "battery" ? "usual" : undefined)),
    sunShare: 0,
    momentary: false,
  };
}
