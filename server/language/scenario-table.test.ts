import { expect, test } from "vitest";
import type { ScenarioResult } from "../../library/analysis/network-result.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import { scenarioTable } from "./scenario-table.ts";

/** A network of one conductor, with its current in each scenario; `undefined` for one without an operating point. */
function flowing(
  flows: Readonly<Record<string, number | undefined>>,
  momentary: string[] = [],
): JudgedNetwork {
  const names = Object.keys(flows);
  return {
    network: {
      parts: [{ kind: "inverter", name: "kettle | inverter" }],
      scenarios: names.map((name) => ({ name, momentary: momentary.includes(name) })),
    },
    result: {
      scenarios: names.map((name, scenario): Partial<ScenarioResult> => {
        const currentA = flows[name];
        return currentA === undefined
          ? { state: "unsolved", scenario, why: "collapse", reachedShare: 0.9999, culprits: [0] }
          : { state: "solved", scenario, conductorA: [currentA] };
      }),
    },
  } as unknown as JudgedNetwork;
}

function table(judged: JudgedNetwork): string[] {
  const columns = [
    { title: "Current", cell: ({ conductorA }: { conductorA: readonly number[] }) => `${conductorA[0]} A` },
  ];
  return scenarioTable(judged, columns, ({ conductorA, scenario }) =>
    judged.network.scenarios[scenario]?.momentary ? undefined : [conductorA[0]!],
  ).split("\n");
}

test("worst first, and marked", () => {
  expect(table(flowing({ night: 4, day: 40, shore: 0 }))).toEqual([
    "| Scenario | Current |",
    "| --- | ---: |",
    "| **day** (worst) | **40 A** |",
    "| night | 4 A |",
    "| shore | 0 A |",
  ]);
});

test("one scenario is no worse than another, and none is worse than its equals", () => {
  expect(table(flowing({ night: 4 }))).toContain("| night | 4 A |");
  expect(table(flowing({ night: 4, day: 4 })).join("\n")).not.toContain("worst");
});

test("what flows for a moment is shown, and is not the worst", () => {
  const lines = table(flowing({ night: 4, start: 400, day: 5 }, ["start"]));
  expect(lines.slice(2)).toEqual([
    "| **day** (worst) | **5 A** |",
    "| night | 4 A |",
    "| start, for a moment | 400 A |",
  ]);
});

test("a scenario without an operating point comes first, and says why", () => {
  const lines = table(flowing({ night: 4, "flat out": undefined, day: 5 }));
  expect(lines.slice(2, 4)).toEqual(["| **flat out** | **not solved** |", "| **day** (worst) | **5 A** |"]);
  expect(lines.at(-1)).toBe(
    "**flat out** is not solved: there is no operating point: the kettle \\| inverter would pull the voltage down without limit. With up to 99.99 % of the power there is one.",
  );
});

test("the table stays short, and names cannot break it", () => {
  const flows = Object.fromEntries(Array.from({ length: 8 }, (_, index) => [`state | ${index}`, index]));
  const lines = table(flowing(flows));
  expect(lines).toHaveLength(2 + 6 + 2);
  expect(lines[2]).toBe("| **state \\| 7** (worst) | **7 A** |");
  expect(lines.at(-1)).toBe("… and 2 other scenarios.");
});
