// Makes the three files of a new rule and registers it:
//   node library/rules/new-rule.mjs protection/too-many-fuses "Two fuses where one is enough"
// The cases fail until they are written: a rule without cases on both sides of its limit is not a rule.
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL(".", import.meta.url));
const [id = "", title = ""] = process.argv.slice(2);

const fault = faultOf(id, title);
if (fault) {
  console.error(
    `${fault}\nUsage: node library/rules/new-rule.mjs <folder>/<name> "<title, at most eight words>"`,
  );
  process.exit(2);
}

const [folder, file] = id.split("/");
// A single word is ambiguous among all rules: there is a rating of buses, of panels, of disconnects.
const nameParts = file.includes("-") ? file.split("-") : [folder, file];
const name = nameParts.map((word, at) => (at === 0 ? word : word[0].toUpperCase() + word.slice(1))).join("");
mkdirSync(`${here}${folder}`, { recursive: true });
for (const [path, text] of Object.entries(filesOf())) {
  writeFileSync(`${here}${path}`, text);
  console.log(`library/rules/${path}`);
}
await import("./write-docs.mjs");
console.log(
  "Next: check, cases, page, one fault in examples/faulty-workshop; then npm run docs (DEVELOPERS.md, Add a rule).",
);

function faultOf(wanted, words) {
  if (!/^[a-z]+\/[a-z]+(-[a-z]+)*$/.test(wanted))
    return `"${wanted}" is not an id such as conductor/voltage-drop.`;
  if (words === "" || words.split(" ").length > 8) return "The title needs one to eight words.";
  if (existsSync(`${here}${wanted}.ts`)) return `${wanted} is there already.`;
  return undefined;
}

function filesOf() {
  return {
    [`${id}.ts`]: `import { ownRequirement } from "../own-requirement.ts";
import { atProperty, defineRule, perRun } from "../rule.ts";

export const ${name} = defineRule<Values>({
  id: "${id}",
  title: "${title}",
  severity: "warning",
  why: "What goes wrong in the real thing, in one sentence.",
  sources: [ownRequirement("Or the document, from library/standards.")],
  fixable: false,
  acceptable: true,
  // Needs: which results of which analysis.
  check: (plan) =>
    perRun(plan, ({ circuit }) => {
      const found = false;
      return found ? [{ at: atProperty(circuit), values: { loadA: circuit.loadA } }] : [];
    }),
  message: ({ loadA }) => \`\${loadA} A: what is wrong, what is allowed, the way out.\`,
});

interface Values {
  readonly loadA: number;
}
`,
    [`${id}.test.ts`]: `import { testRule } from "../rule.tester.ts";
import { ${name} } from "./${file}.ts";

testRule(${name}, [
  {
    name: "just within the limit",
    circuits: [{}],
    finds: "nothing",
  },
  {
    name: "just beyond the limit",
    circuits: [{ gauge: 6 }],
    finds: [{ on: "gauge", message: "What is wrong", fixes: "no fix" }],
  },
]);
`,
    [`${id}.md`]: `<!-- head:start, written by write-docs.mjs -->
<!-- head:end -->

## What it found

## Why it matters

## How it is worked out

## Wrong

\`\`\`ts
circuit({ load: 40, oneWayFt: 15, gauge: 6, protect: 50 });
\`\`\`

## Right

\`\`\`ts
circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: 50 });
\`\`\`

## What it does not check

## When to accept it

## Source
`,
  };
}
