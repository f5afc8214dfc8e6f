import { readdirSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import fc from "fast-check";
import { afterAll, expect, test } from "vitest";
import { type Judgement, judge } from "../../library/judge.ts";

import type { PlanRecord, Word } from "../../library/model/record.ts";
import type { Run, Serves } from "../../library/model/run.ts";
import { wordProperties } from "../../library/model/word-properties.ts";
import { messageOf } from "../../library/rules/message-of.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import { sampledRuns } from "../setup/sampled.ts";

/*
 * Colours, labels, prices, spools, hours of use: any workshop data and any of the balance, however wrong, leaves every current, drop,
 * temperature and finding unchanged. Any place, however wrong, leaves every circuit and the network as whole as they were.
 */

const folders = ["examples/", "tests/networks/correct/"].map((path) =>
  fileURLToPath(new URL(`../../${path}`, import.meta.url)),
);
const plans = folders.flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && !name.endsWith("endless.ts"))
    .map((name): [name: string, uri: string] => [name, pathToFileURL(`${folder}${name}`).href]),
);
const checker = createChecker(diskWorkspace(folders.map((folder) => pathToFileURL(folder).href)), {
  sandbox: sharedSandbox,
});
afterAll(() => checker.dispose());

/** Both sound and unsound: the property tests find out which. */
const anyValue = fc.oneof(
  fc.constantFrom<unknown>("red", "M8", "screw clamp", "", "x".repeat(50), 5, -1, 1e9, null, true, {}, [5]),
  fc.constantFrom<unknown>(
    [{ gauge: 10, lengthFt: 100, colour: "red", price: 58 }],
    [{ gauge: 3 }, { mm2: 4, lengthM: 25 }],
  ),
);

const ofLists: readonly Serves[] = ["lists", "balance"];
const ofPlaces: readonly Serves[] = ["places"];

function saidOf(word: Word, of: readonly Serves[]): fc.Arbitrary<Readonly<Record<string, unknown>>> {
  const names = [...wordProperties[word].properties].flatMap(([name, { serves }]) =>
    serves && of.includes(serves) ? [name] : [],
  );
  return fc.record(Object.fromEntries(names.map((name) => [name, anyValue])), { requiredKeys: [] });
}

test("there are at least twenty plans, and words of every kind have something to say", () => {
  expect(plans.length).toBeGreaterThanOrEqual(20);
  const silent = Object.entries(wordProperties).filter(([, { properties }]) =>
    [...properties.values()].every(({ serves }) => !serves),
  );
  expect(silent.map(([word]) => word)).toEqual(["scenario"]);
});

test.each(plans)("%s", async (name, uri) => {
  const plan = await checker.check(uri);
  if (plan.state !== "checked") throw new Error(`${name} is ${plan.state}`);
  const { records } = plan;
  const before = judge(records, []);
  fc.assert(
    fc.property(fc.tuple(...records.map(({ word }) => saidOf(word, ofLists))), (said) => {
      const changed = withSaid(records, said);
      const after = judge(changed, []);
      expect(judgedIn(after)).toBe(judgedIn(before));
      // Once more with the previous judgement for reuse, as in an editor.
      expect(judgedIn(judge(changed, [], before))).toBe(judgedIn(before));
    }),
    { numRuns: sampledRuns(6) },
  );
  fc.assert(
    fc.property(fc.tuple(...records.map(({ word }) => saidOf(word, ofPlaces))), (said) => {
      const after = judge(withSaid(records, said), []);
      expect(keptIn(after)).toEqual(keptIn(before));
      const refused = after.model.invalid.filter(({ serves }) => serves === "places").length;
      const named = after.findings.filter((finding) =>
        messageOf(finding).includes("places are judged without it"),
      );
      expect(named).toHaveLength(after.model.layout ? refused : 0);
    }),
    { numRuns: sampledRuns(6) },
  );
});

function withSaid(
  records: readonly PlanRecord[],
  said: readonly Readonly<Record<string, unknown>>[],
): readonly PlanRecord[] {
  return records.map(({ word, input, fallbackName }, index) => ({
    word,
    fallbackName,
    input: { ...said[index], ...(input as object) },
  }));
}

/** The network and circuits that could be read and judged, without any length that a way gives. */
function keptIn({ model, circuits, network }: Judgement): unknown {
  return {
    unread: model.networkUnread,
    unjudged: model.unjudged,
    runs: model.circuits.map(electricsOf),
    judged: circuits.map(({ circuit }) => circuit.record),
    scenarios: network?.result.scenarios.map(({ state }) => state),
  };
}

/** A run without all that it may take from its way. */
function electricsOf({ lengthsFrom, lengthUnit, positiveM, negativeM, places: _, ...run }: Run) {
  return lengthsFrom === "plan" ? { ...run, lengthsFrom, lengthUnit, positiveM, negativeM } : run;
}

/**
 * All figures and findings, except those about an unusable value, and those about needless reasons, which wait until all values are
 * usable; as text, because supply paths are functions.
 */
function judgedIn({ circuits, network, findings, model }: Judgement): string {
  const judged = {
    results: circuits.map(({ circuit, result }) => [circuit.record, circuit.loadA, result]),
    network: network?.result,
    unread: model.networkUnread,
    unjudged: model.unjudged,
    findings: findings.filter(({ rule }) => rule !== "plan/invalid-value" && rule !== "plan/needless-accept"),
  };
  return JSON.stringify(judged, (name, value) => {
    // Findings about places refer to the plan that they are about; its network is judged above.
    if (name === "facts") return value.layout;
    if (value instanceof Map || value instanceof Set) return [...value];
    return typeof value === "number" ? String(value) : value;
  });
}
