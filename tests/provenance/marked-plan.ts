import { expect } from "vitest";
import type { CheckedPlan, SourceRange } from "../../server/evaluate/checked-plan.ts";
import { type Checker, createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { Uri, Workspace } from "../../server/evaluate/workspace.ts";

/**
 * A plan as text with marks: below a line, a comment whose carets are exactly below the characters of a finding, then severity,
 * rule, `{names}` if it is about several circuits, and the start of the message. `related` in place of severity and rule marks a
 * related place. A line `// file: name.ts` starts a further file; the first file is `plan.ts`.
 *
 *     circuit({ load: 20, oneWayFt: 3, gauge: 8, protect: 15 });
 *     //                                                  ^^ error protection/below-load The 15 A fuse
 *
 * Every finding must be marked and every mark must be found; hints are left out.
 */
export async function expectMarks(text: string): Promise<CheckedPlan> {
  const { files, marks } = readMarked(text);
  const { plan } = await checkFiles(files);
  const found: string[] = [];
  for (const { finding, place, message, related, subjects } of plan.findings) {
    if (finding.severity === "hint") continue;
    const several = subjects.length > 1 ? ` {${subjects.join(", ")}}` : "";
    found.push(`${placeText(place)} ${finding.severity} ${finding.rule}${several} ${message}`);
    found.push(...related.map((other) => `${placeText(other.place)} related ${other.text}`));
  }
  const missed = marks.filter((mark) => !found.some((line) => line.startsWith(mark)));
  const unexpected = found.filter((line) => !marks.some((mark) => line.startsWith(mark)));
  expect({ missed, unexpected }).toEqual({ missed: [], unexpected: [] });
  return plan;

  /** Line and columns as in the text without marks, and the characters, to make a failure readable. */
  function placeText({ uri, start, end }: SourceRange): string {
    return describePlace(uri, files.get(uri) ?? "", start, end);
  }
}

/** Checks `plan.ts` of some files; the checker stays open until the test has ended. */
export async function checkFiles(
  files: ReadonlyMap<Uri, string>,
  root: Uri = `${folder}/plan.ts`,
  options?: Parameters<typeof createChecker>[1],
) {
  const checker = createChecker(workspaceOf(files), { sandbox: sharedSandbox, ...options });
  checkers.push(checker);
  const plan = await checker.check(root);
  if (plan.state !== "checked") throw new Error(`held: ${plan.broken} ${plan.unfinished.text}`);
  return { checker, plan };
}

export const folder = "file:///plans";

export function workspaceOf(files: ReadonlyMap<Uri, string>): Workspace {
  return {
    read(uri) {
      const text = files.get(uri);
      // The text itself serves as version, because it changes whenever the text does.
      return text === undefined ? undefined : { uri, version: text, text };
    },
    folders: () => [folder],
    realUri: (uri) => uri,
    planFiles: () => [...files].filter(([, text]) => text.includes("loomwright")).map(([uri]) => uri),
  };
}

export function filesOf(text: string): Map<Uri, string> {
  return readMarked(text).files;
}

/** Called by a test file's `afterAll`. */
export async function closeCheckers(): Promise<void> {
  await Promise.all(checkers.splice(0).map((checker) => checker.dispose()));
}

const checkers: Checker[] = [];

const markLine = /^( *\/\/ *)(\^+) (.+)$/;

function readMarked(text: string) {
  const files = new Map<Uri, string>();
  const marks: string[] = [];
  for (const part of `// file: plan.ts\n${text}`.split(/^\/\/ file: /m).slice(1)) {
    const lineBreak = part.indexOf("\n");
    const uri = `${folder}/${part.slice(0, lineBreak).trim()}`;
    const kept: string[] = [];
    const expected: { start: number; end: number; rest: string }[] = [];
    for (const line of part.slice(lineBreak + 1).split("\n")) {
      const [, before, carets, rest] = markLine.exec(line) ?? [];
      if (before === undefined || !carets || !rest) {
        kept.push(line);
        continue;
      }
      const lineStart = kept.slice(0, -1).reduce((sum, { length }) => sum + length + 1, 0);
      expected.push({
        start: lineStart + before.length,
        end: lineStart + before.length + carets.length,
        rest,
      });
    }
    const plain = kept.join("\n");
    files.set(uri, plain);
    marks.push(...expected.map(({ start, end, rest }) => `${describePlace(uri, plain, start, end)} ${rest}`));
  }
  return { files, marks };
}

function describePlace(uri: Uri, text: string, start: number, end: number): string {
  const before = text.slice(0, start);
  const line = before.split("\n").length;
  const column = start - before.lastIndexOf("\n");
  return `${uri.slice(folder.length + 1)}:${line}:${column} «${text.slice(start, end)}»`;
}
