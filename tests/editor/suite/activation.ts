import * as assert from "node:assert/strict";
import * as vscode from "vscode";
import { eventually, hoverText, openPlan, untilUnderlined } from "./plan-in-editor.ts";
import { figureMark, type Story } from "./story.ts";

const extensionId = "loomwright.loomwright-vscode";

export const activation: readonly Story[] = [
  {
    name: "starts nothing for a TypeScript file of another project",
    async run() {
      const extension = vscode.extensions.getExtension(extensionId);
      assert.ok(extension, "the extension is installed");
      assert.equal(extension.isActive, false, "nothing has asked for it yet");
      const start = performance.now();
      await extension.activate();
      console.log(`${figureMark}activation of the extension: ${(performance.now() - start).toFixed(1)} ms`);
      const document = await openPlan("other.ts", "export const answer = 42;\n");
      // TypeScript has read the file when it answers; if the file activated our extension, it would be active by then.
      await eventually(
        "TypeScript answers a hover",
        () => hoverText(document.uri, new vscode.Position(0, 14)),
        (text) => text.includes("const answer: 42"),
      );
      assert.deepEqual(serverProcesses(), [], "no server runs");
    },
  },
  {
    name: "starts the server when a file comes to import the library",
    async run() {
      const document = await openPlan("woken.ts", "export const answer = 42;\n");
      const edit = new vscode.WorkspaceEdit();
      edit.insert(
        document.uri,
        new vscode.Position(0, 0),
        'import { circuit } from "loomwright";\ncircuit({ load: 40, oneWayFt: 2, gauge: 4, insulationC: 105 });\n',
      );
      assert.ok(await vscode.workspace.applyEdit(edit));
      await untilUnderlined(document, ["protection/missing on circuit"]);
      assert.equal(serverProcesses().length, 1, "one server runs");
    },
  },
];

/** The servers that this extension host has started and that still run. */
function serverProcesses(): readonly unknown[] {
  // Undocumented, but the only portable way to see child processes started by other code.
  const handles: unknown[] = (process as unknown as { _getActiveHandles(): unknown[] })._getActiveHandles();
  return handles.filter(
    (handle) =>
      typeof handle === "object" &&
      handle !== null &&
      "spawnargs" in handle &&
      String(handle.spawnargs).includes("language-server.cjs"),
  );
}
