import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, expect, test } from "vitest";
import { createChecker } from "../checker.ts";
import type { Workspace } from "../workspace.ts";
import { diskWorkspace } from "./disk-workspace.ts";
import { planInputs } from "./plan-inputs.ts";

const examples = diskWorkspace([
  pathToFileURL(fileURLToPath(new URL("../../../examples", import.meta.url))).href,
]);
const inExamples = createChecker(examples);
afterAll(() => inExamples.dispose());

test.each(inExamples.roots().map((root) => [root.slice(root.indexOf("examples/")), root]))(
  "%s: the files that it follows from are those that were checked",
  async (_, root) => {
    const inputs = planInputs(root!, examples, inExamples.importsOf);
    const { snapshot } = await inExamples.check(root!);
    const there = [...snapshot].filter(([, version]) => version !== undefined).map(([uri]) => uri);
    expect(inputs.map(({ uri }) => uri)).toEqual(there);
  },
);

const cases: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
  ["no file at all", {}],
  ["an import that leads nowhere", { "plan.ts": 'import "loomwright";\nimport "./a.ts";' }],
  ["an import by its older name", { "plan.ts": 'import "./a.js";', "a.ts": "export const a = 1;" }],
  ["a folder", { "plan.ts": 'import "./a";', "a/index.ts": 'import "../b.ts";', "b.ts": "" }],
  ["a circle", { "plan.ts": 'import "./a.ts";', "a.ts": 'import "./plan.ts";' }],
  [
    "one file twice",
    {
      "plan.ts": 'import "./a.ts";\nimport "./a.ts";\nimport "./b.ts";',
      "a.ts": "",
      "b.ts": 'import "./a.ts";',
    },
  ],
  [
    "types alone",
    {
      "plan.ts": 'import type { A } from "./a.ts";\nimport { type B } from "./b.ts";',
      "a.ts": "",
      "b.ts": "",
    },
  ],
  ["what is exported from elsewhere", { "plan.ts": 'export * from "./a.ts";', "a.ts": "" }],
  [
    "what may not be imported",
    { "plan.ts": 'import "node:fs";\nimport "../../outside.ts";\nimport "./a.json";' },
  ],
  [
    "a half-typed import",
    { "plan.ts": 'import "./a.ts";', "a.ts": 'import "./b.ts";\nconst x = (', "b.ts": "" },
  ],
];

test.each(cases)("%s", async (_, files) => {
  const workspace = inMemory(files);
  const checker = createChecker(workspace);
  const root = "file:///project/plan.ts";
  const inputs = planInputs(root, workspace, checker.importsOf);
  const { snapshot } = await checker.check(root);
  await checker.dispose();
  const there = [...snapshot].filter(([uri, version]) => version !== undefined || uri === root);
  expect(inputs.map(({ uri, text }) => [uri, text])).toEqual(
    there.map(([uri]) => [uri, workspace.read(uri)?.text]),
  );
});

test("a file that would come first leads an import elsewhere, and so does one that is gone", () => {
  const leadsTo = (files: Readonly<Record<string, string>>) => {
    const workspace = inMemory(files);
    const [plan] = planInputs("file:///project/plan.ts", workspace, createChecker(workspace).importsOf);
    return plan!.leadsTo.get("./a");
  };
  const plan = { "plan.ts": 'import "./a";' };
  expect(leadsTo({ ...plan, "a/index.ts": "" })).toBe("file:///project/a/index.ts");
  expect(leadsTo({ ...plan, "a/index.ts": "", "a.js": "" })).toBe("file:///project/a.js");
  expect(leadsTo({ ...plan, "a/index.ts": "", "a.js": "", "a.ts": "" })).toBe("file:///project/a.ts");
  expect(leadsTo(plan)).toBe("not: import-not-found");
});

function inMemory(files: Readonly<Record<string, string>>): Workspace {
  const folder = "file:///project";
  return {
    read(uri) {
      const text = files[uri.slice(folder.length + 1)];
      return text === undefined ? undefined : { uri, version: 1, text };
    },
    folders: () => [folder],
    realUri: (uri) => uri,
    planFiles: () => Object.keys(files).map((file) => `${folder}/${file}`),
  };
}
