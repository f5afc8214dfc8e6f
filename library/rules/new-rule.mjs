// Makes the three files of a new rule and registers it:
//   node library/rules/new-rule.mjs protection/too-many-fuses "Two fuses where one is enough"
// With --network, the files are those of a rule about a network instead of one about each circuit:
//   node library/rules/new-rule.mjs --network bus/crowded "Many conductors on one stud"
// The cases fail until they are written: a rule without cases on both sides of its limit is not a rule.
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL(".", import.meta.url));
const given = process.argv.slice(2);
const ofNetwork = given.includes("--network");
const [id = "", title = ""] = given.filter((word) => word !== "--network");

const fault = faultOf(id, title);
if (fault) {
  console.error(
    `${fault}\nUsage: node library/rules/new-rule.mjs [--network] <folder>/<name> "<title, at most eight words>"`,
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
  const { imports, check, values, message, tested, cases, wrong, right } = ofNetwork ? network() : circuits();
  return {
    [`${id}.ts`]: `import { ownRequirement } from "../own-requirement.ts";
${imports}

export const ${name} = defineRule<Values>({
  id: "${id}",
  title: "${title}",
  severity: "warning",
  why: "What goes wrong in the real thing, in one sentence.",
  sources: [ownRequirement("Or the document, from library/standards.")],
  fixable: false,
  acceptable: true,
  // Needs: which results of which analysis.
${check}
  message: ${message},
});

interface Values {
  ${values}
}
`,
    [`${id}.test.ts`]: `import { testRule } from "../rule.tester.ts";
import { ${name} } from "./${file}.ts";
${tested}
testRule(${name}, [
${cases}
]);
`,
    [`${id}.md`]: `<!-- head:start, written by write-docs.mjs -->
<!-- head:end -->

## What it found

## Why it matters

## How it is worked out

## Wrong

\`\`\`ts
${wrong}
\`\`\`

## Right

\`\`\`ts
${right}
\`\`\`

## What it does not check

## When to accept it

## Source
`,
  };
}

/** The parts of the files that are about each circuit. */
function circuits() {
  return {
    imports: `import { atProperty, defineRule, perRun } from "../rule.ts";`,
    check: `  check: (plan) =>
    perRun(plan, ({ circuit }) => {
      const found = false;
      return found ? [{ at: atProperty(circuit), values: { loadA: circuit.loadA } }] : [];
    }),`,
    values: "readonly loadA: number;",
    message: "({ loadA }) => `${loadA} A: what is wrong, what is allowed, the way out.`",
    tested: "",
    cases: `  {
    name: "just within the limit",
    circuits: [{}],
    finds: "nothing",
  },
  {
    name: "just beyond the limit",
    circuits: [{ gauge: 6 }],
    finds: [{ on: "gauge", message: "What is wrong", fixes: "no fix" }],
  },`,
    wrong: "circuit({ load: 40, oneWayFt: 15, gauge: 6, protect: 50 });",
    right: "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: 50 });",
  };
}

/** The same about the parts of a network. */
function network() {
  const plan = (studs) => `build({ insulationC: 105 });
const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
const off = disconnect({ ratedA: 100 });
const main = busBar({ side: "positive", ratedA: 100, studs: ${studs} });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 };
cable({
  from: house.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});
cable({ from: off.load, to: main.stud, lengthFt: 2, gauge: 6 });
const lamp = { from: main.stud, returnTo: house.negative, load: 8, oneWayFt: 5, gauge: 10 };
circuit({ ...lamp, protect: { ...classT, ratingA: 10, distanceIn: 4 } });`;
  return {
    imports: `import { defineRule, inNetwork } from "../rule.ts";
import { atPart } from "../wording/part-in-words.ts";`,
    check: `  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      network.parts.flatMap((part) => {
        if (part.kind !== "busBar" || part.studs === undefined) return [];
        const found = false;
        return found
          ? [{ subject: part.name, at: atPart(part, "studs"), values: { studs: part.studs } }]
          : [];
      }),
    ),`,
    values: "readonly studs: number;",
    message: "({ studs }) => `${studs} studs: what is wrong, what is allowed, the way out.`",
    tested: `
const bus = (options: string) => \`
  const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
  const main = busBar({ \${options} });
  cable({ from: house.positive, to: main.stud, lengthFt: 2, gauge: "2/0" });
  circuit({ from: main.stud, returnTo: house.negative, load: 5, oneWayFt: 5, gauge: 10, protect: 10 });\`;
`,
    cases: `  { name: "just within the limit", plan: bus("studs: 4"), finds: "nothing" },
  {
    name: "just beyond the limit",
    plan: bus("studs: 3"),
    finds: [{ subject: "main", on: "studs", message: "What is wrong", fixes: "no fix" }],
  },`,
    wrong: plan(2),
    right: plan(4),
  };
}
