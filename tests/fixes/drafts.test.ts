import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { sizeOf } from "../../library/analysis/ampacity.ts";
import { copperMm2M } from "../../library/analysis/copper-area.ts";
import { feedPairs } from "../../library/analysis/feed-pairs.ts";
import { leastCopperTogether } from "../../library/analysis/joint-sizing.ts";
import { sizesAbove, sizesFrom } from "../../library/analysis/made-sizes.ts";
import { thinReturns } from "../../library/analysis/network/faults/thin-returns.ts";
import { repairSizing } from "../../library/analysis/repair-sizing.ts";
import { mayBecome } from "../../library/analysis/terminal-size.ts";
import type { Conductor, Run } from "../../library/model/run.ts";
import type { Finding, ProposedFix } from "../../library/rules/finding.ts";
import { counted } from "../../library/rules/wording/format-number.ts";
import type { CheckedPlan } from "../../server/evaluate/checked-plan.ts";
import { keyOf } from "../../server/evaluate/fixes/finding-keys.ts";
import type { FixAllOptions } from "../../server/evaluate/fixes/prove-fixes.ts";
import { checkFiles, closeCheckers, folder } from "../provenance/marked-plan.ts";
import { sampled } from "../setup/sampled.ts";
import { applyEdits } from "./apply-edits.ts";
import { leastCopperByHighs } from "./highs.ts";

// First drafts as new users write them, with many things wrong at once: what "fix all" makes of each. A file is a test.

afterAll(closeCheckers);

const own = draftsIn("./drafts/");
const drafts = [...own, ...draftsIn("../builds/drafts/")];
/** The faulty plans among the examples that can be run from one file. */
const examples = draftsIn("../../examples/faulty-workshop/", "../../examples/camper-draft/").filter(
  ([name]) => ["camper.ts", "roof.ts", "workshop.ts", "yard.ts"].includes(name),
);

function draftsIn(...paths: readonly string[]): readonly (readonly [string, string])[] {
  return paths.flatMap((path) => {
    const folderPath = fileURLToPath(new URL(path, import.meta.url));
    return readdirSync(folderPath).map((name) => [name, `${folderPath}${name}`] as const);
  });
}

test("there are more than fifty of them, ten of them here, and four examples", () => {
  expect(own.length).toBeGreaterThanOrEqual(10);
  expect(drafts.length).toBeGreaterThan(50);
  expect(examples.length).toBe(4);
});

function draft(name: string): string {
  return readFileSync(drafts.find(([file]) => file === name)![1], "utf8");
}

describe.each(sampled("first drafts, repaired", [...drafts, ...examples]))("any draft: %s", (_, path) => {
  const text = readFileSync(path, "utf8");
  test("no error and no warning with a repair is left, and a second time changes nothing", async () => {
    const { plan } = await fixed(text);
    // Where one value in the text sets several circuits, a change of it is a suggestion.
    const repairs = open(plan).flatMap(({ fixes, rule }) =>
      fixes.some((fix) => fix.kind === "repair" && plan.editsOf(fix)?.kind === "repair") ? [rule] : [],
    );
    expect(repairs).toEqual([]);
    const again = await fixed(textOf(plan));
    expect(again.title).toBeUndefined();
  });

  test("the result is the same whatever the order of the circuits", async () => {
    const statement = /^circuit\([\s\S]*?\);$/gm;
    const circuits = text.match(statement)?.reverse() ?? [];
    const turned = `${text.replaceAll(statement, "")}\n${circuits.join("\n")}\n`;
    expect(sizesIn((await fixed(turned)).plan)).toEqual(sizesIn((await fixed(text)).plan));
  });

  test("nothing becomes thicker than its terminals take, with offers or without", async () => {
    for (const offers of [false, true]) {
      const { before, plan } = await fixed(text, { offers });
      const sizes = new Map(runsOf(before).map((run) => [run.record, run]));
      for (const run of runsOf(plan)) {
        const was = sizes.get(run.record);
        if (was) expect(mayBecome(was, run.conductor), run.name).toBe(true);
      }
    }
  });

  test("the title counts the findings that are gone", async () => {
    const { before, plan, title } = await fixed(text);
    const accepted = ({ accepted: reason }: Finding) => reason !== undefined;
    const left = new Set(plan.judgement.findings.filter((finding) => !accepted(finding)).map(keyOf));
    const gone = before.judgement.findings.filter(
      (finding) => !accepted(finding) && finding.severity !== "hint" && !left.has(keyOf(finding)),
    );
    expect(title ?? "Fix 0 findings").toBe(`Fix ${counted(gone.length, "finding")}`);
  });
});

describe.each(sampled("first drafts, with offers", drafts))("with offers: %s", (_, path) => {
  const text = readFileSync(path, "utf8");

  test("with offers taken, no conductor is thicker than it need be, and the copper is near the least possible", async () => {
    const { before, plan } = await fixed(text, { offers: true });
    // One value in the text may set several circuits: then it is no offer of this kind.
    const isLeft = (fix: ProposedFix) => isOffer(fix) && plan.editsOf(fix)?.alsoChanges.length === 0;
    expect(open(plan).flatMap(({ fixes, rule }) => (fixes.some(isLeft) ? [rule] : []))).toEqual([]);
    const sizing = repairSizing(before.judgement);
    const after = new Map(runsOf(plan).map((run) => [run.record, run]));
    const links = new Set(
      before.judgement.findings.flatMap(({ rule, at }) =>
        rule === "battery/links" && "record" in at ? [at.record] : [],
      ),
    );
    const problem = sizing.problem();
    const choices = problem ? leastCopperTogether(problem).choices : [];
    /** By record: the sizes for the sake of paths, beyond the need of a run too. */
    const ofPaths = new Map(
      problem?.of.flatMap((runs, index) =>
        runs.map(({ run, conductors }) => [run.record, conductors[choices[index]!]!] as const),
      ),
    );
    /** The size that its repair is for; a link of a bank follows the fuse of the bank. */
    const needOf = (run: Run): Conductor => {
      const now = after.get(run.record)!;
      if (links.has(run.record)) return now.conductor;
      const isNew = (end: "protection" | "protectionFarEnd") => now[end] !== null && run[end] === null;
      const gotDevice = isNew("protection") || isNew("protectionFarEnd");
      const alone = (gotDevice ? sizing.withDevices(run) : sizing.ofRun(run))?.conductor ?? run.conductor;
      const onPaths = ofPaths.get(run.record);
      return onPaths && sizesAbove(onPaths, alone) > 0 ? onPaths : alone;
    };
    const sizes = new Map(runsOf(before).map((run) => [run.record, asReturn(plan, run, needOf(run))]));
    // A size that is too thin as a return costs as much as the one that is thick enough.
    const runs = problem?.runs.map(({ copperMm2M: copper, ...rest }, index) => {
      const leastMm2M = problem.of[index]!.reduce(
        (sum, { run, conductors }) => sum + copperMm2M(run, asReturn(plan, run, conductors[0]!)),
        0,
      );
      return { ...rest, copperMm2M: copper.map((mm2M) => Math.max(mm2M, leastMm2M)) };
    });
    const least = problem && runs && runs.length > 0 ? leastCopperByHighs([{ ...problem, runs }])[0] : 0;
    const inProblem = new Set(problem?.of.flat().map(({ run }) => run.record));
    const others = runsOf(before)
      .filter(({ record }) => !inProblem.has(record))
      .reduce((sum, run) => sum + copperMm2M(run, sizes.get(run.record)!), 0);
    // Undefined: the caps do not let every limit be met. The search then lifts them as little as it can.
    if (least !== undefined) expect(copperOf(plan)).toBeLessThanOrEqual((least + others) * 1.05);
    // A limit that is out of reach at first may come within it when other devices draw less on thicker conductors.
    if (problem && leastCopperTogether(problem).met.includes(false)) return;
    for (const run of runsOf(plan)) {
      const was = runsOf(before).find(({ record }) => record === run.record)!;
      if (sizesAbove(run.conductor, was.conductor) > 0)
        expect(sizesAbove(run.conductor, asReturn(plan, run, needOf(was))), run.name).toBeLessThanOrEqual(0);
    }
  });
});

describe.each(sampled("first drafts, with offers", drafts))("feeds: %s", (_, path) => {
  test("the two cables of a feed that are alike stay alike", async () => {
    const { before, plan } = await fixed(readFileSync(path, "utf8"), { offers: true });
    const { network } = before.judgement;
    if (!network) return;
    const after = new Map(runsOf(plan).map((run) => [run.record, run]));
    for (const run of runsOf(before)) {
      const other = feedPairs(network).get(run.record);
      if (!other || sizesAbove(run.conductor, other.conductor) !== 0) continue;
      const [one, two] = [after.get(run.record)!, after.get(other.record)!];
      expect([one.name, sizeOf(one.conductor)]).toEqual([one.name, sizeOf(two.conductor)]);
    }
  });
});

test("a 7 A water pump never gets 1/0 AWG, and a main fuse of 250 A not one for today's loads", async () => {
  const { plan } = await fixed(draft("panel-van.ts"), { offers: true });
  const pump = runsOf(plan).find(({ name }) => name === "water pump")!;
  const size = pump.conductor.system === "awg" ? pump.conductor.awg : pump.conductor.mm2;
  expect(["12", "10", "8"]).toContain(String(size));
  const quiet = await fixed(draft("quiet-bank.ts"));
  const main = quiet.plan.judgement.network?.network.parts.find(({ name }) => name === "main");
  // 2 AWG of 75 °C may carry 170 A (33 CFR 183.425, Table 5), and the loads are 21 A.
  expect(main).toMatchObject({ ratingA: 150 });
});

test("an inverter on thin wire gets a fuse for its power, not for the current that the thin wire makes it draw", async () => {
  const { before, plan } = await fixed(draft("inverter-on-thin-wire.ts"));
  const ofInverter = (one: CheckedPlan) => runsOf(one).find(({ name }) => name === "inverter cable")!;
  expect(ofInverter(before).loadA).toBeGreaterThan(200);
  // 1,500 W at the cut-off of 11 V are 152 A with the losses; 125 % of that.
  expect(ofInverter(plan).protection?.ratingA).toBe(200);
});

/** Once for each text and choice of offers: several tests ask for it. */
function fixed(text: string, options: FixAllOptions = {}) {
  const key = JSON.stringify([text, options]);
  const known = results.get(key) ?? fixedAnew(text, options);
  results.set(key, known);
  return known;
}

const results = new Map<string, ReturnType<typeof fixedAnew>>();

async function fixedAnew(text: string, options: FixAllOptions) {
  const files = new Map([[`${folder}/plan.ts`, text]]);
  const { plan: before, checker } = await checkFiles(files);
  const all = await checker.fixAll(before, { mostRuns: 400, ...options });
  const { plan } = all ? await checkFiles(applyEdits(files, all.edits)) : { plan: before };
  await closeCheckers();
  return { before, plan, title: all?.title };
}

function textOf(plan: CheckedPlan): string {
  return plan.snapshot.get(plan.root) as string;
}

/** Errors and warnings that are not accepted. */
function open({ judgement: { findings } }: Pick<CheckedPlan, "judgement">) {
  return findings.filter(
    ({ severity, accepted }) => accepted === undefined && (severity === "error" || severity === "warning"),
  );
}

function isOffer({ otherDevices }: { readonly otherDevices?: number }): boolean {
  return otherDevices !== undefined;
}

function runsOf({ judgement: { circuits } }: CheckedPlan): readonly Run[] {
  return circuits.map(({ circuit }) => circuit);
}

function copperOf(plan: CheckedPlan): number {
  return runsOf(plan).reduce((sum, run) => sum + copperMm2M(run, run.conductor), 0);
}

/** The thinnest size from `least` on with which a run is thick enough as a return behind the devices of a plan. */
function asReturn({ judgement }: CheckedPlan, { record }: Run, least: Conductor): Conductor {
  if (!judgement.network) return least;
  const { network, result } = judgement.network;
  const isThin = (conductor: Conductor) => {
    const conductors = network.conductors.map((one) =>
      one.record === record ? { ...one, run: { ...one.run, conductor } } : one,
    );
    const thin = thinReturns({ network: { ...network, conductors }, result });
    return thin.some(({ conductor: one }) => one.record === record);
  };
  return sizesFrom(least).find((conductor) => !isThin(conductor)) ?? least;
}

/** By name: size and ratings. */
function sizesIn(plan: CheckedPlan): readonly string[] {
  return runsOf(plan)
    .map(({ name, conductor, protection, protectionFarEnd }) =>
      JSON.stringify([name, conductor, protection?.ratingA, protectionFarEnd?.ratingA]),
    )
    .sort();
}
