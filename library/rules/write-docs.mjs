// Writes all duplicated text from the rules: the head of every rule's page, and the table of rules in their README.
// `node library/rules/write-docs.mjs` writes; with --check it changes nothing, names outdated files and fails if there are any.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const checkOnly = process.argv.includes("--check");
const here = fileURLToPath(new URL(".", import.meta.url));
const house = fileURLToPath(new URL("../..", import.meta.url));
const { rules, sourceInFull } = await loadRules();

const outOfDate = [];
const missing = [];
for (const rule of rules) replaceBetween(`${here}${rule.id}.md`, "head", headOf(rule));
replaceBetween(`${here}README.md`, "rules", tableOf(rules));

if (missing.length > 0) console.error(`Not there, or without its marks:\n${missing.join("\n")}`);
if (outOfDate.length === 0) console.log("All heads and tables found are up to date.");
else
  console.log(
    `${checkOnly ? "Out of date, run node library/rules/write-docs.mjs" : "Written"}:\n${outOfDate.join("\n")}`,
  );
if (missing.length > 0 || (checkOnly && outOfDate.length > 0)) process.exitCode = 1;

/** Rules are TypeScript: bundled in memory and imported as one module. */
async function loadRules() {
  const { outputFiles } = await build({
    stdin: {
      contents: `export { rules } from "./registry.ts"; export { sourceInFull } from "./wording/source-in-words.ts";`,
      resolveDir: here,
      loader: "ts",
    },
    bundle: true,
    format: "esm",
    platform: "node",
    write: false,
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`);
}

function headOf(rule) {
  const accept = rule.acceptable ? "can be accepted with a reason" : "cannot be accepted";
  const fix = rule.fixable ? "proposes a fix" : "proposes no fix";
  return [
    `# ${rule.title}`,
    "",
    `\`${rule.id}\` · ${rule.severity} · ${fix} · ${accept}`,
    "",
    rule.why,
    "",
    "Sources:",
    "",
    ...rule.sources.map((source) => `- ${sourceInFull(source)}`),
  ].join("\n");
}

/** Columns are padded as the formatter pads them: the two then never undo each other's work. */
function tableOf(all) {
  const rows = [
    ["Rule", "Severity", "What it finds", "Fix"],
    ...all.map(({ id, severity, title, fixable }) => [
      `[\`${id}\`](${id}.md)`,
      severity,
      title,
      fixable ? "yes" : "no",
    ]),
  ];
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  const line = (cells) => `| ${cells.join(" | ")} |`;
  const [head, ...body] = rows.map((row) => line(row.map((cell, column) => cell.padEnd(widths[column]))));
  return [head, line(widths.map((width) => "-".repeat(width))), ...body].join("\n");
}

/** Replaces the text between `<!-- name:start -->` and `<!-- name:end -->`; all else is left as it is. */
function replaceBetween(path, name, text) {
  const before = existsSync(path) ? readFileSync(path, "utf8") : "";
  const fence = new RegExp(`(<!-- ${name}:start[^>]*-->\n)[\\s\\S]*?(<!-- ${name}:end -->)`);
  if (!fence.test(before)) {
    missing.push(`${relative(house, path)}: <!-- ${name}:start --> … <!-- ${name}:end -->`);
    return;
  }
  const after = before.replace(fence, (_, start, end) => `${start}${text}\n${end}`);
  if (after === before) return;
  outOfDate.push(relative(house, path));
  if (!checkOnly) writeFileSync(path, after);
}
