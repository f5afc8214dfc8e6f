import { readdirSync, readFileSync } from "node:fs";
import { afterAll, describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { messageOf } from "../../library/rules/message-of.ts";
import type { CheckedPlan } from "../../server/evaluate/checked-plan.ts";
import { type Checker, createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { Uri } from "../../server/evaluate/workspace.ts";
import { completions, typedValue } from "../../server/language/completions.ts";
import { planUnderCursor } from "../../server/language/feature.tester.ts";
import { hover } from "../../server/language/hover.ts";
import { folder, workspaceOf } from "../provenance/marked-plan.ts";
import { everyCase, sampled } from "../setup/sampled.ts";

/*
 * Over a run of unknown length no drop is met: builds lose each length in turn, and every fix, completion, message and hover is held
 * to that.
 */

const files = new Map<Uri, string>();
const checker = createChecker(workspaceOf(files), { sandbox: sharedSandbox });
afterAll(() => checker.dispose());

const plans = ["faulty", "drafts"].flatMap((kind) =>
  readdirSync(new URL(`../builds/${kind}/`, import.meta.url)).map((name) => `builds/${kind}/${name}`),
);

/** Over all plans. */
const counts = { tried: 0, fixes: 0, completions: 0, praised: 0 };

const statedLength = /\b(?:lengthFt|lengthM|oneWayFt|oneWayM): [\d.]+,?/g;

describe("without one of its lengths", () => {
  test.each(sampled("plans without one length", plans))("%s", async (name) => {
    const text = readFileSync(new URL(`../${name}`, import.meta.url), "utf8");
    const root = `${folder}/${name}`;
    for (const { 0: stated, index } of text.matchAll(statedLength)) {
      const without = text.slice(0, index) + text.slice(index + stated.length);
      const plan = await checked(root, without);
      if (!plan || unknownTo(plan).length === 0) continue;
      counts.tried++;
      for (const { finding } of plan.findings) expect(messageOf(finding)).not.toMatch(praise);
      await holdFixes(plan);
      await holdCompletions(checker, root, without);
    }
  });

  test("enough was tried", () => {
    expect(counts.tried).toBeGreaterThan(0);
    expect(counts.completions).toBeGreaterThan(100);
    // A share of the plans may have no such fix, and no size or rating whose ways are all known.
    if (!everyCase) return;
    expect(counts.fixes).toBeGreaterThan(0);
    expect(counts.praised).toBeGreaterThan(0);
  });
});

test("a hover shows no margin of such a drop, and a fix that makes its known part small enough names the length", async () => {
  const plan = `import { battery, busBar, cable, circuit } from "loomwright";
const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
const bus = busBar({ ratedA: 150 });
cable({ name: "feed", from: house.positive, to: bus.stud, gauge: 4, protect: 60 });`;
  const lamp = `
circuit({ name: "la‸mp", from: bus.stud, returnTo: house.negative, load: 8, oneWayM: 12, gauge: 14, protect: 10, critical: true });`;
  const { view, uri, position } = await planUnderCursor(plan + lamp);
  const contents = hover(view, uri, position)?.contents;
  const words = contents && typeof contents === "object" && "value" in contents ? contents.value : "";
  expect(words).toContain("at least");
  const root = `${folder}/lamp.ts`;
  const text = (plan + lamp).replace("‸", "");
  const judged = (await checked(root, text))!;
  const found = judged.findings.find(({ finding }) => finding.rule === "conductor/voltage-drop")!;
  const [fix] = await checker.provenFixes(judged, found);
  expect(fix?.title).toMatch(/^Use \d+ AWG.*, or thicker: the length of feed is not known$/);
});

/** Their fixes are for a drop or a voltage. A size that is chosen for another reason claims neither. */
const ofVoltage: ReadonlySet<string> = new Set([
  "conductor/voltage-drop",
  "scenario/device-below-minimum",
  "voltage/collapse",
]);

/** Words that would claim it. That no thinner size meets a limit is no claim about the one that is offered. */
const praise = /limits? met|(?<!no thinner size )meets (?:its|the|all) limit|within (?:its|the|all) limit/i;

async function checked(root: Uri, text: string): Promise<CheckedPlan | undefined> {
  files.clear();
  files.set(root, text);
  const outcome = await checker.check(root);
  return outcome.state === "checked" && outcome.judgement.network ? outcome : undefined;
}

/** The supply paths with an unknown length. */
function unknownTo({ judgement }: CheckedPlan) {
  return judgement.network!.result.supplyPaths.filter(({ withoutLength }) => withoutLength.length > 0);
}

/** A fix for a loss that is "at least" known names the length: with that, the loss may still be too great. */
async function holdFixes(plan: CheckedPlan): Promise<void> {
  for (const placed of plan.findings) {
    const message = messageOf(placed.finding);
    if (!ofVoltage.has(placed.finding.rule) || !/^At least|at most/.test(message)) continue;
    for (const { title } of await checker.provenFixes(plan, placed)) {
      counts.fixes++;
      expect(title, message).toContain("not known");
    }
  }
}

/** The sizes and ratings of the first and of the last run that states one: of a cable near the bank, and of a branch. */
async function holdCompletions(of: Checker, root: Uri, text: string): Promise<void> {
  const places = ["gauge", "mm2", "protect"].flatMap((property) => {
    const all = [...text.matchAll(new RegExp(`\\b${property}: `, "g"))];
    return all.length > 1 ? [all[0]!, all.at(-1)!] : all;
  });
  for (const { 0: property, index } of places) {
    const start = index + property.length;
    const typed = typedValue(text, start);
    if (!typed) continue;
    const document = TextDocument.create(root, "typescript", 1, text);
    const items = await completions({
      ...{ checker: of, root, uri: root, text, typed },
      positionAt: (offset) => document.positionAt(offset),
    });
    for (const { label, labelDetails, detail } of items) {
      counts.completions++;
      if (!praise.test(`${labelDetails?.description} ${detail}`)) continue;
      counts.praised++;
      const written = text.slice(0, typed.start) + label + text.slice(typed.end);
      const trial = await of.checkAs(root, new Map([[root, written]]));
      if (trial.state !== "checked" || !trial.judgement.network) continue;
      const spot = trial.at(root, typed.start);
      const { network } = trial.judgement.network;
      const own = unknownTo(trial).filter(({ legs }) =>
        legs.some(({ conductor }) => network.conductors[conductor]!.record === spot?.record),
      );
      expect(
        own.map(({ part }) => network.parts[part]!.name),
        `${property}${label}`,
      ).toEqual([]);
    }
  }
}
