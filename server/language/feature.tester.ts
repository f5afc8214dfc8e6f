import { onTestFinished } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Position, Range } from "vscode-languageserver-types";
import { createEditorWorkspace, type EditorWorkspace } from "../editor-workspace.ts";
import { type Checker, createChecker } from "../evaluate/checker.ts";
import { sharedSandbox } from "../evaluate/shared-sandbox.tester.ts";
import type { Uri, Workspace } from "../evaluate/workspace.ts";
import { type PlanInView, viewPlan } from "./plan-in-view.ts";

/** A plan for the tests of one feature: checked by the real engine, with a place in its text marked by `‸`. */
export interface PlanUnderCursor {
  readonly uri: Uri;
  readonly view: PlanInView;
  readonly checker: Checker;
  readonly workspace: EditorWorkspace;
  /** The place of `‸`; the start of the file if there is none. */
  readonly position: Position;
  /** An empty range there. */
  readonly range: Range;
  /** The text without the mark. */
  readonly text: string;
}

const folder = "file:///plans/";

/**
 * Checks a plan, inside a test: a line that imports `circuit` and `build` is added if it has no import. Further files are given
 * by name. `later` is the editor's text after the check, for features that answer "as of the last complete text".
 */
export async function planUnderCursor(
  marked: string,
  { files = {}, later }: { files?: Readonly<Record<string, string>>; later?: string } = {},
): Promise<PlanUnderCursor> {
  const whole = (text: string) =>
    text.includes("loomwright") ? text : `import { build, circuit } from "loomwright";\n${text}`;
  const uri = `${folder}van.ts`;
  const markedNow = whole(later ?? marked);
  const cursor = Math.max(0, markedNow.indexOf("‸"));
  const now = markedNow.replace("‸", "");
  const checkedText = whole(marked).replace("‸", "");

  const workspace = createEditorWorkspace(() => diskOf(files));
  const document = TextDocument.create(uri, "typescript", 1, checkedText);
  workspace.open(document);
  // A machine that is busy with other tests must not make a plan look endless.
  const checker = createChecker(workspace, { sandbox: sharedSandbox, limits: { timeMs: 60_000 } });
  onTestFinished(() => checker.dispose());
  const plan = await checker.check(uri);
  if (plan.state !== "checked") throw new Error(`The plan is half typed: ${JSON.stringify(plan)}`);

  const checked = new Map<Uri, TextDocument>();
  for (const file of plan.snapshot.keys()) {
    const text = workspace.read(file)?.text;
    if (text !== undefined) checked.set(file, TextDocument.create(file, "typescript", 0, text));
  }
  if (later !== undefined) TextDocument.update(document, [{ text: now }], 2);
  const view = viewPlan({
    plan,
    checked: (file) => checked.get(file),
    now: workspace.document,
    client: workspace.client,
  });
  const position = document.positionAt(cursor);
  return { uri, view, checker, workspace, position, range: { start: position, end: position }, text: now };
}

function diskOf(files: Readonly<Record<string, string>>): Workspace {
  const texts = new Map(Object.entries(files).map(([name, text]) => [`${folder}${name}`, text]));
  return {
    read(uri) {
      const text = texts.get(uri);
      return text === undefined ? undefined : { uri, version: "on disk", text };
    },
    folders: () => [folder.slice(0, -1)],
    realUri: (uri) => uri,
    planFiles: () => [...texts].filter(([, text]) => text.includes("loomwright")).map(([uri]) => uri),
  };
}
