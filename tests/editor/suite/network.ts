import * as assert from "node:assert/strict";
import * as vscode from "vscode";
import { actionsAt } from "./fixes.ts";
import {
  eventually,
  findings,
  hoverText,
  lensTitles,
  openPlan,
  outlineOf,
  rangeOf,
  replaceText,
  ruleOf,
  underlined,
  untilUnderlined,
} from "./plan-in-editor.ts";
import type { Story } from "./story.ts";

/** A small bank, a switch, a panel with a heater on it: without findings. */
export const inOrder = `import { battery, build, cable, circuit, disconnect, fusePanel, scenario } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ name: "house bank", chemistry: "AGM", capacityAh: 60, internalMilliohm: 20 });
const off = disconnect({ name: "main switch", ratedA: 100 });
const panel = fusePanel({ name: "fuse panel", positions: 6, ratedA: 100 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: off.line,
  lengthFt: 1,
  gauge: 6,
  protect: { ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 6 },
});
cable({ name: "feeder", from: off.load, to: panel.feed, lengthFt: 4, gauge: 6 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 6 });
circuit({
  name: "heater",
  from: panel.branch,
  load: 15,
  oneWayFt: 12,
  gauge: 10,
  protect: { ratingA: 20, family: "ISO 8820-3 Type C" },
});
scenario({ name: "evening", chargePercent: 50 });
scenario({ name: "cooking" });
`;

const fuse = `  protect: { ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 6 },\n`;

export const network: readonly Story[] = [
  {
    name: "finds nothing in a network that is as it should be, and counts its parts over it",
    async run() {
      const document = await openPlan("network.ts", inOrder);
      const titles = await eventually(
        "a lens over the plan",
        () => lensTitles(document.uri),
        (all) => all.some((title) => title.includes("3 parts")),
      );
      assert.match(
        titles.join("\n"),
        /1 circuit, 3 parts, 3 cables · no findings · worst drop .*from the bank/,
      );
      assert.deepEqual(findings(document.uri), []);
    },
  },
  {
    name: "underlines the terminal where the bank reaches a cable past no fuse, points to the bank, and puts the fuse in",
    async run() {
      const document = await openPlan("unprotected.ts", inOrder.replace(fuse, ""));
      await eventually(
        "the path is found",
        () => underlined(document),
        (found) => found.includes("protection/unprotected-path on bank.positive"),
      );
      const ofFeeder = findings(document.uri).find(
        (finding) =>
          ruleOf(finding) === "protection/unprotected-path" && document.getText(finding.range) === "off.load",
      );
      const pointsTo = (ofFeeder?.relatedInformation ?? []).map(({ message }) => message).join("\n");
      assert.match(pointsTo, /house bank/);
      assert.match(pointsTo, /bank to switch/);

      const range = rangeOf(document, "from: bank.positive", "bank.positive");
      const actions = await eventually(
        "a fix",
        () => actionsAt(document, range, vscode.CodeActionKind.QuickFix),
        (all) => all.some(({ title, edit }) => title.startsWith("Add") && edit !== undefined),
      );
      const add = actions.find(({ title }) => title.startsWith("Add"));
      assert.match(add?.title ?? "", /A fuse .* within 7 in of the positive terminal of the house bank/);
      assert.ok(add?.edit);
      assert.ok(await vscode.workspace.applyEdit(add.edit), "the edit is taken");
      await untilUnderlined(document, []);
      assert.match(document.getText(), /gauge: 6,\n {2}protect: \{ ratingA: \d+, family: "ISO 8820/);
    },
  },
  {
    name: "says on hover what a battery and a cable carry in each scenario, the worst marked",
    async run() {
      const document = await openPlan("network-hover.ts", inOrder);
      const ofBattery = await eventually(
        "a hover on the battery",
        () => hoverText(document.uri, rangeOf(document, "= battery(", "battery").start),
        (hover) => hover.includes("| Scenario |"),
      );
      assert.match(ofBattery, /\| evening \| 12 V \| gives 15 A \|/);
      assert.match(ofBattery, /\| \*\*cooking\*\* \(worst\) \| \*\*11\.\d+ V\*\* \| \*\*gives 15 A\*\* \|/);
      assert.match(ofBattery, /Dead short at its terminals: \*\*up to \d+ A\*\*/);
      const ofCable = await hoverText(document.uri, rangeOf(document, '"feeder"').start);
      // 33 CFR 183.425 Table 5: 6 AWG, 105 °C column, 120 A.
      assert.match(ofCable, /Current: \*\*15 A\*\*; may carry 120 A; margin 105 A/);
      assert.match(ofCable, /\| evening \| 15 A \|/);
      const ofHeater = await hoverText(document.uri, rangeOf(document, '"heater"').start);
      assert.match(ofHeater, /whole path from the bank/);
      assert.match(ofHeater, /\*\*cooking\*\* \(worst\)/);
      const ofTerminal = await hoverText(
        document.uri,
        rangeOf(document, "to: panel.feed", "panel.feed").start,
      );
      assert.match(ofTerminal, /The feed of the fuse panel/);
    },
  },
  {
    name: "shows in the outline which cables and circuits begin at which part",
    async run() {
      const document = await openPlan("network-outline.ts", inOrder);
      const drawn = await eventually(
        "symbols",
        async () =>
          (await outlineOf(document.uri)).map(
            ({ name, children }) => `${name}: ${children.map((child) => child.name).join(", ")}`,
          ),
        (all) => all.includes("house bank: bank to switch"),
      );
      assert.ok(drawn.includes("main switch: feeder"));
      assert.ok(drawn.includes("fuse panel: panel return, heater"));
      assert.ok(drawn.includes("cooking: "));
    },
  },
  {
    name: "where only the sum helps, one fix makes several conductors along the way from the bank thicker",
    async run() {
      const document = await openPlan(
        "whole-way.ts",
        inOrder
          .replace("lengthFt: 4, gauge: 6", "lengthFt: 20, gauge: 8")
          .replace("lengthFt: 5, gauge: 6", "lengthFt: 20, gauge: 8")
          .replace("gauge: 10,", "gauge: 10,\n  dropLimitPercent: 4,"),
      );
      await eventually(
        "the drop is found",
        () => underlined(document),
        (found) => found.includes("conductor/voltage-drop on 10"),
      );
      const actions = await eventually(
        "a fix",
        () => actionsAt(document, rangeOf(document, "gauge: 10", "10"), vscode.CodeActionKind.QuickFix),
        (all) => all.some(({ title, edit }) => / and /.test(title) && edit !== undefined),
      );
      const fix = actions.find(({ title }) => / and /.test(title));
      assert.ok(fix?.edit);
      assert.ok((fix.edit.get(document.uri) ?? []).length >= 2, "two conductors at least");
      assert.ok(await vscode.workspace.applyEdit(fix.edit), "the edit is taken");
      await eventually(
        "the drop is gone",
        () => underlined(document),
        (found) => !found.some((one) => one.startsWith("conductor/voltage-drop")),
      );
    },
  },
  {
    name: "says of a scenario that it has no operating point, and whose voltage falls",
    async run() {
      const document = await openPlan("collapse.ts", inOrder);
      await eventually(
        "a lens over the plan",
        () => lensTitles(document.uri),
        (all) => all.some((title) => title.includes("3 parts")),
      );
      await replaceText(document, "load: 15", "loadW: 3_000");
      await eventually(
        "the collapse is found",
        () => findings(document.uri).map(ruleOf),
        (rules) => rules.filter((rule) => rule === "voltage/collapse").length === 2,
      );
      const collapse = findings(document.uri).find((finding) => ruleOf(finding) === "voltage/collapse");
      assert.match(collapse?.message ?? "", /heater/);
      const text = await hoverText(
        document.uri,
        rangeOf(document, 'scenario({ name: "cooking"', "scenario").start,
      );
      assert.match(text, /\*\*not solved\*\*/);
      assert.match((await lensTitles(document.uri)).join("\n"), /2 of 2 scenarios not solved/);
    },
  },
];
