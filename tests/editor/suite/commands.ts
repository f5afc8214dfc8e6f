import * as assert from "node:assert/strict";
import * as vscode from "vscode";
import {
  eventually,
  findings,
  inWorkspace,
  openPlan,
  rangeOf,
  ruleOf,
  untilUnderlined,
} from "./plan-in-editor.ts";
import type { Story } from "./story.ts";

const plan = `import { circuit } from "loomwright";

circuit({ name: "heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
`;

export const commands: readonly Story[] = [
  {
    name: "opens the page of a rule from its finding",
    async run() {
      const document = await openPlan("page.ts", plan);
      await untilUnderlined(document, ["conductor/voltage-drop on 14"]);
      const code = findings(document.uri)[0]?.code;
      assert.ok(typeof code === "object");
      assert.equal(code.value, "conductor/voltage-drop");
      // The editor does the same when the link is clicked.
      assert.equal(code.target.scheme, "command");
      const [page] = JSON.parse(code.target.query) as [string];
      await vscode.commands.executeCommand(code.target.path, page);
      await untilTab("Preview voltage-drop.md");
      const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(vscode.Uri.parse(page)));
      assert.match(text, /Why it matters/);
    },
  },
  {
    name: "shows how a number was worked out, beside the plan",
    async run() {
      const document = await openPlan("worked-out.ts", plan);
      await untilUnderlined(document, ["conductor/voltage-drop on 14"]);
      const editor = await vscode.window.showTextDocument(document);
      editor.selection = new vscode.Selection(
        rangeOf(document, "gauge: 14", "14").start,
        rangeOf(document, "gauge: 14", "14").start,
      );
      await vscode.commands.executeCommand("loomwright.showWorking");
      await untilTab("Preview heater.md");
      const page = vscode.Uri.parse("loomwright-working:/heater.md");
      const text = (await vscode.workspace.openTextDocument(page)).getText();
      assert.match(text, /heater/);
      assert.match(text, /14 AWG/);
      assert.match(text, /%/);
    },
  },
  {
    name: "checks plans that are not open",
    async run() {
      const uri = inWorkspace("closed/plan.ts");
      await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(plan));
      const check = await eventually(
        "the closed plan is found",
        () =>
          vscode.commands.executeCommand<{ plans: { uri: string; counts?: { warnings: number } }[] }>(
            "loomwright.checkWorkspace",
          ),
        ({ plans }) => plans.some((one) => one.uri.endsWith("/closed/plan.ts")),
      );
      assert.equal(check.plans.find((one) => one.uri.endsWith("/closed/plan.ts"))?.counts?.warnings, 1);
      await eventually(
        "its findings are listed among the problems",
        () => findings(uri).map(ruleOf),
        (rules) => rules.includes("conductor/voltage-drop"),
      );
    },
  },
  {
    name: "finds the same again after the server was restarted",
    async run() {
      const document = await openPlan("restart.ts", plan);
      await untilUnderlined(document, ["conductor/voltage-drop on 14"]);
      await vscode.commands.executeCommand("loomwright.restartServer");
      await untilUnderlined(document, ["conductor/voltage-drop on 14"]);
    },
  },
];

export async function untilTab(label: string): Promise<void> {
  const labels = () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map((tab) => tab.label));
  await eventually(`a tab "${label}"`, labels, (all) => all.some((one) => one.endsWith(label)));
}
