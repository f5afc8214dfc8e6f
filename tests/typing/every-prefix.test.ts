import ts from "typescript";
import { afterAll, describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { createEditorWorkspace } from "../../server/editor-workspace.ts";
import type { CheckedPlan, CheckOutcome } from "../../server/evaluate/checked-plan.ts";
import { type Checker, createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { Workspace } from "../../server/evaluate/workspace.ts";
import { everyCase, sampled } from "../setup/sampled.ts";
import { examplePlans, ownPlans, type TypedPlan } from "./typed-plans.ts";

/**
 * Prefixes of every plan, as if typed one character after the other. The gate takes these of a short plan, and a share of them of a long
 * one: each third one, and each one that ends with a token, of a long plan {@link mostPrefixes} of them at even distances. A run of every
 * case takes every prefix. The checker never throws, every text is either incomplete or checked, and at the end the result is exactly that of a
 * checker that has never seen any other text.
 */
describe("every prefix", () => {
  test.each([...ownPlans, ...examplePlans()])(
    "$name",
    { timeout: everyCase ? 900_000 : 300_000 },
    async (plan) => {
      const typed = editorOf(plan);
      const text = plan.files[plan.file]!;
      let checked = 0;
      for (const length of lengthsOfThisRun(text)) {
        const outcome = await typed.check(text.slice(0, length));
        if (outcome.state === "checked") {
          checked++;
          expectSound(outcome);
        }
      }
      expect(checked).toBeGreaterThan(0);
      expect(drawn(await typed.check(text))).toEqual(drawn(await editorOf(plan).check(text)));
    },
  );
});

test("the prefixes of the gate end behind each token, also in and after a template", () => {
  const text = 'circuit({ name: `${a} b`, gauge: "1/0" }); // end';
  const tokens = [
    "circuit",
    "(",
    "{",
    " name",
    ":",
    " `${",
    "a",
    "} b`",
    ",",
    " gauge",
    ":",
    ' "1/0"',
    " }",
    ")",
    ";",
  ];
  let length = 0;
  expect([...tokenEnds(text)]).toEqual(tokens.map((token) => (length += token.length)));
});

const mostPrefixes = 600;

/** Few prefixes of a short text are whole, and a share of them might have none. */
const shortText = 1_000;

function lengthsOfThisRun(text: string): readonly number[] {
  if (everyCase) return Array.from({ length: text.length + 1 }, (_, at) => at);
  const lengths = sampledLengths(text);
  return text.length < shortText ? lengths : sampled("prefixes of plans", lengths);
}

function sampledLengths(text: string): readonly number[] {
  const ends = tokenEnds(text);
  const lengths: number[] = [];
  for (let length = 0; length <= text.length; length++)
    if (length % 3 === 0 || ends.has(length)) lengths.push(length);
  const step = Math.max(1, lengths.length / mostPrefixes);
  return lengths.filter((_, at) => Math.floor(at / step) !== Math.floor((at - 1) / step));
}

/** Lengths of the prefixes that end with a token, comments not counted. */
function tokenEnds(text: string): ReadonlySet<number> {
  const source = ts.createSourceFile("plan.ts", text, ts.ScriptTarget.Latest);
  const ends = new Set<number>();
  const visit = (node: ts.Node) => {
    const children = node.getChildren(source);
    if (children.length === 0 && node.end > node.getStart(source)) ends.add(node.end);
    children.forEach(visit);
  };
  visit(source);
  return ends;
}

const checkers: Checker[] = [];

afterAll(async () => {
  await Promise.all(checkers.map((checker) => checker.dispose()));
});

/** The plan's files on an imagined disk, and the typed one open in an editor. */
function editorOf({ file, files }: TypedPlan) {
  const folder = "file:///typed/";
  const disk: Workspace = {
    read(uri) {
      const text = files[uri.slice(folder.length)];
      return text === undefined ? undefined : { uri, version: "on disk", text };
    },
    folders: () => [folder.slice(0, -1)],
    realUri: (uri) => uri,
    planFiles: () => Object.keys(files).map((name) => folder + name),
  };
  const workspace = createEditorWorkspace(() => disk);
  const checker = createChecker(workspace, { sandbox: sharedSandbox, limits: { timeMs: 200 } });
  checkers.push(checker);
  const uri = folder + file;
  const document = TextDocument.create(uri, "typescript", 0, "");
  workspace.open(document);
  return {
    check(text: string): Promise<CheckOutcome> {
      TextDocument.update(document, [{ text }], document.version + 1);
      return checker.check(uri);
    },
  };
}

/** Every finding has a message, and a range inside the text. */
function expectSound(plan: CheckedPlan): void {
  for (const { message, place } of plan.findings) {
    expect(message).not.toBe("");
    expect(message).not.toMatch(/undefined|NaN A|\[object/);
    expect(place.start).toBeLessThanOrEqual(place.end);
    expect(plan.snapshot.has(place.uri)).toBe(true);
  }
}

function drawn(outcome: CheckOutcome): unknown {
  if (outcome.state === "incomplete") return "incomplete";
  return outcome.findings.map(({ finding, message, place, subjects }) => [
    finding.rule,
    finding.severity,
    message,
    // The point at which an endless loop is stopped depends on the machine.
    finding.rule === "plan/too-slow" ? place.uri : place,
    subjects,
  ]);
}
