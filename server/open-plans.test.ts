import type ts from "typescript";
import { afterEach, describe, expect, test, vi } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { createEditorWorkspace } from "./editor-workspace.ts";
import type { Duty } from "./engine-messages.ts";
import { type Checker, createChecker } from "./evaluate/checker.ts";
import type { Uri, Workspace } from "./evaluate/workspace.ts";
import { createOpenPlans } from "./open-plans.ts";

const folder = "file:///plans/";
const van = `${folder}van.ts`;
const boat = `${folder}boat.ts`;
const parts = `${folder}parts.ts`;
const web = `${folder}web.ts`;
const using = `import { circuit } from "loomwright";\nimport { size } from "./parts.ts";\ncircuit({ load: 40, oneWayFt: 15, gauge: size, protect: 50 });\n`;

const parses = vi.hoisted(() => ({ count: 0 }));

vi.mock("typescript", async (original) => {
  const { default: typescript } = await original<{ default: typeof ts }>();
  const counted = (target: typeof ts, property: keyof typeof ts) => {
    if (property === "createSourceFile" || property === "updateSourceFile") parses.count++;
    return target[property];
  };
  return { default: new Proxy(typescript, { get: counted as never }) };
});

const checkers: Checker[] = [];

afterEach(async () => {
  vi.restoreAllMocks();
  await Promise.all(checkers.splice(0).map((checker) => checker.dispose()));
});

function setUp(onDisk: Readonly<Record<Uri, string>> = {}, role: Duty["role"] = "foreground") {
  const texts: Record<Uri, string> = { ...onDisk };
  const disk: Workspace = {
    read: (uri) => (texts[uri] === undefined ? undefined : { uri, version: texts[uri], text: texts[uri] }),
    folders: () => [folder.slice(0, -1)],
    realUri: (uri) => uri,
    planFiles: () => Object.keys(texts).filter((uri) => texts[uri]!.includes("loomwright")),
  };
  const workspace = createEditorWorkspace(() => disk);
  const checker = createChecker(workspace);
  checkers.push(checker);
  const check = vi.spyOn(checker, "check");
  const events: string[] = [];
  const name = (uri: Uri) => uri.slice(folder.length);
  const plans = createOpenPlans(checker, {
    workspace,
    duty: () => ({ role, slow: [], givenUp: [] }),
    firstSerial: 0,
    workOn: () => undefined,
    elsewhere: () => undefined,
    rested: () => undefined,
    log: (text) => events.push(`log ${text}`),
    started: () => undefined,
    arrived: ({ root, outcome }) => events.push(`${name(root)} ${outcome?.state}`),
    gone: (root) => events.push(`${name(root)} gone`),
  });
  const documents = new Map<Uri, TextDocument>();
  return {
    plans,
    workspace,
    events,
    /** The root of each check. */
    runs: () => check.mock.calls.map(([root]) => name(root)),
    async open(uri: Uri, text = texts[uri] ?? "") {
      const document = TextDocument.create(uri, "typescript", 1, text);
      documents.set(uri, document);
      workspace.open(document);
      plans.touched([uri]);
      await plans.settledOf(uri);
    },
    async type(uri: Uri, text: string) {
      const document = documents.get(uri)!;
      TextDocument.update(document, [{ text }], document.version + 1);
      plans.touched([uri]);
      await plans.settledOf(uri);
    },
    async close(uri: Uri) {
      workspace.close(uri);
      plans.touched([uri]);
      await plans.settledOf(uri);
    },
    async onDisk(changes: Readonly<Record<Uri, string | undefined>>) {
      for (const [uri, text] of Object.entries(changes)) {
        if (text === undefined) delete texts[uri];
        else texts[uri] = text;
      }
      checker.changedOnDisk(Object.keys(changes));
      plans.touched(Object.keys(changes));
      await Promise.all(workspace.openFiles().map((uri) => plans.settledOf(uri)));
    },
  };
}

describe("open plans", () => {
  test("a file that is no part of a plan is neither parsed nor checked", async () => {
    const editor = setUp({ [van]: using, [parts]: "export const size = 4;\n" });
    await editor.open(van);
    const parsedBefore = parses.count;
    const checksBefore = editor.runs().length;
    await editor.open(web, "export const answer = 42;\n");
    for (let i = 0; i < 20; i++) await editor.type(web, `export const answer = ${i};\n`);
    expect(parses.count).toBe(parsedBefore);
    expect(editor.runs()).toHaveLength(checksBefore);
    // And the counter works.
    await editor.type(van, `${using}\n`);
    expect(parses.count).toBeGreaterThan(parsedBefore);
  });

  test("a part that is open alone brings its plan with it", async () => {
    const editor = setUp({ [van]: using, [parts]: "export const size = 4;\n" });
    await editor.open(parts);
    expect(editor.events).toEqual(["van.ts checked"]);
    await editor.type(parts, "export const size = 6;\n");
    expect(editor.events).toEqual(["van.ts checked", "van.ts checked"]);
    await editor.close(parts);
    expect(editor.events.at(-1)).toBe("van.ts gone");
  });

  test("an edit in one plan does not run the other; one in a shared part runs both", async () => {
    const editor = setUp({ [van]: using, [boat]: using, [parts]: "export const size = 4;\n" });
    await editor.open(van);
    await editor.open(boat);
    expect(editor.runs()).toEqual(["van.ts", "boat.ts"]);
    await editor.type(van, `${using}\n`);
    expect(editor.runs()).toEqual(["van.ts", "boat.ts", "van.ts"]);
    await editor.onDisk({ [parts]: "export const size = 6;\n" });
    expect(editor.runs().slice(3).sort()).toEqual(["boat.ts", "van.ts"]);
  });

  test("a file that was missing and comes runs the plan that wants it", async () => {
    const editor = setUp({ [van]: using });
    await editor.open(van);
    const known = editor.plans.knownOf(van)[0];
    expect(known?.outcome?.state === "checked" && known.outcome.findings[0]?.finding.rule).toBe(
      "plan/cannot-run",
    );
    await editor.onDisk({ [parts]: "export const size = 4;\n" });
    const [after] = editor.plans.knownOf(van);
    expect(after?.outcome?.state === "checked" && after.outcome.judgement.circuits).toHaveLength(1);
  });

  test("half typed: the last complete result stays at hand, and knows that it is not current", async () => {
    const editor = setUp({ [van]: using, [parts]: "export const size = 4;\n" });
    await editor.open(van);
    await editor.type(van, `${using}circuit({`);
    const [plan] = editor.plans.knownOf(van);
    expect(plan?.outcome?.state).toBe("incomplete");
    expect(plan?.view?.current).toBe(false);
    expect(plan?.view?.plan.judgement.circuits).toHaveLength(1);
    // A file of a plan still belongs to it while the root is half typed.
    expect(editor.plans.knownOf(parts)).toHaveLength(1);
  });

  test("a plan that no longer imports the library is gone", async () => {
    const editor = setUp({ [van]: using, [parts]: "export const size = 4;\n" });
    await editor.open(van);
    await editor.type(van, "export const nothing = 1;\n");
    expect(editor.events.at(-1)).toBe("van.ts gone");
    await editor.type(van, using);
    expect(editor.events.at(-1)).toBe("van.ts checked");
  });

  test("a file closed and opened again with other text at the same version is checked anew", async () => {
    const editor = setUp({ [parts]: "export const size = 4;\n" });
    await editor.open(van, using);
    await editor.close(van);
    await editor.open(van, using.repeat(1).replace("load: 40", "load: 10"));
    const [plan] = editor.plans.knownOf(van);
    expect(plan?.outcome?.state === "checked" && plan.outcome.judgement.circuits[0]?.circuit.loadA).toBe(10);
  });

  test("closing a file that was no plan in the editor brings back the plan that it is on disk", async () => {
    const editor = setUp({ [van]: using, [parts]: "export const size = 4;\n" });
    await editor.open(van, "export const nothing = 1;\n");
    await editor.open(parts);
    expect(editor.events).toEqual([]);
    await editor.close(van);
    await editor.plans.settledOf(parts);
    expect(editor.events).toEqual(["van.ts checked"]);
    await editor.type(parts, "export const size = 6;\n");
    expect(editor.events).toEqual(["van.ts checked", "van.ts checked"]);
  });

  test("other limits run everything again", async () => {
    const editor = setUp({ [van]: using, [parts]: "export const size = 4;\n" });
    await editor.open(van);
    const checker = createChecker(editor.workspace);
    checkers.push(checker);
    const check = vi.spyOn(checker, "check");
    editor.plans.use(checker);
    await editor.plans.settledOf(van);
    expect(check).toHaveBeenCalledOnce();
  });

  test("other limits while a check is in flight: its result is not shown, and everything runs again", async () => {
    const editor = setUp({ [van]: using, [parts]: "export const size = 4;\n" });
    const opening = editor.open(van);
    await vi.waitUntil(() => editor.runs().length > 0);
    expect(editor.runs()).toEqual(["van.ts"]);
    const checker = createChecker(editor.workspace);
    checkers.push(checker);
    const check = vi.spyOn(checker, "check");
    editor.plans.use(checker);
    await opening;
    await editor.plans.settledOf(van);
    expect(check).toHaveBeenCalledOnce();
    expect(editor.events).toEqual(["van.ts checked"]);
  });

  test("the whole workspace stays checked once it was asked for", async () => {
    const editor = setUp(
      { [van]: using, [boat]: using, [parts]: "export const size = 4;\n", [web]: "let x = 1;" },
      "background",
    );
    const shown = await editor.plans.checkWorkspace();
    expect(shown.map(({ root }) => root).sort()).toEqual([boat, van]);
    await editor.onDisk({ [boat]: undefined });
    expect(editor.events).toContain("boat.ts gone");
  });
});
