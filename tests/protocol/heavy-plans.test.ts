import { afterEach, describe, expect, test } from "vitest";
import type { Diagnostic, Hover } from "vscode-languageserver/node";
import { sampled } from "../setup/sampled.ts";
import { type ScriptedEditor, startEditor } from "./scripted-editor.ts";

// A plan is answered, even while the plan beside it blocks an engine.

const sound = `import { circuit } from "loomwright";
circuit({ name: "lamp", load: 2, oneWayFt: 9, gauge: 14, protect: 10, insulationC: 105 });
`;
const thin = sound.replace("gauge: 14", "gauge: 18").replace("load: 2", "load: 9");

/** Texts that the parser cannot finish, with syntax that it tries to parse in more than one way. */
const endless = {
  "async calls in async calls": `${"async(".repeat(40)}`,
  "generic async calls": `${"async<T>(".repeat(40)}`,
  "conditional async calls": `${"x?async(".repeat(40)}`,
};

const withCircuits = (count: number) =>
  `import { circuit } from "loomwright";\nfor (let n = 0; n < ${count}; n++) circuit({ name: \`lamp \${n}\`, load: 48, oneWayFt: 40, gauge: 12 });\n`;

let editor: ScriptedEditor | undefined;

afterEach(async () => {
  expect(await editor?.quit()).toBe(0);
  editor = undefined;
});

async function hovered(file: string): Promise<Hover | null> {
  return editor!.ask<Hover | null>("textDocument/hover", file, { position: editor!.behind(file, "gau") });
}

async function pushedFor(file: string, isIt: (found: readonly Diagnostic[]) => boolean): Promise<void> {
  await expect.poll(() => isIt(editor!.pushed(file) ?? []), { timeout: 60_000 }).toBe(true);
}

describe("a plan beside one that cannot be read", () => {
  test.each(sampled("texts that cannot be parsed", Object.entries(endless)))(
    "%s",
    { timeout: 240_000 },
    async (_, text) => {
      const files = {
        "van.ts": thin,
        "endless.ts": `import { circuit } from "loomwright";\n${text}\n`,
        "not-open.ts": `import { circuit } from "loomwright";\n${text}1\n`,
      };
      editor = await startEditor({ files });
      editor.open("van.ts");
      editor.open("endless.ts");
      expect(await hovered("van.ts")).not.toBeNull();
      await pushedFor("van.ts", (found) => found.length > 0);
      await pushedFor("endless.ts", (found) => found.some(({ code }) => code === "plan/cannot-run"));
      // Each further text of it is tried; a readable one is checked.
      editor.retype("endless.ts", `${files["endless.ts"]}// still\n`);
      editor.type("van.ts", "gauge: 18", "gauge: 10");
      await editor.until("van.ts", "idle");
      await pushedFor("van.ts", (found) => found.every(({ severity }) => severity !== 1));
      editor.retype("endless.ts", thin);
      await pushedFor(
        "endless.ts",
        (found) => found.length > 0 && found.every(({ code }) => code !== "plan/cannot-run"),
      );
      expect(await hovered("endless.ts")).not.toBeNull();
    },
  );
});

test("a plan beside one of thousands of circuits: both are judged, and both answer", {
  timeout: 180_000,
}, async () => {
  const files = { "van.ts": thin, "fleet.ts": withCircuits(4_000) };
  // This many take longer to run than a plan's default limit.
  editor = await startEditor({ files, configuration: { timeLimitMs: 60_000 } });
  editor.open("van.ts");
  await editor.until("van.ts", "idle");
  editor.open("fleet.ts");
  for (let n = 0; n < 5; n++) expect(await hovered("van.ts")).not.toBeNull();
  const { counts } = await editor.until("fleet.ts", "idle");
  expect(counts?.circuits).toBe(4_000);
  expect(counts?.errors).toBeGreaterThan(0);
  expect(
    await editor.ask<Hover | null>("textDocument/hover", "fleet.ts", {
      position: editor.behind("fleet.ts", "gau"),
    }),
  ).not.toBeNull();
  editor.close("fleet.ts");
  await pushedFor("fleet.ts", (found) => found.length === 0);
});
