import {
  mkdirSync,
  mkdtempSync,
  realpathSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, expect, it } from "vitest";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";

let place: string;

beforeEach(() => {
  place = realpathSync(mkdtempSync(join(tmpdir(), "plans-")));
});

afterEach(() => rmSync(place, { recursive: true, force: true }));

it("plan files are found by the library's name, outside of other people's folders", () => {
  write("inside/plan.ts", 'import { circuit } from "loomwright";');
  write("inside/deep/er/plan.mjs", 'import "loomwright";');
  write("inside/other.ts", "export {};");
  write("inside/notes.md", "loomwright");
  write("inside/types.d.ts", 'import "loomwright";');
  for (const folder of ["node_modules/a", ".git", ".cache"])
    write(`inside/${folder}/plan.ts`, 'import "loomwright";');
  write("outside/plan.ts", 'import "loomwright";');
  symlinkSync(join(place, "outside"), join(place, "inside/link"));
  const files = diskWorkspace([uri("inside")]).planFiles();
  expect(files).toEqual([uri("inside/deep/er/plan.mjs"), uri("inside/plan.ts")]);
});

it("a text is new when size or time are", () => {
  const path = write("inside/plan.ts", "1");
  utimesSync(path, 1, 1);
  const workspace = diskWorkspace([uri("inside")]);
  const first = workspace.read(uri("inside/plan.ts"));
  expect(workspace.read(uri("inside/plan.ts"))).toBe(first);
  write("inside/plan.ts", "2");
  utimesSync(path, 2, 2);
  const second = workspace.read(uri("inside/plan.ts"));
  expect(second?.text).toBe("2");
  expect(second?.version).not.toBe(first?.version);
  rmSync(path);
  expect(workspace.read(uri("inside/plan.ts"))).toBeUndefined();
  expect(workspace.read("untitled:Untitled-1")).toBeUndefined();
  expect(workspace.read(uri("inside"))).toBeUndefined();
});

it("a link that leads out of the folder is not followed", async () => {
  write("outside/secret.ts", "export const fuseA = 5;");
  write("inside/plan.ts", 'import { fuseA } from "./link.ts";\nconsole.log(fuseA);');
  symlinkSync(join(place, "outside/secret.ts"), join(place, "inside/link.ts"));
  expect(await problemOf("inside/plan.ts")).toBe("import-outside");
});

it("a link inside the folder is", async () => {
  write("inside/sizes.ts", "export const fuseA = 5;");
  write("inside/plan.ts", 'import { fuseA } from "./link.ts";\nconsole.log(fuseA.toFixed(0));');
  symlinkSync(join(place, "inside/sizes.ts"), join(place, "inside/link.ts"));
  expect(await problemOf("inside/plan.ts")).not.toBe("import-outside");
});

it("a plan that is not there, or no longer, is said to be missing", async () => {
  mkdirSync(join(place, "inside"));
  expect(await problemOf("inside/gone.ts")).toBe("import-not-found");
});

it("names with spaces and brackets are files like others", async () => {
  write("inside/my van (old)/sizes & fuses.ts", "export const fuseA = 5;");
  write(
    "inside/my van (old)/plan.ts",
    'import { circuit } from "loomwright";\nimport { fuseA } from "./sizes & fuses";\n' +
      'circuit({ name: "a", load: 4, oneWayFt: 3, gauge: 12, protect: fuseA });',
  );
  expect(await problemOf("inside/my van (old)/plan.ts")).toBeUndefined();
});

async function problemOf(name: string): Promise<string | undefined> {
  const checker = createChecker(diskWorkspace([uri("inside")]));
  try {
    const plan = await checker.check(uri(name));
    if (plan.state !== "checked") return "incomplete";
    const [problem] = plan.judgement.problems;
    return problem?.rule === "plan/cannot-run" ? problem.reason : problem?.rule;
  } finally {
    await checker.dispose();
  }
}

function write(name: string, text: string): string {
  const path = join(place, name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  return path;
}

function uri(name: string): string {
  return pathToFileURL(join(place, name)).href;
}
