import { describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { CodeAction, TextDocumentEdit } from "vscode-languageserver-types";
import { type ActionRequest, codeActions } from "./code-actions.ts";
import { planUnderCursor } from "./feature.tester.ts";
import { fixAllKind } from "./messages.ts";
import { sampleBuild } from "./sample-build.tester.ts";

async function actionsAt(
  marked: string,
  { later, ...asked }: Partial<ActionRequest> & { later?: string } = {},
): Promise<{ actions: CodeAction[]; textAfter(action: CodeAction | undefined): string }> {
  const { view, checker, uri, range, text } = await planUnderCursor(
    marked,
    later === undefined ? {} : { later },
  );
  const actions = await codeActions(view, checker, {
    uri,
    range,
    only: undefined,
    automatic: false,
    editor: { versionedEdits: true, snippetEdits: false, disabledActions: true },
    ...asked,
  });
  return {
    actions,
    textAfter(action) {
      const [change] = (action?.edit?.documentChanges ?? []) as TextDocumentEdit[];
      if (!change) return "";
      const document = TextDocument.create(uri, "typescript", 1, text);
      return TextDocument.applyEdits(document, change.edits as never)
        .split("\n")
        .slice(1)
        .join("\n");
    },
  };
}

const tooThin = `circuit({ name: "winch", load: 40, oneWayFt: 15, gauge: ‸12, protect: 50, insulationC: 105 });`;

describe("code actions", () => {
  test("one preferred fix, tied to the version of the text", async () => {
    const { actions, textAfter } = await actionsAt(tooThin, { only: ["quickfix"] });
    const preferred = actions.filter(({ isPreferred }) => isPreferred);
    expect(preferred).toHaveLength(1);
    expect(textAfter(preferred[0])).toMatch(/gauge: 8, protect: 50/);
    expect(preferred[0]?.edit?.documentChanges).toMatchObject([{ textDocument: { version: 1 } }]);
    expect(preferred[0]?.diagnostics?.map(({ code }) => code)).toEqual(["conductor/voltage-drop"]);
  });

  test("editors without versioned edits get plain ones", async () => {
    const { actions } = await actionsAt(tooThin, {
      only: ["quickfix"],
      editor: { versionedEdits: false, snippetEdits: true, disabledActions: true },
    });
    const [best] = actions.filter(({ isPreferred }) => isPreferred);
    expect(best?.edit?.documentChanges).toBeUndefined();
    expect(Object.keys(best?.edit?.changes ?? {})).toEqual(["file:///plans/van.ts"]);
  });

  test("a bank that no single change mends: an action that cannot be taken, with the reason", async () => {
    const polar = `import { battery, circuit, period } from "loomwright";
const house = battery({ chemistry: "AGM", capacityAh: 100 });
circuit({ from: house.positive, returnTo: house.negative, load: 5, oneWayFt: 5, gauge: 10, protect: 10, use: {} });
‸period({ name: "year", latitudeDeg: 80, longitudeDeg: 0 });`;
    const { actions } = await actionsAt(polar, { only: ["quickfix"] });
    expect(actions).toHaveLength(1);
    expect(actions[0]!.edit).toBeUndefined();
    expect(actions[0]!.disabled!.reason).toContain("No single change mends it, not even a bank of 3,200 Ah");
    const plain = { versionedEdits: true, snippetEdits: false, disabledActions: false };
    expect((await actionsAt(polar, { only: ["quickfix"], editor: plain })).actions).toEqual([]);
  });

  test("findings can be accepted, and the reason is left to the builder", async () => {
    const { actions, textAfter } = await actionsAt(tooThin, { only: ["quickfix"] });
    const accept = actions.find(({ title }) => title.startsWith("Accept"));
    expect(accept?.isPreferred).toBeUndefined();
    expect(textAfter(accept)).toContain('"conductor/voltage-drop": ""');
    const second = await actionsAt(
      tooThin.replace("load", 'accept: { "protection/above-conductor": "bench test" }, load'),
      { only: ["quickfix"] },
    );
    expect(second.textAfter(second.actions.find(({ title }) => title.startsWith("Accept")))).toContain(
      'accept: { "protection/above-conductor": "bench test", "conductor/voltage-drop": "" }',
    );
    const withCursor = await actionsAt(tooThin, {
      only: ["quickfix"],
      editor: { versionedEdits: true, snippetEdits: true, disabledActions: true },
    });
    expect(JSON.stringify(withCursor.actions)).toContain("$0");
  });

  test("accepted findings are left alone", async () => {
    const { actions } = await actionsAt(
      tooThin.replace(
        "load",
        'accept: { "conductor/voltage-drop": "short use", "conductor/terminal-temperature": "studs of 105 °C" }, load',
      ),
      { only: ["quickfix"] },
    );
    expect(actions).toEqual([]);
  });

  test("fix all repairs everything, asked for as a source action or on save", async () => {
    for (const only of [["source"], ["source.fixAll"], [fixAllKind]]) {
      const { actions, textAfter } = await actionsAt(tooThin, { only });
      expect(actions.map(({ kind }) => kind)).toEqual([fixAllKind]);
      expect(textAfter(actions[0])).toMatch(/gauge: 8, protect: 50/);
    }
  });

  test("the title of fix all counts the findings that are gone, not its edits", async () => {
    const thinner = tooThin.replace("12", "14");
    const { actions, textAfter } = await actionsAt(thinner, { only: [fixAllKind] });
    const findingsOf = async (text: string) => (await planUnderCursor(text)).view.plan.judgement.findings;
    const before = await findingsOf(thinner);
    const gone = before.length - (await findingsOf(textAfter(actions[0]))).length;
    expect(gone).toBeGreaterThan(1);
    expect(actions[0]?.title).toBe(`Fix ${gone} findings`);
  });

  test("another tool's fix-all is none of ours, and the light bulb does without", async () => {
    expect((await actionsAt(tooThin, { only: ["source.fixAll.other"] })).actions).toEqual([]);
    const { actions } = await actionsAt(tooThin, { automatic: true });
    expect(actions.map(({ kind }) => kind)).not.toContain(fixAllKind);
  });

  test("nothing to fix, nothing offered", async () => {
    const { actions } = await actionsAt(tooThin.replace("12", "6"));
    expect(actions).toEqual([]);
  });

  test("a thinner size is only ever a rewrite, from two sizes above need", async () => {
    const thick = tooThin.replace("12", `"1/0"`);
    expect((await actionsAt(thick, { only: ["quickfix"] })).actions).toEqual([]);
    expect((await actionsAt(thick, { only: ["source.fixAll"] })).actions).toEqual([]);
    const { actions, textAfter } = await actionsAt(thick, { only: ["refactor"] });
    expect(actions.map(({ kind, isPreferred }) => [kind, isPreferred])).toEqual([
      ["refactor.rewrite", undefined],
    ]);
    expect(textAfter(actions[0])).toContain("gauge: 8,");
    // 8 AWG is needed, 6 AWG is one size above, 4 AWG two.
    const rewritesOf = async (gauge: number) =>
      (await actionsAt(tooThin.replace("12", String(gauge)), { only: ["refactor"] })).actions;
    expect(await rewritesOf(6)).toEqual([]);
    expect(await rewritesOf(4)).toHaveLength(1);
  });

  test("a thinner size is not offered where its constant stands for a length too", async () => {
    const shared = `import { circuit } from "loomwright";
const n = 4;
circuit({ load: 3, oneWayFt: n, gauge: n‸, insulationC: 75, protect: 5 });
`;
    expect((await actionsAt(shared, { only: ["refactor"] })).actions).toEqual([]);
    const alone = shared.replace("oneWayFt: n", "oneWayFt: 4");
    expect((await actionsAt(alone, { only: ["refactor"] })).actions).toHaveLength(1);
  });

  test("no action while the text is half typed", async () => {
    const { actions } = await actionsAt(tooThin.replace("‸", ""), { later: `${tooThin}\ncircuit({` });
    expect(actions).toEqual([]);
  });
});

describe("code actions in a network", () => {
  /** Without the fuse of its first cable, only the heater's own device protects the circuits on the bank. */
  const unprotected = sampleBuild.replace(/ {2}protect: \{ ratingA: 100.*\n/, "");

  test("protection is put into the cable that a source reaches past none, with rating, family and place", async () => {
    const { actions, textAfter } = await actionsAt(
      unprotected.replace("from: bank.positive", "from: bank.‸positive"),
      {
        only: ["quickfix"],
      },
    );
    const [add] = actions;
    expect(add?.title).toMatch(
      /^Add a 150 A fuse \(.*\) within 7 in of the positive terminal of the house bank$/,
    );
    // Only the buyer of the fuse can see that it is marked for such a fault.
    expect(add?.isPreferred).toBeUndefined();
    expect(add?.diagnostics?.map(({ code }) => code)).toEqual(["protection/unprotected-path"]);
    expect(textAfter(add)).toMatch(
      /name: "bank to switch",[^}]*protect: \{ ratingA: 150, family: "UL 248-15 Class T", distanceIn: 7, interruptingA: \d+ \}/,
    );
  });

  test("findings on parts and cables can be accepted too", async () => {
    const { actions, textAfter } = await actionsAt(
      unprotected.replace("from: bank.positive", "from: bank.‸positive"),
      {
        only: ["quickfix"],
      },
    );
    const accept = actions.find(({ title }) => title.startsWith("Accept"));
    expect(textAfter(accept)).toMatch(
      /cable\(\{\n {2}name: "bank to switch",[^}]*accept: \{ "protection\/unprotected-path": "" \}/,
    );
    const onPart = await actionsAt(sampleBuild.replace("maxDischargeA: 150", "maxDischargeA: ‸50"), {
      only: ["quickfix"],
    });
    const ofPart = onPart.actions.find(({ title }) => title.startsWith("Accept"));
    expect(onPart.textAfter(ofPart)).toMatch(
      /battery\(\{[^)]*accept: \{ "battery\/discharge-current": "" \}/,
    );
  });

  test("where only the whole way helps, one action makes several conductors thicker", async () => {
    const long = sampleBuild
      .replace("gauge: 10,", "gauge: 10, dropLimitPercent: 3.4,")
      .replace("lengthFt: 5, gauge: 4 }", "lengthFt: 25, gauge: 10 }")
      .replace("lengthFt: 4, gauge: 4 }", "lengthFt: 25, gauge: 10 }");
    const { view } = await planUnderCursor(long);
    const drop = view.plan.findings.find(({ finding }) => finding.rule === "conductor/voltage-drop");
    expect(drop?.related.length).toBeGreaterThan(0);
    const at = view.textAt(drop!.place);
    expect(at).toBeDefined();
    const marked = `${long.slice(0, drop!.place.start)}‸${long.slice(drop!.place.start)}`;
    const { actions } = await actionsAt(marked, { only: ["quickfix"] });
    const best = actions.find(({ isPreferred }) => isPreferred);
    const [change] = (best?.edit?.documentChanges ?? []) as TextDocumentEdit[];
    expect(change?.edits.length).toBeGreaterThan(1);
  });

  test("nothing of a build in order can be fixed", async () => {
    const { actions } = await actionsAt(sampleBuild.replace("gauge: 10", "gauge: ‸10"), {
      only: ["quickfix", fixAllKind],
    });
    expect(actions).toEqual([]);
  });
});
