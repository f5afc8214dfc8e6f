// Writes everything that follows from the rules' own files: the register of rules, the ids that a plan may accept, the head of
// every rule's page, and the table of rules in their README.
// `node library/rules/write-docs.mjs` writes; with --check it changes nothing, names outdated files and fails if there are any.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const checkOnly = process.argv.includes("--check");
const here = fileURLToPath(new URL(".", import.meta.url));
const house = fileURLToPath(new URL("../..", import.meta.url));
const registry = registryOf(ruleModules());
const { rules, sourceInFull } = await loadRules();
const acceptable = rules.filter((rule) => rule.acceptable).map(({ id }) => id);

const outOfDate = [];
const missing = [];
write(`${here}registry.ts`, registry);
write(`${house}library/plan/rule-id.ts`, ruleIdOf(acceptable));
write(`${house}library/model/acceptable-rules.ts`, acceptableRulesOf(acceptable));
for (const rule of rules) replaceBetween(`${here}${rule.id}.md`, "head", headOf(rule));
replaceBetween(`${here}README.md`, "rules", tableOf(rules));

if (missing.length > 0) console.error(`Not there, or without its marks:\n${missing.join("\n")}`);
if (outOfDate.length === 0) console.log("All lists, heads and tables are up to date.");
else
  console.log(
    `${checkOnly ? "Out of date, run node library/rules/write-docs.mjs" : "Written"}:\n${outOfDate.join("\n")}`,
  );
if (missing.length > 0 || (checkOnly && outOfDate.length > 0)) process.exitCode = 1;

/** The modules that define a rule, in the order of the ids. A rule's id is the path of its module. */
function ruleModules() {
  const folders = readdirSync(here, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  const modules = folders.flatMap(({ name: folder }) =>
    readdirSync(`${here}${folder}`).flatMap((file) => {
      const [, stem] = /^([a-z-]+)\.ts$/.exec(file) ?? [];
      const text = stem ? readFileSync(`${here}${folder}/${file}`, "utf8") : "";
      const [, name] = /^export const (\w+) = defineRule\b/m.exec(text) ?? [];
      return name ? [{ id: `${folder}/${stem}`, name }] : [];
    }),
  );
  return modules.sort((one, other) => (one.id < other.id ? -1 : 1));
}

function registryOf(modules) {
  const imports = [
    ...modules.map(({ id, name }) => ({ path: id, line: `import { ${name} } from "./${id}.ts";` })),
    { path: "rule", line: `import type { Rule } from "./rule.ts";` },
  ].sort((one, other) => (one.path < other.path ? -1 : 1));
  return `${imports.map(({ line }) => line).join("\n")}

/** Every rule, by id. Written by write-docs.mjs, from the folders. */
export const rules: readonly Rule<unknown>[] = [
${modules.map(({ name }) => `  ${name},`).join("\n")}
];

export function ruleById(id: string): Rule<unknown> | undefined {
  return rules.find((rule) => rule.id === id);
}
`;
}

function ruleIdOf(ids) {
  return `// Written by library/rules/write-docs.mjs, from the rules.

/** A rule whose finding a builder may accept, with a reason. Also the path of its page, see \`loomwright explain\`. */
export type RuleId =
${ids.map((id) => `  | "${id}"`).join("\n")};

/** Rule id to the builder's reason. */
export type AcceptedFindings = { readonly [Rule in RuleId]?: string };
`;
}

function acceptableRulesOf(ids) {
  return `// Written by library/rules/write-docs.mjs, from the rules.
import type { RuleId } from "../plan/rule-id.ts";

/** Rules whose findings a builder may accept. */
export const acceptableRules = [
${ids.map((id) => `  "${id}",`).join("\n")}
] as const satisfies readonly RuleId[];
`;
}

/** Rules are TypeScript: bundled in memory and imported as one module. The register is the new one, written or not. */
async function loadRules() {
  const { outputFiles } = await build({
    stdin: {
      contents: `${registry}export { sourceInFull } from "./wording/source-in-words.ts";`,
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
  write(
    path,
    before.replace(fence, (_, start, end) => `${start}${text}\n${end}`),
  );
}

function write(path, after) {
  const before = existsSync(path) ? readFileSync(path, "utf8") : undefined;
  if (after === before) return;
  outOfDate.push(relative(house, path));
  if (!checkOnly) writeFileSync(path, after);
}
