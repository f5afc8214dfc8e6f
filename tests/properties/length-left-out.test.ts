import { readdirSync, readFileSync } from "node:fs";
import { afterAll, describe, expect, test } from "vitest";
import { meetsDropLimit } from "../../library/analysis/voltage-drop.ts";
import { type Judgement, judge } from "../../library/judge.ts";
import type { PlanRecord } from "../../library/model/record.ts";
import type { Finding } from "../../library/rules/finding.ts";
import { isLengthProperty } from "../../library/rules/wording/length-readings.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { Uri } from "../../server/evaluate/workspace.ts";
import { folder, workspaceOf } from "../provenance/marked-plan.ts";
import { sampled } from "../setup/sampled.ts";

/*
 * A length that is left out silences no other run: in builds of every kind each length is taken away in turn, and every finding
 * remains, except those that need the length. The run itself then reports that. A finding that rests on how a current divides by this
 * length remains as information that it is not judged.
 */

const files = new Map<Uri, string>();
const checker = createChecker(workspaceOf(files), { sandbox: sharedSandbox });
afterAll(() => checker.dispose());

const plans = ["builds/clean", "builds/faulty", "builds/drafts", "networks/correct"].flatMap((kind) =>
  readdirSync(new URL(`../${kind}/`, import.meta.url)).map((name) => `${kind}/${name}`),
);

/** They need the voltage at a device, the share of a battery, or the current of a short. */
const needsLength = new Set([
  "battery/parallel-imbalance",
  "conductor/fault-withstand",
  "conductor/voltage-drop",
  "protection/does-not-clear",
  "protection/selectivity",
  "scenario/device-below-minimum",
  "voltage/collapse",
]);

/** They need the length of the very conductor. */
const needsOwnLength = new Set([
  ...needsLength,
  "battery/links",
  "plan/unit-suspect",
  "protection/distance",
  "protection/unprotected-path",
]);

/** The greater a current, the more severe the finding that there is at the same place. */
const ofCurrents = new Set([
  "conductor/ampacity",
  "inverter/supply",
  "charger/input-current",
  "protection/below-load",
  "protection/headroom",
]);

/** Over all plans. */
const counts = { tried: 0, gone: 0 };

describe("no finding of another run is gone, except those that need the length", () => {
  test.each(sampled("plans without one length", plans))("%s", async (name) => {
    const { judgement, records } = await checked(name);
    if (!judgement.network) return;
    for (const [index, record] of records.entries()) {
      if (!mayBeWithoutLength(record)) continue;
      const without = judge(records.with(index, withoutLength(record)), []);
      // Its way through the layout gives its length.
      if (without.circuits.some(({ circuit }) => circuit.record === index && circuit.lengthsFrom === "way"))
        continue;
      counts.tried++;
      const of = JSON.stringify(record.input).slice(0, 200);
      expect(without.network, of).toBeDefined();
      const reports = without.findings.filter(({ rule }) => rule === "conductor/no-length");
      expect(reports.map(placeOf), of).toEqual([index]);
      const raised = losesTooMuch(judgement, index);
      for (const finding of judgement.findings) {
        if (without.findings.some((other) => isAlike(other, finding))) continue;
        counts.gone++;
        const isOwn = placeOf(finding) === index;
        if ((isOwn ? needsOwnLength : needsLength).has(finding.rule)) continue;
        if (ofCurrents.has(finding.rule) && without.findings.some((other) => isOfCurrentAt(other, finding)))
          continue;
        // A device with constant power draws more, the more is lost on the way: with the drop, its consequence is not judged.
        expect({ rule: finding.rule, subject: finding.subject, raised }, of).toMatchObject({ raised: true });
      }
    }
  });

  test("enough was tried", () => {
    expect(counts.tried).toBeGreaterThan(50);
    expect(counts.gone).toBeGreaterThan(0);
  });
});

async function checked(name: string) {
  const root = `${folder}/${name}`;
  files.set(root, readFileSync(new URL(`../${name}`, import.meta.url), "utf8"));
  const outcome = await checker.check(root);
  if (outcome.state !== "checked") throw new Error(`${name} is ${outcome.state}`);
  return outcome;
}

function mayBeWithoutLength({ word, input }: PlanRecord): boolean {
  return (
    word === "cable" ||
    (word === "circuit" && (input as Readonly<Record<string, unknown>>).from !== undefined)
  );
}

function withoutLength(record: PlanRecord): PlanRecord {
  const rest = Object.entries(record.input as object).filter(([property]) => !isLengthProperty(property));
  return { ...record, input: Object.fromEntries(rest) };
}

/** Whether a device behind the run loses more than its limit allows. */
function losesTooMuch({ network: judged }: Judgement, record: number): boolean {
  if (!judged) return false;
  const { network, result } = judged;
  return result.supplyPaths.some(
    (way) =>
      !meetsDropLimit(way) &&
      way.legs.some(({ conductor }) => network.conductors[conductor]!.record === record),
  );
}

function placeOf({ at }: Finding): number | undefined {
  return "record" in at ? at.record : undefined;
}

function isAlike(one: Finding, other: Finding): boolean {
  return one.rule === other.rule && isAsSevereAt(one, other);
}

function isOfCurrentAt(one: Finding, other: Finding): boolean {
  return ofCurrents.has(one.rule) && isAsSevereAt(one, other);
}

/** At the same place, and as severe; or "not judged, at most", because the current divides by the length. */
function isAsSevereAt(one: Finding, other: Finding): boolean {
  return placeOf(one) === placeOf(other) && (one.isUndivided === true || rank(one) <= rank(other));
}

function rank({ severity }: Finding): number {
  return ["error", "warning", "info", "hint"].indexOf(severity);
}
