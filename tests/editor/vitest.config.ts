import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { casesOfCommit } from "../setup/which-cases.ts";

const house = fileURLToPath(new URL("../..", import.meta.url));
process.env.LOOMWRIGHT_CASES = casesOfCommit(house);

const common = {
  root: house,
  // The names in the list of in-host stories are also read outside the extension host; there is no `vscode` there.
  resolve: { alias: { vscode: fileURLToPath(new URL("harness/no-vscode.ts", import.meta.url)) } },
};
/** They only end a story that hangs: a window opens in ten seconds, and on a busy machine in a minute. */
const times = { testTimeout: 150_000, hookTimeout: 240_000 };

// Not *.test.ts: these need the editor, which only run.mjs provides.
const stories = "tests/editor/stories/*.story.ts";
/** Stories of a page in a browser, without a workbench around it. */
const pages = ["tests/editor/stories/{diagram,report}-page.story.ts"];

export default defineConfig({
  ...common,
  test: {
    projects: [
      {
        ...common,
        test: {
          name: "pages",
          include: pages,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
          ...times,
        },
      },
      {
        ...common,
        test: {
          name: "workbench",
          include: [stories],
          exclude: pages,
          // One workbench at a time: two would compete for the processor, and time out. All in one process, to share its editor.
          maxWorkers: 1,
          isolate: false,
          sequence: { groupOrder: 2 },
          ...times,
        },
      },
    ],
  },
});
