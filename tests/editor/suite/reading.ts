import * as assert from "node:assert/strict";
import * as vscode from "vscode";
import {
  eventually,
  findings,
  hoverText,
  lensTitles,
  openPlan,
  outlineOf,
  rangeOf,
  ruleOf,
  untilUnderlined,
} from "./plan-in-editor.ts";
import type { Story } from "./story.ts";

/** 40 A over 15 ft on a wire with too little ampacity; 4 AWG behind 50 A is common practice for such a run. */
const tooThin = `import { circuit } from "loomwright";

circuit({ name: "heater", load: 40, oneWayFt: 15, gauge: 14, protect: 50, insulationC: 75 });
`;

export const reading: readonly Story[] = [
  {
    name: "underlines the value that is wrong, with what was found and the limit",
    async run() {
      const document = await openPlan("too-thin.ts", tooThin);
      await eventually(
        "a finding on the size",
        () => findings(document.uri).map(ruleOf),
        (rules) => rules.includes("conductor/ampacity"),
      );
      const ampacity = findings(document.uri).find((finding) => ruleOf(finding) === "conductor/ampacity");
      assert.ok(ampacity);
      assert.equal(document.getText(ampacity.range), "14");
      assert.equal(ampacity.severity, vscode.DiagnosticSeverity.Error);
      // 33 CFR 183.425 Table 5: 14 AWG, 75 °C column, 20 A.
      assert.match(ampacity.message, /\b40 A\b/);
      assert.match(ampacity.message, /\b20 A\b/);
    },
  },
  {
    name: "finds nothing in a run that is as it should be",
    async run() {
      const document = await openPlan(
        "as-it-should-be.ts",
        tooThin.replace("gauge: 14", "gauge: 4").replace("load: 40", "critical: true, load: 40"),
      );
      // The lens appears when the plan has been checked; before that, an absence of findings would be meaningless.
      await eventually(
        "a lens over the plan",
        () => lensTitles(document.uri),
        (titles) => titles.some((title) => title.includes("1 circuit")),
      );
      assert.deepEqual(findings(document.uri), []);
    },
  },
  {
    name: "says on hover what the conductor carries, what is lost, and how that was worked out",
    async run() {
      const document = await openPlan("hover.ts", tooThin.replace("gauge: 14", "gauge: 4"));
      const size = rangeOf(document, "gauge: 4", "4").start;
      const text = await eventually(
        "a hover of ours",
        () => hoverText(document.uri, size),
        (hover) => hover.includes("183.425"),
      );
      assert.match(text, /\b40 A\b/);
      // Table 5: 4 AWG, 75 °C column, 125 A.
      assert.match(text, /\b125 A\b/);
      assert.match(text, /\d V\b/);
      assert.match(text, /\d %/);
      assert.match(text, /worked out/i);
    },
  },
  {
    name: "shows drop and spare capacity beside the size, and no longer when that is turned off",
    async run() {
      const document = await openPlan("hints.ts", tooThin.replace("gauge: 14", "gauge: 4"));
      const hints = () =>
        vscode.commands.executeCommand<vscode.InlayHint[]>(
          "vscode.executeInlayHintProvider",
          document.uri,
          new vscode.Range(0, 0, document.lineCount, 0),
        );
      const ours = async () =>
        (await hints())
          .filter(({ position }) => position.isEqual(rangeOf(document, "gauge: 4", "4").end))
          .map(({ label }) => (typeof label === "string" ? label : label.map(({ value }) => value).join("")));
      const [label] = await eventually("a hint beside the size", ours, (labels) => labels.length === 1);
      assert.match(label ?? "", /drop/);
      assert.match(label ?? "", /\d %/);
      assert.match(label ?? "", /\b85 A spare/);

      const settings = vscode.workspace.getConfiguration("loomwright");
      await settings.update("inlayHints", false, vscode.ConfigurationTarget.Workspace);
      try {
        await eventually("no hint when turned off", ours, (labels) => labels.length === 0);
      } finally {
        await settings.update("inlayHints", undefined, vscode.ConfigurationTarget.Workspace);
      }
      await eventually("the hint again", ours, (labels) => labels.length === 1);
    },
  },
  {
    name: "sums the plan up in a line over it",
    async run() {
      const document = await openPlan("lens.ts", tooThin);
      const titles = await eventually(
        "a lens",
        () => lensTitles(document.uri),
        (all) => all.some((title) => title.includes("1 circuit")),
      );
      assert.match(titles.join("\n"), /error/);
      assert.match(titles.join("\n"), /heater/);
    },
  },
  {
    name: "lists the circuits in the outline",
    async run() {
      const document = await openPlan("outline.ts", tooThin);
      const names = await eventually(
        "symbols",
        async () => (await outlineOf(document.uri)).map(({ name }) => name),
        (all) => all.some((name) => name.includes("heater")),
      );
      assert.ok(names.length >= 1);
    },
  },
  {
    name: "checks text that was never saved",
    async run() {
      const document = await vscode.workspace.openTextDocument({ language: "typescript", content: tooThin });
      await vscode.window.showTextDocument(document);
      await eventually(
        "a finding in the unsaved text",
        () => findings(document.uri).map(ruleOf),
        (rules) => rules.includes("conductor/ampacity"),
      );
      await vscode.commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
    },
  },
  {
    name: "checks a plan in JavaScript, which no compiler has looked at",
    async run() {
      const document = await openPlan(
        "plain.js",
        `import { circuit } from "loomwright";\ncircuit({ load: "40", oneWayFt: 15, gauge: 4, protect: 50, insulationC: 75 });\n`,
      );
      await untilUnderlined(document, ['plan/invalid-value on "40"']);
    },
  },
];
