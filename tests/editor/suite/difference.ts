import * as assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import * as vscode from "vscode";
import { untilTab } from "./commands.ts";
import { eventually, inWorkspace, openPlan, replaceText, underlined } from "./plan-in-editor.ts";
import type { Story } from "./story.ts";

const plan = `import { build, circuit } from "loomwright";

build({ name: "row boat", insulationC: 105 });
circuit({ name: "anchor light", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
`;

export const difference: readonly Story[] = [
  {
    name: "shows what changed since the last commit, unsaved text included, and shows it anew when asked again",
    async run() {
      const document = await openPlan("committed/boat.ts", plan);
      const page = vscode.Uri.parse("loomwright-difference:/row boat since the last commit.md");
      const shown = async () => (await vscode.workspace.openTextDocument(page)).getText();
      commitAll(inWorkspace("committed").fsPath);

      await vscode.commands.executeCommand("loomwright.showDifference");
      await untilTab("Preview row boat since the last commit.md");
      await eventually("nothing has changed yet", shown, (text) => text.includes("no change in the build"));

      await vscode.window.showTextDocument(document);
      await replaceText(document, "load: 2", "load: 7");
      assert.ok(document.isDirty);
      await eventually(
        "the plan is worked out anew",
        () => underlined(document),
        (found) => found.some((one) => one.startsWith("protection/below-load")),
      );
      await vscode.commands.executeCommand("loomwright.showDifference");
      const text = await eventually("the change is told", shown, (now) => now.includes("2 A | 7 A"));
      assert.match(text, /anchor light/);
      assert.match(text, /new \| error/);
      await document.save();
    },
  },
];

/** In the folder's own repository, independent of the user and their git configuration. */
function commitAll(folder: string): void {
  const env = { ...process.env, GIT_CONFIG_GLOBAL: "/dev/null", GIT_CONFIG_NOSYSTEM: "1" };
  const git = (...words: readonly string[]) =>
    execFileSync("git", words, { cwd: folder, env, stdio: "pipe" });
  git("init", "--quiet");
  git("add", "--all");
  const author = ["user.name=Builder", "user.email=builder@example.invalid"].flatMap((one) => ["-c", one]);
  git(...author, "commit", "--quiet", "--message", "first");
}
