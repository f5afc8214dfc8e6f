import { expect, test } from "vitest";
import { createChecker } from "../checker.ts";
import type { Uri, Workspace } from "../workspace.ts";

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
    if (outcome.state === "incomplete") throw new Error("it will never be finished");
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
    if (outcome.state === "incomplete") throw new Error("it will never be finished");
    expect(outcome.findings.map(({ place }) => place)).toEqual([
      { uri: "file:///camper/loads.ts", start: 26, end: 27 },
    ]);
    expect(outcome.records).toEqual([]);
  } finally {
    await checker.dispose();
  }
});

const plan = (imported: string) =>
  `import { circuit } from "loomwright";\nimport "${imported}";\ncircuit({ load: 4, oneWayFt: 9, gauge: 12, protect: 10 });\n`;

/** `onDisk` are the files that a walk through the folders has found; the others are open and were never saved. */
function files(texts: Record<Uri, string>, onDisk: readonly Uri[]) {
  const versions = new Map<Uri, number>();
  let folders: readonly Uri[] = ["file:///van"];
  const workspace: Workspace = {
    read: (uri) =>
      texts[uri] === undefined ? undefined : { uri, version: versions.get(uri) ?? 1, text: texts[uri] },
    folders: () => folders,
    realUri: (uri) => uri,
    planFiles: () => onDisk,
    openFiles: () => Object.keys(texts),
  };
  const checker = createChecker(workspace);
  return {
    checker,
    type(uri: Uri, text: string) {
      texts[uri] = text;
      versions.set(uri, (versions.get(uri) ?? 1) + 1);
    },
    setFolders(next: readonly Uri[]) {
      folders = next;
    },
  };
}

test("an open file that comes to name the library takes its place among the roots, whichever file is asked about", () => {
  const [bank, van] = ["file:///van/bank.ts", "file:///van/van.ts"];
  const { checker, type } = files({ [bank]: plan("./none.ts"), [van]: "const nothing = 1;\n" }, [bank]);
  expect(checker.rootsOf(bank)).toEqual([bank]);
  type(van, plan("./bank.ts"));
  expect(checker.rootsOf(bank)).toEqual([van]);
  type(van, "const nothing = 1;\n");
  expect(checker.rootsOf(bank)).toEqual([bank]);
});

test("a folder that comes to the workspace, or leaves it, decides anew what belongs to which plan", () => {
  const [shared, van] = ["file:///shared/far.ts", "file:///van/van.ts"];
  const { checker, setFolders } = files({ [shared]: plan("./none.ts"), [van]: plan("../shared/far.ts") }, [
    van,
  ]);
  expect(checker.rootsOf(shared)).toEqual([shared]);
  setFolders(["file:///van", "file:///shared"]);
  expect(checker.rootsOf(shared)).toEqual([van]);
  setFolders(["file:///van"]);
  expect(checker.rootsOf(shared)).toEqual([shared]);
});

test("what only the engine cannot read sits on its line, whatever else was parsed before", async () => {
  const uri = "file:///van/van.ts";
  const broken =
    'import { circuit } from "loomwright";\n  const a: true, b = circuit({ load: Math.abs(2) });\n';
  for (const others of [0, 1, 70]) {
    const texts: Record<Uri, string> = {};
    for (let index = 0; index < others; index++) texts[`file:///van/${index}.ts`] = plan("./none.ts");
    texts[uri] = broken;
    const { checker } = files(texts, Object.keys(texts));
    for (const other of Object.keys(texts)) await checker.check(other);
    const outcome = await checker.check(uri);
    const found = outcome.state === "checked" ? outcome.findings : [];
    expect(found.map(({ finding }) => finding.rule)).toEqual(["plan/cannot-run"]);
    expect(broken.slice(found[0]!.place.start, found[0]!.place.end)).toBe(
      "const a: true, b = circuit({ load: Math.abs(2) });",
    );
    await checker.dispose();
  }
});

test("a plan that was forgotten is judged as at first, and files that another plan uses are kept", async () => {
  const [shared, one, other] = ["file:///van/shared.ts", "file:///van/one.ts", "file:///van/other.ts"];
  const { checker } = files(
    { [shared]: "export const far = 90;\n", [one]: plan("./shared.ts"), [other]: plan("./shared.ts") },
    [one, other],
  );
  const rulesOf = async (root: Uri) => {
    const outcome = await checker.check(root);
    return outcome.state === "checked" ? outcome.findings.map(({ finding }) => finding.rule) : undefined;
  };
  const first = [await rulesOf(one), await rulesOf(other)];
  checker.forget(one);
  expect([await rulesOf(other), await rulesOf(one)]).toEqual([first[1], first[0]]);
  // During a check, too.
  const underWay = rulesOf(one);
  checker.forget(one);
  expect([await underWay, await rulesOf(one)]).toEqual([first[0], first[0]]);
  await checker.dispose();
});
