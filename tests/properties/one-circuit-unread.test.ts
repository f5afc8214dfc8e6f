import { readdirSync, readFileSync } from "node:fs";
import { afterAll, expect, test } from "vitest";
import { type Judgement, judge } from "../../library/judge.ts";
import type { PlanRecord } from "../../library/model/record.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { Uri } from "../../server/evaluate/workspace.ts";
import { folder, workspaceOf } from "../provenance/marked-plan.ts";
import { sampled } from "../setup/sampled.ts";

/*
 * A circuit that is not finished takes nothing from the rest of the plan: its size is taken away in builds of every kind, one circuit
 * after the other, and the network is judged as if the circuit were not in the plan, with no finding that its absence causes.
 */

const files = new Map<Uri, string>();
const checker = createChecker(workspaceOf(files), { sandbox: sharedSandbox });
afterAll(() => checker.dispose());

const builds = ["clean", "faulty", "drafts"].flatMap((kind) =>
  readdirSync(new URL(`../builds/${kind}/`, import.meta.url)).map((name) => `${kind}/${name}`),
);

test("the rest of the network is judged, and nothing is reported that its absence causes", async () => {
  let tried = 0;
  for (const name of sampled("builds with an unfinished circuit", builds)) {
    const root = `${folder}/${name}`;
    files.set(root, readFileSync(new URL(`../builds/${name}`, import.meta.url), "utf8"));
    const outcome = await checker.check(root);
    if (outcome.state !== "checked") throw new Error(`${name} is ${outcome.state}`);
    const { judgement, records } = outcome;
    if (!judgement.network) continue;
    for (const [index, record] of records.entries()) {
      if (!isLeaf(record)) continue;
      tried++;
      const unfinished = judge(records.with(index, withoutSize(record)), []);
      const absent = judge(records.with(index, { ...record, input: lone }), []);
      const of = `${name}: ${unfinished.model.withoutCircuits[0]?.name}`;
      expect(unfinished.network, of).toBeDefined();
      expect(
        unfinished.model.withoutCircuits.map((one) => one.record),
        of,
      ).toContain(index);
      // A scenario may name the circuit, which must then be in the network.
      if (absent.network)
        expect(unfinished.network!.result.conductors, of).toEqual(absent.network.result.conductors);
      expect(caused(judgement, unfinished), of).toEqual([]);
    }
  }
  expect(tried).toBeGreaterThan(10);
});

/** Outside of the network. */
const lone = { load: 1, oneWayFt: 1, gauge: 10, protect: 2 };

function isLeaf({ word, input }: PlanRecord): boolean {
  const { from, to } = input as Readonly<Record<string, unknown>>;
  return word === "circuit" && from !== undefined && to === undefined;
}

function withoutSize(record: PlanRecord): PlanRecord {
  const { gauge, mm2, ...rest } = record.input as Record<string, unknown>;
  return { ...record, input: rest };
}

/** Rules about connections that have a finding only because the circuit is missing. Where they have one before, its place may change. */
function caused(whole: Judgement, unfinished: Judgement): readonly string[] {
  const before = new Set(whole.findings.map(({ rule }) => rule));
  return unfinished.findings
    .map(({ rule }) => rule)
    .filter((rule) => /^(network|disconnect|energy|panel|bus)\//.test(rule) && !before.has(rule));
}
