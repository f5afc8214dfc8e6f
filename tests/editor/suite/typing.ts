import * as assert from "node:assert/strict";
import * as vscode from "vscode";
import {
  eventually,
  lensTitles,
  openPlan,
  rangeOf,
  replaceText,
  underlined,
  untilUnderlined,
} from "./plan-in-editor.ts";
import type { Story } from "./story.ts";

const plan = `import { circuit } from "loomwright";

circuit({ name: "heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
`;

export const typing: readonly Story[] = [
  {
    name: "offers sizes inside gauge, the thinnest good one first, each with its drop",
    async run() {
      const document = await openPlan("sizes.ts", plan.replace("gauge: 14", "gauge: "));
      const choices = await offered(document, rangeOf(document, "gauge: ").end, /drop/);
      assert.ok(choices.length >= 10, "all sizes that are made are offered");
      assert.match(choices[0]?.text ?? "", /within all limits checked/);
      assert.match(choices.find(({ label }) => label === "18")?.text ?? "", /drop [\d.]+ %/);
      assert.ok(
        choices.findIndex(({ label }) => label === "18") > choices.findIndex(({ label }) => label === "4"),
        "a size that would not do stands behind one that would",
      );
    },
  },
  {
    name: "offers ratings inside protect, those that protect the conductor first",
    async run() {
      const document = await openPlan("ratings.ts", plan.replace("protect: 20", "protect: "));
      const choices = await offered(document, rangeOf(document, "protect: ").end, /of the load/);
      assert.match(choices[0]?.text ?? "", /% of the load/);
    },
  },
  {
    name: "keeps the last findings while a line is half typed, says so, and recovers",
    async run() {
      const document = await openPlan("half-typed.ts", plan);
      await untilUnderlined(document, ["conductor/voltage-drop on 14"]);

      // As long as the text that it replaces: the editor moves underlines along with the text, but reports the old positions to
      // extensions.
      await replaceText(document, "oneWayFt: 20", "oneWayFt: 2(");
      await eventually(
        "the lens says of which text it speaks",
        () => lensTitles(document.uri),
        (titles) => titles.some((title) => title.includes("as of the last complete text")),
      );
      assert.deepEqual(underlined(document), ["conductor/voltage-drop on 14"]);

      await replaceText(document, "oneWayFt: 2(", "oneWayFt: 2");
      await untilUnderlined(document, []);
      await replaceText(document, "oneWayFt: 2", "oneWayFt: 40");
      await untilUnderlined(document, ["conductor/voltage-drop on 14"]);
    },
  },
  {
    name: "stops a plan that never ends, says so, and goes on",
    async run() {
      const document = await openPlan("endless.ts", `${plan}for (;;) {}\n`);
      await eventually(
        "the loop is reported",
        () => underlined(document),
        (found) => found.some((finding) => finding.startsWith("plan/too-slow")),
      );
      await replaceText(document, "for (;;) {}", "");
      await untilUnderlined(document, ["conductor/voltage-drop on 14"]);
    },
  },
];

/** The completions at a position, as the editor would order them; ours are recognised by a word that all of them contain. */
async function offered(
  document: vscode.TextDocument,
  position: vscode.Position,
  ours: RegExp,
): Promise<{ readonly label: string; readonly text: string }[]> {
  return eventually(
    "choices",
    async () => {
      const list = await vscode.commands.executeCommand<vscode.CompletionList>(
        "vscode.executeCompletionItemProvider",
        document.uri,
        position,
      );
      return list.items
        .map(({ label, detail, sortText }) => ({
          label: typeof label === "string" ? label : label.label,
          text: `${detail ?? ""}, ${typeof label === "string" ? "" : label.description}`,
          sortText: sortText ?? "",
        }))
        .filter(({ text }) => ours.test(text))
        .sort((a, b) => a.sortText.localeCompare(b.sortText));
    },
    (choices) => choices.length > 0,
  );
}
