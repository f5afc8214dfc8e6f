import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { runFromPalette, shows, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

const editor = useEditor({ trustEverything: true });

const shed = `import { build, circuit } from "loomwright";

build({ name: "shed", insulationC: 105 });
circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
`;

/**
 * Requests the report and names its file in the editor's own dialog, until `next` appears. Tries again if the dialog closed
 * without a result: it closes when something else takes the focus, such as a part of the window that is still being filled.
 */
async function writeAs(page: Page, path: string, next: Locator): Promise<void> {
  const dialog = page.locator(".quick-input-widget", { hasText: "Write the Report" });
  for (let tries = 0; tries < 3; tries++) {
    await runFromPalette(page, "Loomwright: Write the Report");
    await dialog.waitFor();
    // It proposes a name after a moment, which would replace a name typed before.
    const proposed = JSON.stringify(join(dirname(path), "shed.report.html"));
    const named = await page
      .waitForFunction(`document.querySelector(".quick-input-widget input[type=text]").value === ${proposed}`)
      .then(() => dialog.locator("input[type=text]").fill(path))
      .then(() => dialog.locator("a.monaco-button", { hasText: /^OK$/ }).click())
      .then(
        () => true,
        () => false,
      );
    if (named && (await shows(next, 15_000))) return;
    if (await dialog.isVisible()) break;
  }
  throw new Error(`the report is not written to ${path}`);
}

const notice = (page: Page, text: string | RegExp) =>
  page.locator(".notification-list-item", { hasText: text });

test("the report of the plan in the editor is written where one says, as a page or as a PDF", async () => {
  const folder = editor.folder({ "shed.ts": shed });
  const page = await editor.open(folder, { file: "shed.ts" });
  await statusItem(page, "Loomwright: 1 circuit").waitFor();

  // The proposed name, beside the plan.
  await writeAs(page, join(folder, "shed.report.html"), notice(page, "shed.report.html is written."));
  expect(readFileSync(join(folder, "shed.report.html"), "utf8")).toContain("<title>shed: report</title>");
  await page.locator(".notification-list-item .monaco-button", { hasText: "Open" }).waitFor();

  const letter = page.locator(".quick-input-list .monaco-list-row", { hasText: "Letter" });
  await writeAs(page, join(folder, "shed.pdf"), letter);
  await letter.click();
  await notice(page, "shed.pdf is written.").waitFor();
  expect(readFileSync(join(folder, "shed.pdf"), "latin1")).toMatch(/^%PDF-[\s\S]*\/MediaBox \[0 0 612 792\]/);
});

test("a file that is not ours is replaced only when one says so", async () => {
  const folder = editor.folder({ "shed.ts": shed, "notes.html": "my own notes" });
  const page = await editor.open(folder, { file: "shed.ts" });
  await statusItem(page, "Loomwright: 1 circuit").waitFor();

  const ask = async () => {
    // The editor itself asks whether to replace the file: after "yes" it continues with our command.
    const overwrite = page.locator(".quick-input-widget", { hasText: "notes.html already exists" });
    await writeAs(page, join(folder, "notes.html"), overwrite);
    await overwrite.locator("a.monaco-button", { hasText: /^OK$/ }).click();
    await page.locator(".monaco-dialog-box", { hasText: "notes.html was not made by Loomwright." }).waitFor();
  };
  await ask();
  await page.locator(".monaco-dialog-box .monaco-button", { hasText: "Cancel" }).click();
  expect(readFileSync(join(folder, "notes.html"), "utf8")).toBe("my own notes");
  await ask();
  await page.locator(".monaco-dialog-box .monaco-button", { hasText: "Replace" }).click();
  await notice(page, "notes.html is written.").waitFor();
  expect(readFileSync(join(folder, "notes.html"), "utf8")).toContain("<title>shed: report</title>");
});

test("of a half-typed plan there is none, and it says so", async () => {
  const folder = editor.folder({ "shed.ts": shed });
  const page = await editor.open(folder, { file: "shed.ts" });
  await statusItem(page, "Loomwright: 1 circuit").waitFor();
  await page.keyboard.press("Control+End");
  await page.keyboard.type("circuit({ load: ");
  await writeAs(page, join(folder, "shed.html"), notice(page, "shed.ts is half typed"));
  expect(existsSync(join(folder, "shed.html"))).toBe(false);
});
