import * as assert from "node:assert/strict";
import * as vscode from "vscode";
import { eventually, findings, openPlan, rangeOf, ruleOf, underlined } from "./plan-in-editor.ts";
import type { Story } from "./story.ts";

const heater = `import { circuit } from "loomwright";

circuit({ name: "heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 16, insulationC: 105 });
`;

export const fixes: readonly Story[] = [
  {
    name: "offers a fix on the underlined value; once applied, the underline is gone and nothing new has come",
    async run() {
      const document = await openPlan("fix.ts", heater);
      await eventually(
        "the drop is found",
        () => underlined(document),
        (found) => found.includes("conductor/voltage-drop on 14"),
      );
      const range = rangeOf(document, "gauge: 14", "14");
      const actions = await eventually(
        "a fix",
        () => actionsAt(document, range, vscode.CodeActionKind.QuickFix),
        (all) => all.some(({ edit }) => edit?.has(document.uri)),
      );
      const fix =
        actions.find(({ isPreferred, edit }) => isPreferred && edit) ?? actions.find(({ edit }) => edit);
      assert.ok(fix?.edit);
      const before = underlined(document).filter((found) => !found.startsWith("conductor/voltage-drop"));
      assert.ok(await vscode.workspace.applyEdit(fix.edit), "the edit is taken");
      await eventually(
        "the finding is gone",
        () => underlined(document),
        (found) => JSON.stringify(found) === JSON.stringify(before),
      );
      assert.doesNotMatch(document.getText(), /gauge: 14/);
    },
  },
  {
    name: "repairs everything in the file with one action",
    async run() {
      const document = await openPlan("fix-all.ts", heater);
      await eventually(
        "both are found",
        () => findings(document.uri).map(ruleOf),
        (rules) => rules.includes("protection/missing") && rules.includes("conductor/voltage-drop"),
      );
      const whole = new vscode.Range(0, 0, document.lineCount, 0);
      const [fixAll] = await eventually(
        "a fix for all",
        () => actionsAt(document, whole, vscode.CodeActionKind.SourceFixAll.append("loomwright")),
        (all) => all.length > 0,
      );
      assert.ok(fixAll?.edit);
      assert.ok(await vscode.workspace.applyEdit(fixAll.edit));
      await eventually(
        "nothing is left",
        () => underlined(document),
        (found) => found.length === 0,
      );
      assert.match(document.getText(), /lamp.*protect: \d+/);
    },
  },
  {
    name: "repairs on save where the editor is told to, and only then",
    async run() {
      const settings = vscode.workspace.getConfiguration("editor");
      const document = await openPlan("on-save.ts", heater);
      await eventually(
        "the drop is found",
        () => underlined(document),
        (found) => found.includes("conductor/voltage-drop on 14"),
      );
      await document.save();
      assert.match(document.getText(), /gauge: 14/);
      await settings.update(
        "codeActionsOnSave",
        { "source.fixAll.loomwright": "explicit" },
        vscode.ConfigurationTarget.Workspace,
      );
      try {
        // A document without changes is not saved again.
        const edit = new vscode.WorkspaceEdit();
        edit.insert(document.uri, new vscode.Position(document.lineCount, 0), "// changed\n");
        assert.ok(await vscode.workspace.applyEdit(edit));
        await eventually(
          "saved and repaired",
          async () => {
            await document.save();
            return document.getText();
          },
          (text) => !text.includes("gauge: 14"),
        );
      } finally {
        await settings.update("codeActionsOnSave", undefined, vscode.ConfigurationTarget.Workspace);
      }
    },
  },
];

/** The offers of the light bulb, or of a source action, at a position. */
export async function actionsAt(
  document: vscode.TextDocument,
  range: vscode.Range,
  kind: vscode.CodeActionKind,
): Promise<vscode.CodeAction[]> {
  const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
    "vscode.executeCodeActionProvider",
    document.uri,
    range,
    kind.value,
    100,
  );
  return actions ?? [];
}
