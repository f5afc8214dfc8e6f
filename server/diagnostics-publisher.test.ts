import { describe, expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { createDiagnosticsPublisher } from "./diagnostics-publisher.ts";
import { createEditorWorkspace } from "./editor-workspace.ts";
import type { CheckedPlan, IncompletePlan, PlacedFinding } from "./evaluate/checked-plan.ts";
import type { Uri, Workspace } from "./evaluate/workspace.ts";
import { viewPlan } from "./language/plan-in-view.ts";
import type { ShownPlan } from "./open-plans.ts";
import type { FailedPlan } from "./publish-gate.ts";

const van = "file:///plans/van.ts";
const boat = "file:///plans/boat.ts";
const parts = "file:///plans/parts.ts";
const text = "circuit({ gauge: 12 });";

const emptyDisk: Workspace = {
  read: (uri) => (uri === parts ? { uri, version: "disk", text } : undefined),
  folders: () => [],
  realUri: (uri) => uri,
  planFiles: () => [],
};

/** An editor, and plans with outcomes that the test makes up: findings are given as [file, message]. */
function setUp({ editorPulls }: { editorPulls: boolean }) {
  const workspace = createEditorWorkspace(() => emptyDisk);
  const plans = new Map<Uri, ShownPlan & { readonly files: readonly Uri[] }>();
  const pushes: { uri: string; version: number | undefined; messages: string[] }[] = [];
  let asked = 0;
  let serial = 0;
  const of = (file: Uri) => [...plans.values()].filter(({ files }) => files.includes(file));
  const delivery = createDiagnosticsPublisher({
    workspace,
    plans: { knownOf: of, settledOf: async (file) => of(file) },
    editorPulls,
    push: (uri, version, items) => pushes.push({ uri, version, messages: messagesOf(items) }),
    askToPull: () => {
      asked++;
    },
  });
  const arrive = (root: Uri, files: readonly Uri[], outcome: ShownPlan["outcome"], keepView = false) => {
    serial++;
    const before = plans.get(root)?.view;
    const checked = outcome?.state === "checked" ? outcome : undefined;
    const texts = new Map(files.map((uri) => [uri, TextDocument.create(uri, "typescript", 0, text)]));
    const view = checked
      ? viewPlan({
          plan: checked,
          checked: (uri) => texts.get(uri),
          now: workspace.document,
          client: workspace.client,
        })
      : keepView
        ? before
        : undefined;
    const plan = { root, files, serial, outcome, view };
    plans.set(root, plan);
    delivery.arrived(plan);
  };
  return {
    workspace,
    delivery,
    pushes,
    asked: () => asked,
    open(uri: Uri, version = 1) {
      workspace.open(TextDocument.create(uri, "typescript", version, text));
      delivery.openedOrClosed(uri);
    },
    type(uri: Uri, version: number) {
      workspace.open(TextDocument.create(uri, "typescript", version, text));
    },
    close(uri: Uri) {
      workspace.close(uri);
      delivery.openedOrClosed(uri);
    },
    checked(root: Uri, findings: readonly (readonly [Uri, string])[], imported: readonly Uri[] = []) {
      const files = [root, ...imported];
      const snapshot = new Map(files.map((uri) => [uri, workspace.read(uri)?.version]));
      const placed = findings.map(([uri, message]): PlacedFinding => {
        const finding = { rule: "a/b", severity: "error", subject: "x", related: [], fixes: [] };
        return {
          finding: { ...finding, at: { record: 0, path: [] }, values: {} } as PlacedFinding["finding"],
          subjects: ["x"],
          message,
          place: { uri, start: 0, end: 7 },
          related: [],
        };
      });
      arrive(root, files, { state: "checked", root, snapshot, findings: placed } as unknown as CheckedPlan);
    },
    incomplete(root: Uri, files: readonly Uri[] = [root]) {
      arrive(
        root,
        files,
        { state: "incomplete", root, snapshot: new Map(), broken: root } as unknown as IncompletePlan,
        true,
      );
    },
    failed(root: Uri, reason: string) {
      arrive(root, [root], { state: "failed", root, reason } satisfies FailedPlan);
    },
    gone(root: Uri) {
      plans.delete(root);
      delivery.gone(root);
    },
    pull: async (file: Uri, previous?: string) => {
      const answer = await delivery.pull(file, previous);
      return answer.kind === "full" ? messagesOf(answer.items) : answer.kind;
    },
    resultId: async (file: Uri) => {
      const answer = await delivery.pull(file, undefined);
      return answer.kind === "full" ? answer.id : undefined;
    },
  };
}

/** Strips the name of the circuit, which is the same in every finding here. */
function messagesOf(items: readonly Diagnostic[]): string[] {
  return items.map(({ message }) => String(message).replace(/^x: /, ""));
}

describe("findings that are pushed", () => {
  test("carry the version of the text they belong to", () => {
    const editor = setUp({ editorPulls: false });
    editor.open(van, 7);
    editor.checked(van, [[van, "too thin"]]);
    expect(editor.pushes).toEqual([{ uri: van, version: 7, messages: ["too thin"] }]);
  });

  test("a checked plan without findings says so once; an incomplete one says nothing", () => {
    const editor = setUp({ editorPulls: false });
    editor.open(van);
    editor.checked(van, [[van, "too thin"]]);
    editor.incomplete(van);
    expect(editor.pushes).toHaveLength(1);
    editor.checked(van, []);
    expect(editor.pushes.at(-1)).toEqual({ uri: van, version: 1, messages: [] });
  });

  test("a plan that was never whole has nothing pushed, not even an empty list", () => {
    const editor = setUp({ editorPulls: false });
    editor.open(van);
    editor.incomplete(van);
    expect(editor.pushes).toEqual([]);
  });

  test("findings in an imported file go to that file, and are taken back when the plan closes", () => {
    const editor = setUp({ editorPulls: false });
    editor.open(van);
    editor.checked(van, [[parts, "too thin"]], [parts]);
    expect(editor.pushes.at(-1)).toEqual({ uri: parts, version: undefined, messages: ["too thin"] });
    editor.close(van);
    editor.gone(van);
    expect(editor.pushes.slice(-2).map(({ uri, messages }) => [uri, messages])).toEqual([
      [van, []],
      [parts, []],
    ]);
  });

  test("two plans with one file: what both say is said once, and closing one keeps the other's", () => {
    const editor = setUp({ editorPulls: false });
    editor.open(van);
    editor.open(boat);
    editor.checked(van, [[parts, "too thin"]], [parts]);
    editor.checked(
      boat,
      [
        [parts, "too thin"],
        [parts, "no fuse"],
      ],
      [parts],
    );
    const last = () => editor.pushes.filter(({ uri }) => uri === parts).at(-1)?.messages;
    expect(last()).toEqual(["too thin", "no fuse"]);
    editor.gone(boat);
    expect(last()).toEqual(["too thin"]);
  });

  test("a plan that could not be checked says why: silence would read as nothing found", () => {
    const editor = setUp({ editorPulls: false });
    editor.open(van);
    editor.failed(van, "the worker died");
    expect(editor.pushes.at(-1)?.messages).toEqual([
      "This plan could not be checked: the worker died. None of it was judged.",
    ]);
  });
});

describe("findings that are pulled", () => {
  test("nothing is pushed for a file that is open, but files that are not open still are", () => {
    const editor = setUp({ editorPulls: true });
    editor.open(van);
    editor.checked(
      van,
      [
        [van, "too thin"],
        [parts, "no fuse"],
      ],
      [parts],
    );
    expect(editor.pushes).toEqual([{ uri: parts, version: undefined, messages: ["no fuse"] }]);
    editor.open(parts);
    expect(editor.pushes.at(-1)).toEqual({ uri: parts, version: undefined, messages: [] });
  });

  test("the same result is unchanged; a new one is not", async () => {
    const editor = setUp({ editorPulls: true });
    editor.open(van);
    editor.checked(van, [[van, "too thin"]]);
    const id = await editor.resultId(van);
    expect(await editor.pull(van, id)).toBe("unchanged");
    editor.checked(van, [[van, "too thin"]]);
    expect(await editor.pull(van, id)).toEqual(["too thin"]);
  });

  test("half typed: unchanged, and nothing at all if there was nothing before", async () => {
    const editor = setUp({ editorPulls: true });
    editor.open(van);
    editor.incomplete(van);
    expect(await editor.pull(van)).toBe("nothing-yet");
    editor.checked(van, [[van, "too thin"]]);
    const id = await editor.resultId(van);
    editor.incomplete(van);
    expect(await editor.pull(van, id)).toBe("unchanged");
  });

  test("put off because another file is half typed, the editor is asked to pull once that is whole", async () => {
    const editor = setUp({ editorPulls: true });
    editor.open(van);
    editor.incomplete(van);
    expect(await editor.pull(van)).toBe("nothing-yet");
    editor.checked(van, []);
    expect(editor.asked()).toBe(1);
  });

  test("a file of no plan has no findings; typed in and unchanged since, it is asked for once a plan has it", async () => {
    const editor = setUp({ editorPulls: true });
    editor.open(parts, 1);
    const id = await editor.resultId(parts);
    expect(await editor.pull(parts)).toEqual([]);
    editor.type(parts, 2);
    expect(await editor.pull(parts, id)).toBe("unchanged");
    editor.checked(van, [[parts, "too thin"]], [parts]);
    expect(editor.asked()).toBe(1);
    expect(await editor.pull(parts, id)).toEqual(["too thin"]);
  });

  test("the editor is asked to pull again only for a file it holds an older answer of", async () => {
    const editor = setUp({ editorPulls: true });
    editor.open(van);
    editor.open(parts);
    editor.checked(van, [[parts, "too thin"]], [parts]);
    expect(editor.asked()).toBe(0);
    await editor.pull(parts);
    editor.checked(van, [[parts, "too thin"]], [parts]);
    expect(editor.asked()).toBe(0);
    editor.checked(van, [[parts, "no fuse"]], [parts]);
    expect(editor.asked()).toBe(1);
  });
});
