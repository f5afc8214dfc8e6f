// The README and its further pages are run: their plans are checked, and their commands are typed in a folder with the examples.

import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import { scriptedRepository } from "../difference/scripted-repository.ts";
import { expectBuilt } from "../package/built.tester.ts";
import { planCompiler } from "../types/compiler.ts";

const house = fileURLToPath(new URL("../..", import.meta.url));
const pages = [
  "README.md",
  "library/networks.md",
  "library/workshop-properties.md",
  "library/boards-and-channels.md",
  "library/rules/README.md",
  "server/editors.md",
  "server/continuous-integration.md",
  "server/command-line.md",
];
const text = pages.map((page) => readFileSync(join(house, page), "utf8")).join("\n");
const blocks = (language: string) =>
  [...text.matchAll(new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``, "g"))].map(
    ([, block = ""]) => block,
  );

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loomwright-readme-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("its plans compile, and nothing is found in them but what a plan so short leaves out", async () => {
  const plans = blocks("ts");
  expect(plans.length).toBeGreaterThan(4);
  const compiler = planCompiler();
  // The smallest plan states no insulation, a single call has no import, a part of a build has no loads, and a panel without its
  // maker's statement gets information about its fuses.
  const allowed = new Set([
    "conductor/insulation-not-stated",
    "disconnect/missing",
    "network/unconnected",
    "placement/not-judged",
    "placement/ways-not-judged",
    "protection/interrupting",
  ]);
  for (const [index, plan] of plans.entries()) {
    const text = /^import /m.test(plan) ? plan : `import { build, circuit } from "loomwright";\n${plan}`;
    expect(
      compiler.diagnostics(text).map(({ messageText }) => messageText),
      text,
    ).toEqual([]);
    writeFileSync(join(folder, `plan-${index}.ts`), text);
  }
  const checker = createChecker(diskWorkspace([pathToFileURL(folder).href]), { sandbox: sharedSandbox });
  try {
    const roots = checker.roots();
    expect(roots).toHaveLength(plans.length);
    for (const root of roots) {
      const outcome = await checker.check(root);
      const found =
        outcome.state === "checked"
          ? outcome.findings.filter(
              ({ finding }) => finding.accepted === undefined && !allowed.has(finding.rule),
            )
          : ["half typed"];
      expect(found, root).toEqual([]);
    }
  } finally {
    await checker.dispose();
  }
});

test("its commands do what they are written for", async () => {
  expectBuilt();
  const typed = blocks("sh").map((block) =>
    block.split(/\n| && /).map((line) => line.replace(/ +#.*$/, "").split(" ")),
  );
  const count = typed.flat().filter(([npx, name]) => npx === "npx" && name === "loomwright").length;
  expect(count).toBeGreaterThan(4);
  const repository = scriptedRepository();
  try {
    cpSync(join(house, "examples"), join(repository.folder, "examples"), { recursive: true });
    repository.write("package.json", "{}");
    repository.commit("first");
    repository.commit("second");
    for (const lines of typed) {
      let below = "";
      for (const [program, first, ...words] of lines) {
        // A folder beside the checkout is one in it here.
        if (program === "cd") below = first!.replace(/^\.\.\//, "");
        if (program === "cd") mkdirSync(join(repository.folder, below), { recursive: true });
        if (program !== "npx" || first !== "loomwright") continue;
        const { code, out, err } = await repository.loomwrightIn(below, ...words);
        expect(code, `loomwright ${words.join(" ")}: ${err}${out}`.slice(0, 2_000)).toBe(0);
        const made = words.includes("--out") ? words[words.indexOf("--out") + 1]! : ".";
        expect(existsSync(join(repository.folder, below, made)), made).toBe(true);
      }
    }
  } finally {
    repository.remove();
  }
}, 120_000);
