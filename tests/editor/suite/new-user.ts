import * as assert from "node:assert/strict";
import * as vscode from "vscode";
import { actionsAt } from "./fixes.ts";
import { eventually, findings, inWorkspace, lensTitles, replaceText, underlined } from "./plan-in-editor.ts";
import type { Story } from "./story.ts";

/** A first build takes at most as many: contiguous changes that come neither from a completion nor from a fix. */
const mostHandEdits = 8;

/** Builds that differ from their template as those of two new users: other loads, longer ways, one more circuit. */
const builds = [
  {
    template: "van",
    edits: [
      ['"my van"', '"tall van"'],
      ["powerW: 50", "powerW: 65"],
      ["to: pump, oneWayFt: 12", "to: pump, oneWayFt: 20"],
      ["load: 2.5, oneWayFt: 16", "load: 3.5, oneWayFt: 28"],
      ["currentA: 8", "currentA: 13"],
      [
        "// The roof.",
        `const bedLamps = circuit({ name: "bed lamps", from: panel.branch, load: 1.5, oneWayFt: 18, gauge: 16, protect: 5 });\n\n// The roof.`,
      ],
      ["pump, lamps, sockets]", "pump, lamps, bedLamps, sockets]"],
    ],
    needsRepair: "protection/headroom",
  },
  {
    template: "boat",
    edits: [
      ['"my boat"', '"tall boat"'],
      ["runningA: 4, startingA: 9", "runningA: 6, startingA: 14"],
      ["oneWayFt: 42", "oneWayFt: 60"],
      ["to: radio, oneWayFt: 10", "to: radio, oneWayFt: 32"],
      ["to: plotter, oneWayFt: 12", "to: plotter, oneWayFt: 26"],
    ],
    needsRepair: "conductor/voltage-drop",
  },
] as const;

export const newUser: readonly Story[] = builds.map(({ template, edits, needsRepair }) => ({
  name: `a new user comes from the ${template} to a clean plan of their own with at most ${mostHandEdits} edits by hand`,
  async run() {
    const folder = inWorkspace(`new-${template}`);
    await vscode.commands.executeCommand("loomwright.newBuild", folder, template);
    const document = vscode.window.activeTextEditor?.document;
    assert.ok(document, "the plan is open");
    await eventually(
      "the template is checked",
      () => lensTitles(document.uri),
      (titles) => titles.length > 0,
    );
    assert.deepEqual(findings(document.uri), [], "the template is clean");

    let byHand = 0;
    for (const [old, fresh] of edits) {
      await replaceText(document, old, fresh);
      byHand++;
    }
    assert.ok(byHand <= mostHandEdits, `${byHand} edits by hand`);
    await eventually(
      `${needsRepair} is found`,
      () => underlined(document),
      (found) => found.some((finding) => finding.startsWith(needsRepair)),
    );
    const whole = new vscode.Range(0, 0, document.lineCount, 0);
    const [fixAll] = await eventually(
      "a fix for all",
      () => actionsAt(document, whole, vscode.CodeActionKind.SourceFixAll.append("loomwright")),
      (all) => all.length > 0,
    );
    assert.ok(fixAll?.edit && (await vscode.workspace.applyEdit(fixAll.edit)), "the repairs are taken");
    await eventually(
      "the plan is clean",
      () => underlined(document),
      (found) => found.length === 0,
    );
  },
}));
