import { afterAll, describe, expect, it } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { createChecker } from "../checker.ts";
import type { Workspace } from "../workspace.ts";

const root = "file:///lines/plan.ts";
const texts = new Map<string, string>();
const workspace: Workspace = {
  read: (uri) => {
    const text = texts.get(uri);
    return text === undefined ? undefined : { uri, text, version: text };
  },
  folders: () => ["file:///lines"],
  realUri: (uri) => uri,
  planFiles: () => [root],
};
const checker = createChecker(workspace, { limits: { timeMs: 60_000 } });
afterAll(() => checker.dispose());

async function checked(text: string) {
  texts.set(root, text);
  const plan = await checker.check(root);
  if (plan.state === "incomplete") throw new Error(plan.unfinished.text);
  return plan;
}

/** ECMA-262, section 12.3, and CR LF, which counts as one. */
const lineBreaks = { LF: "\n", CR: "\r", "CR LF": "\r\n", "U+2028": "\u2028", "U+2029": "\u2029" };

/** A statement with a line break in it, and whether a string or template has it as its value. */
const statements: Readonly<Record<string, (lineBreak: string) => string>> = {
  "between tokens": (lineBreak) => `const a =${lineBreak} 1;`,
  "behind a line comment": (lineBreak) => `// note${lineBreak}const a = 1;`,
  "in a block comment": (lineBreak) => `/* one${lineBreak}two */ const a = 1;`,
  "in a template": (lineBreak) => `const a = \`one${lineBreak}two\`;`,
  "in the second piece of a template": (lineBreak) => `const a = \`one\${1}two${lineBreak}three\`;`,
  "behind a backslash in a string": (lineBreak) => `const a = "one\\${lineBreak}two";`,
  "in a type": (lineBreak) => `const a: {${lineBreak} b?: 1 } = {};`,
  "in a written argument": (lineBreak) =>
    `circuit({ load: 4,${lineBreak} oneWayFt: 3, gauge: 12, protect: 10 }); const a = 1;`,
  "in place of a semicolon": (lineBreak) => `const a = 1${lineBreak}void a`,
};

const cases = Object.entries(lineBreaks).flatMap(([kind, lineBreak]) =>
  Object.entries(statements).map(([place, statement]) => [kind, place, statement(lineBreak)] as const),
);

describe("an error is found at its place, whichever line breaks precede it", () => {
  it.each(cases)("%s %s", async (_kind, _place, statement) => {
    const head = 'import { circuit } from "loomwright";\n';
    const text = `${head}${statement}\nconst b = 2;\nvoid b; circuit({ load: missing, oneWayFt: 3, gauge: 12, protect: 10 });\nvoid b;\n`;
    const { findings } = await checked(text);
    const stopped = findings.filter(({ finding }) => finding.rule === "plan/cannot-run");
    expect(stopped.map(({ place }) => text.slice(place.start, place.end))).toEqual(["missing"]);
  });

  it("line breaks within strings and templates keep their value", async () => {
    const kept = Object.values(lineBreaks).map((lineBreak) => `\`a${lineBreak}b\``);
    const text = `import { circuit } from "loomwright";
for (const name of [${kept.join(", ")}, "a\u2028b", "a\u2029b", "a\\\u2028b"])
  circuit({ load: 4, oneWayFt: 3, gauge: 12, protect: 10, name: name.replace(/\\s/g, (found) => "-" + found.codePointAt(0).toString(16) + "-") });`;
    const { judgement } = await checked(text);
    const names = ["a-a-b", "a-a-b", "a-a-b", "a-2028-b", "a-2029-b", "a-2028-b", "a-2029-b", "ab"];
    expect(judgement.circuits.map(({ circuit }) => circuit.name)).toEqual(names);
  });
});

describe("an unnamed circuit is named by the line that editors show", () => {
  it.each(Object.entries(lineBreaks))("%s", async (_kind, lineBreak) => {
    const text = `import { circuit } from "loomwright"; // a${lineBreak}/* b${lineBreak}c */\nfor (const load of [4]) circuit({ load, oneWayFt: 3, gauge: 12, protect: 10 });`;
    const { judgement } = await checked(text);
    const { line } = TextDocument.create(root, "", 0, text).positionAt(text.indexOf("circuit({"));
    expect(judgement.circuits.map(({ circuit }) => circuit.name)).toEqual([`plan.ts line ${line + 1}`]);
  });
});
