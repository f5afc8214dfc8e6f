import { execFile } from "node:child_process";
import { cpSync, existsSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { promisify } from "node:util";
import { beforeAll, describe, expect, test } from "vitest";
import { fromEnvironment } from "../harness/editor-server.ts";
import { useEditor } from "../harness/use-editor.ts";
import { remoteAddress } from "../harness/workbench.ts";
import { newBuildFolder } from "../suite/new-build.ts";
import { stories } from "../suite/stories.ts";
import { figureMark, resultMark, type StoryResult } from "../suite/story.ts";

const editor = useEditor({ trustEverything: true });
const results = new Map<string, StoryResult>();
let folder: string;

/** The whole suite runs once, in one window; each story is then reported separately. */
beforeAll(async () => {
  folder = editor.folder({});
  cpSync(new URL("../workspace", import.meta.url), folder, { recursive: true });
  const suite = fromEnvironment("LOOMWRIGHT_SUITE");
  const others: string[] = [];
  let end: (code: number) => void;
  const ended = new Promise<number>((resolve) => {
    end = resolve;
  });
  const page = await editor.open(folder, {
    payload: [
      ["extensionDevelopmentPath", remoteAddress(editor.server(), suite)],
      ["extensionTestsPath", remoteAddress(editor.server(), join(suite, "run.js"))],
    ],
    // The functions through which the workbench reports the suite's output, and its outcome, to its driver.
    async before(opened) {
      await opened.exposeFunction("codeAutomationExit", (code: number) => end(code));
      await opened.exposeFunction("codeAutomationLog", (_type: string, words: readonly unknown[]) => {
        const line = words.map(String).join(" ");
        if (line.includes(resultMark))
          take(JSON.parse(line.slice(line.indexOf(resultMark) + resultMark.length)));
        else if (line.includes(figureMark))
          console.log(line.slice(line.indexOf(figureMark) + figureMark.length));
        else others.push(line);
      });
    },
  });
  const code = await ended;
  await page.context().close();
  if (results.size === 0)
    throw new Error(`The suite ended with ${code} and told nothing:\n${others.join("\n")}`);
}, 300_000);

function take(result: StoryResult): void {
  results.set(result.story, result);
}

describe("in the extension host", () => {
  test.each(stories.map(({ name }) => name))("%s", (name) => {
    const result = results.get(name);
    expect(result, "the story was run").toBeDefined();
    expect(result?.failure ?? "").toBe("");
  });
});

describe("a new build, outside the editor", () => {
  const typescript = createRequire(import.meta.url).resolve("typescript/lib/tsc.js");
  const build = () => join(folder, newBuildFolder);
  const runIn = (program: string, args: readonly string[]) =>
    promisify(execFile)(program, args, { cwd: build(), shell: process.platform === "win32", env: offline });

  test("type-checks", async () => {
    await runIn(process.execPath, [typescript, "-p", ".", "--noEmit"]);
  });

  test("is checked before npm has ever run in it", async () => {
    const { stdout } = await runIn("npm", ["run", "--silent", "check"]);
    expect(stdout).toContain("8 circuits");
  });

  test("installs without a network, and is checked after that too", async () => {
    await runIn("npm", ["install", "--offline", "--no-audit", "--no-fund"]);
    expect(existsSync(join(build(), "node_modules", "loomwright", "package.json"))).toBe(true);
    await runIn(process.execPath, [typescript, "-p", ".", "--noEmit"]);
    const { stdout } = await runIn("npx", ["--no-install", "loomwright", "check"]);
    expect(stdout).toContain("8 circuits");
  });
});

/** npm cannot reach this address: any request would fail. */
const offline = {
  ...process.env,
  npm_config_registry: "http://127.0.0.1:9",
  npm_config_update_notifier: "false",
};
