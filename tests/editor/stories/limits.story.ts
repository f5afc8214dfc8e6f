import { expect, test } from "vitest";
import { sampled } from "../../setup/sampled.ts";
import { statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

/** Set for the machine, different from the defaults: the test shows which settings count. */
const editor = useEditor({
  trustEverything: false,
  machineSettings: { "loomwright.timeLimitMs": 700, "loomwright.memoryLimitMiB": 24 },
});

const plans = {
  "endless.ts": `import { circuit } from "loomwright";

circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
for (;;) {}
`,
  "greedy.ts": `import { circuit } from "loomwright";

circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
const kept: number[][] = [];
for (;;) kept.push(new Array(10_000).fill(1));
`,
};

const folders = [
  { folder: "asks for much", time: 60_000, memory: 1_024, trusted: false },
  { folder: "asks for much", time: 60_000, memory: 1_024, trusted: true },
  { folder: "asks for little", time: 50, memory: 8, trusted: true },
];

test.each(sampled("folders with limits of their own", folders))(
  "a folder that $folder changes no limit of the machine; trusted: $trusted",
  async ({ time, memory, trusted }) => {
    const settings = { "loomwright.timeLimitMs": time, "loomwright.memoryLimitMiB": memory };
    const folder = editor.folder({ ...plans, ".vscode/settings.json": JSON.stringify(settings) });
    const page = await editor.open(folder, { file: "endless.ts" });
    await page.getByRole("button", { name: trusted ? /^Yes, I trust/ : /^No, I don't trust/ }).click();
    if (!trusted) await statusItem(page, "Restricted Mode").waitFor();
    await statusItem(page, "Loomwright: 1 circuit, 1 error").waitFor({ timeout: 60_000 });
    await page.keyboard.press("Control+Shift+M");
    const found = (text: RegExp) =>
      page.locator(".markers-panel .monaco-list-row", { hasText: text }).first().textContent();
    expect(await found(/was stopped after/)).toContain("stopped after 0.7 s");
    await page.locator(".explorer-folders-view .monaco-list-row", { hasText: "greedy.ts" }).dblclick();
    expect(await found(/MiB of memory/)).toContain("stopped at 24 MiB");
  },
  150_000,
);
