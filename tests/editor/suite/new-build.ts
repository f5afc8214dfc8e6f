import * as assert from "node:assert/strict";
import * as vscode from "vscode";
import { eventually, findings, hoverText, inWorkspace, lensTitles, rangeOf } from "./plan-in-editor.ts";
import type { Story } from "./story.ts";

/** The harness looks at this folder again when the suite has ended: it is type-checked and run outside the editor too. */
export const newBuildFolder = "new-build";

export const newBuild: readonly Story[] = [
  {
    name: "makes a new build from the template that type-checks and is checked at once",
    async run() {
      const folder = inWorkspace(newBuildFolder);
      await vscode.commands.executeCommand("loomwright.newBuild", folder);
      const names = (await vscode.workspace.fs.readDirectory(folder)).map(([name]) => name);
      const tarball = names.find((name) => /^loomwright-\d+\.\d+\.\d+.*\.tgz$/.test(name));
      assert.ok(tarball, "the library lies beside the plan");
      assert.deepEqual(
        names.sort(),
        [
          ".gitignore",
          "README.md",
          tarball,
          "node_modules",
          "package.json",
          "plan.ts",
          "tsconfig.json",
        ].sort(),
      );

      const editor = vscode.window.activeTextEditor;
      assert.equal(editor?.document.uri.path, vscode.Uri.joinPath(folder, "plan.ts").path);
      const plan = editor.document;
      // TypeScript has found the library when it can describe its functions; only then is the absence of errors meaningful.
      await eventually(
        "TypeScript's hover over a word of the library",
        () => hoverText(plan.uri, rangeOf(plan, "build({", "build").start),
        (text) => text.includes("Settings of the whole build"),
      );
      await eventually(
        "a lens over the plan",
        () => lensTitles(plan.uri),
        (titles) => titles.some((title) => title.includes("8 circuits")),
      );
      assert.deepEqual(findings(plan.uri), []);
      assert.deepEqual(vscode.languages.getDiagnostics(plan.uri), []);
    },
  },
  {
    name: "makes no build where there is something already, and changes nothing there",
    async run() {
      const folder = inWorkspace("not-empty");
      const file = vscode.Uri.joinPath(folder, "plan.ts");
      const mine = new TextEncoder().encode("// mine\n");
      const textOf = async (uri: vscode.Uri) =>
        new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
      await vscode.workspace.fs.writeFile(file, mine);
      await vscode.commands.executeCommand("loomwright.newBuild", folder);
      assert.deepEqual(await vscode.workspace.fs.readDirectory(folder), [["plan.ts", vscode.FileType.File]]);
      assert.equal(await textOf(file), "// mine\n");

      const aFile = inWorkspace("a-file");
      await vscode.workspace.fs.writeFile(aFile, mine);
      await vscode.commands.executeCommand("loomwright.newBuild", aFile);
      assert.equal(await textOf(aFile), "// mine\n");
    },
  },
];
