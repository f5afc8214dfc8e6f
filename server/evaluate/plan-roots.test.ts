import { expect, test } from "vitest";
import { createChecker } from "./checker.ts";

const slow = `${"async(".repeat(80)}1${")".repeat(80)};`;

function folderOf(texts: Record<string, string>) {
  let version = 1;
  const files = Object.keys(texts).map((name) => `file:///camper/${name}`);
  const checker = createChecker({
    read: (uri) => {
      const text = texts[uri.slice("file:///camper/".length)];
      return text === undefined ? undefined : { uri, version, text };
    },
    folders: () => ["file:///camper"],
    realUri: (uri) => uri,
    planFiles: () => files,
  });
  const change = () => {
    version++;
  };
  return { checker, change };
}

test.each([
  ["cannot be read in time", `import { circuit } from "loomwright";\n${slow}`],
  ["has a NUL", 'import { circuit } from "loomwright";\0'],
  ["is nested too deeply", `import { circuit } from "loomwright";\n${"[".repeat(5_000)}`],
])("a plan that %s is a plan, so that its finding is shown", async (_, text) => {
  const { checker, change } = folderOf({
    "plan.ts": text,
    "other.ts": 'import { build } from "loomwright";',
  });
  try {
    for (let look = 0; look < 2; look++) {
      expect(checker.roots()).toEqual(["file:///camper/other.ts", "file:///camper/plan.ts"]);
      expect(checker.rootsOf("file:///camper/plan.ts")).toEqual(["file:///camper/plan.ts"]);
      change();
    }
    const outcome = await checker.check("file:///camper/plan.ts");
    if (outcome.state === "held") throw new Error("it will never be finished");
    expect(outcome.findings.map(({ finding }) => finding.rule)).toEqual(["plan/cannot-run"]);
  } finally {
    await checker.dispose();
  }
});

test("a plan that imports a file which cannot be read says so at that file, and is not judged", async () => {
  const { checker } = folderOf({
    "plan.ts":
      'import { circuit } from "loomwright";\nimport { load } from "./loads.ts";\ncircuit({ load });',
    "loads.ts": `export const load = 4; // \0`,
  });
  try {
    const outcome = await checker.check("file:///camper/plan.ts");
    if (outcome.state === "held") throw new Error("it will never be finished");
    expect(outcome.findings.map(({ place }) => place)).toEqual([
      { uri: "file:///camper/loads.ts", start: 26, end: 27 },
    ]);
    expect(outcome.records).toEqual([]);
  } finally {
    await checker.dispose();
  }
});
