// `node tests/repository/behaviour-dump.mjs FILE [--command PATH]`
//
// Writes every verdict and figure of many plans to FILE: rule, range, severity, edits and figures of all examples, the wrong and
// the right plans of every rule page, the correct networks, and 200 random networks. No titles and no messages, only the numbers
// in them. Two dumps of two versions, made by their own built commands, are equal byte for byte if a change of names, folders or
// wording changed no behaviour.

import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { randomNetworkText } from "./random-network-text.mjs";

/** The properties of the JSON that hold text for people. */
const wording = new Set(["message", "title", "text"]);
const root = fileURLToPath(new URL("../..", import.meta.url));
const { values, positionals } = parseArgs({
  options: { command: { type: "string", default: join(root, "server/dist/command.cjs") } },
  allowPositionals: true,
});
const [file] = positionals;
if (!file) {
  console.error("usage: node tests/repository/behaviour-dump.mjs FILE [--command PATH]");
  process.exit(2);
}

const folder = mkdtempSync(join(tmpdir(), "loomwright-dump-"));
try {
  writePlans(folder);
  const report = checkedReport(folder);
  writeFileSync(file, `${JSON.stringify(report.plans.map(withoutWording), undefined, 1)}\n`);
  const { plans } = report;
  console.log(
    `${plans.length} plans, ${plans.reduce((sum, { findings }) => sum + findings.length, 0)} findings`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function writePlans(folder) {
  cpSync(join(root, "examples"), join(folder, "examples"), { recursive: true });
  // Its end depends on the clock, so the number of its circuits differs in each run.
  rmSync(join(folder, "examples/faulty-workshop/endless.ts"));
  cpSync(join(root, "tests/networks/correct"), join(folder, "correct"), { recursive: true });
  mkdirSync(join(folder, "pages"));
  for (const [name, text] of plansOfRulePages()) writeFileSync(join(folder, "pages", name), text);
  mkdirSync(join(folder, "random"));
  for (let seed = 1; seed <= 200; seed++) {
    writeFileSync(
      join(folder, "random", `network-${String(seed).padStart(3, "0")}.ts`),
      randomNetworkText(seed),
    );
  }
}

/** Every block of TypeScript on a rule's page is a plan without its imports. */
function plansOfRulePages() {
  const rules = join(root, "library/rules");
  const pages = readdirSync(rules, { recursive: true }).filter(
    (name) => name.endsWith(".md") && name !== "README.md",
  );
  // A plan that the clock ends stops at another place in each run.
  const timeless = pages.filter((page) => !page.endsWith("too-slow.md"));
  return timeless.sort().flatMap((page) => {
    const blocks = [...readFileSync(join(rules, page), "utf8").matchAll(/^```ts\n([\s\S]*?)^```$/gm)];
    return blocks.map(([, text], index) => [
      `${page.replace(/[\\/]/g, "-").replace(/\.md$/, "")}-${index + 1}.ts`,
      text.includes("import ") ? text : `import { ${functionsIn(text)} } from "loomwright";\n${text}`,
    ]);
  });
}

function functionsIn(text) {
  return [...exportedFunctions()].filter((name) => new RegExp(`\\b${name}\\(`).test(text)).join(", ");
}

function exportedFunctions() {
  const index = readFileSync(join(root, "library/plan/index.ts"), "utf8");
  return [...index.matchAll(/export \{([^}]*)\}/g)]
    .flatMap(([, names]) => names.split(","))
    .map((name) => name.trim())
    .filter((name) => /^[a-z]/.test(name));
}

function checkedReport(folder) {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    [values.command, "check", ".", "--format", "json", "--fresh"],
    { cwd: folder, encoding: "utf8", maxBuffer: 1 << 30 },
  );
  if (!stdout.startsWith("{")) throw new Error(`the command ended with ${status}: ${stderr}`);
  return JSON.parse(stdout);
}

/** Text for people is left out, except for the numbers in it. */
function withoutWording(value) {
  if (Array.isArray(value)) return value.map(withoutWording);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, held]) =>
      wording.has(key) && typeof held === "string" ? [key, numbersIn(held)] : [key, withoutWording(held)],
    ),
  );
}

/** Sorted, because a reworded sentence may name them in another order. */
function numbersIn(text) {
  return (text.match(/\d[\d,]*(\.\d+)?/g) ?? []).sort();
}
