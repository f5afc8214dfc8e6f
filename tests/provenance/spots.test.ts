import { afterAll, describe, expect, it } from "vitest";
import { createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import { checkFiles, closeCheckers, filesOf, folder, workspaceOf } from "./marked-plan.ts";

afterAll(closeCheckers);

const uri = `${folder}/plan.ts`;

/** The cursor is at `|`; the result: record, path, text of the value, and other records that it sets. */
const spots: readonly [string, string, unknown][] = [
  ["on a value", "circuit({ load: 4, oneWayFt: 3, gauge: 1|2, protect: 5 });", [0, ["gauge"], "12", []]],
  ["behind a value", "circuit({ load: 4, oneWayFt: 3, gauge: 12|, protect: 5 });", [0, ["gauge"], "12", []]],
  [
    "on a property's name",
    "circuit({ load: 4, oneWayFt: 3, ga|uge: 12, protect: 5 });",
    [0, ["gauge"], "12", []],
  ],
  [
    "on a nested value",
    "circuit({ load: 4, oneWayFt: 3, gauge: 12, protect: { ratingA: |5 } });",
    [0, ["protect", "ratingA"], "5", []],
  ],
  ["on the word", "cir|cuit({ load: 4 } as any);", [0, [], "circuit({ load: 4 } as any)", []]],
  [
    "between the values",
    "circuit({ load: 4,| gauge: 12 } as any);",
    [0, [], "circuit({ load: 4, gauge: 12 } as any)", []],
  ],
  [
    "on a constant",
    "const thin = 1|2;\ncircuit({ load: 4, gauge: thin } as any);\ncircuit({ load: 5, gauge: thin } as any);",
    [0, ["gauge"], "12", [1]],
  ],
  [
    "on the use of a constant",
    "const thin = 12;\ncircuit({ load: 4, gauge: th|in } as any);\ncircuit({ load: 5, gauge: thin } as any);",
    [0, ["gauge"], "thin", []],
  ],
  [
    "in a factory",
    "const lamp = (load: number) => circuit({ load, gauge: |12 } as any);\nlamp(1);\nlamp(2);",
    [0, ["gauge"], "12", [1]],
  ],
  [
    "on a factory's argument",
    "const lamp = (load: number) => circuit({ load, gauge: 12 } as any);\nlamp(1);\nlamp(|2);",
    [1, ["load"], "2", []],
  ],
  [
    "in an element of a list",
    "for (const run of [{ load: 1 }, { load: 2| }]) circuit({ ...run, gauge: 12 } as any);",
    [1, ["load"], "2", []],
  ],
  ["somewhere else", "circuit({ load: 4 } as any);\nconst x = |3;", undefined],
];

describe("what stands under the cursor", () => {
  for (const [name, marked, expected] of spots) {
    it(name, async () => {
      const text = `import { circuit } from "loomwright";\n${marked}`;
      const offset = text.indexOf("|");
      const plain = text.replace("|", "");
      const { plan } = await checkFiles(filesOf(plain));
      const spot = plan.at(uri, offset);
      expect(
        spot && [spot.record, spot.path, plain.slice(spot.place.start, spot.place.end), spot.alsoSets],
      ).toEqual(expected);
    });
  }
});

it("a trial with other text leaves no trace", async () => {
  const text =
    'import { circuit } from "loomwright";\ncircuit({ name: "a", load: 4, oneWayFt: 3, gauge: 12, protect: 5 });';
  const checker = createChecker(workspaceOf(new Map([[uri, text]])), { sandbox: sharedSandbox });
  try {
    const before = await checker.check(uri);
    const trial = await checker.checkAs(uri, new Map([[uri, text.replace("load: 4", "load: 40")]]));
    const after = await checker.check(uri);
    if (before.state !== "checked" || trial.state !== "checked" || after.state !== "checked")
      throw new Error("incomplete");
    expect(trial.snapshot.get(uri)).toBe("trial");
    expect(trial.judgement.circuits[0]?.circuit.loadA).toBe(40);
    expect(after.judgement).toEqual(before.judgement);
    expect(after.snapshot).toEqual(before.snapshot);
    const half = await checker.checkAs(uri, new Map([[uri, text.replace("load: 4", "load: ")]]));
    expect(half.state).toBe("incomplete");
  } finally {
    await checker.dispose();
  }
});

it("checks of one root come in the order in which they were asked for, each with its own text", async () => {
  const files = new Map([[uri, ""]]);
  const checker = createChecker(workspaceOf(files), { sandbox: sharedSandbox });
  try {
    const asked = [1, 2, 3].map((load) => {
      const text = `import { circuit } from "loomwright";\ncircuit({ load: ${load}, oneWayFt: 3, gauge: 12 });`;
      return checker.checkAs(uri, new Map([[uri, text]]));
    });
    const loads = (await Promise.all(asked)).map(
      (plan) => plan.state === "checked" && plan.judgement.circuits[0]?.circuit.loadA,
    );
    expect(loads).toEqual([1, 2, 3]);
  } finally {
    await checker.dispose();
  }
});
