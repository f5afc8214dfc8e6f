import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { runFromPalette, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

const editor = useEditor({ trustEverything: true });

const shed = `import { build, circuit } from "loomwright";

build({ name: "shed", insulationC: 105 });
circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
`;

/** The editor's own dialog for files of another machine. It proposes a name after a moment, which would go over what is typed before. */
async function dialogOf(page: Page, folder: string): Promise<Locator> {
  const dialog = page.locator(".quick-input-widget", { hasText: "Write the Report" });
  await dialog.waitFor();
  const proposed = JSON.stringify(join(folder, "shed.report.html"));
  await page.waitForFunction(
    `document.querySelector(".quick-input-widget input[type=text]").value === ${proposed}`,
  );
  return dialog;
}

async function saveAs(page: Page, folder: string, name: string): Promise<void> {
  const dialog = await dialogOf(page, folder);
  await dialog.locator("input[type=text]").fill(join(folder, name));
  await dialog.locator("a.monaco-button", { hasText: /^OK$/ }).click();
}

const notice = (page: Page, text: string | RegExp) =>
  page.locator(".notification-list-item", { hasText: text });

test("the report of the plan in the editor is written where one says, as a page or as a PDF", async () => {
  const folder = editor.folder({ "shed.ts": shed });
  const page = await editor.open(folder, { file: "shed.ts" });
  await statusItem(page, "Loomwright: 1 circuit").waitFor();

  await runFromPalette(page, "Loomwright: Write the Report");
  // Proposed beside the plan, under its name.
  const dialog = await dialogOf(page, folder);
  await dialog.locator("a.monaco-button", { hasText: /^OK$/ }).click();
  await notice(page, "shed.report.html is written.").waitFor();
  expect(readFileSync(join(folder, "shed.report.html"), "utf8")).toContain("<title>shed: report</title>");
  await page.locator(".notification-list-item .monaco-button", { hasText: "Open" }).waitFor();

  await runFromPalette(page, "Loomwright: Write the Report");
  await saveAs(page, folder, "shed.pdf");
  await page.locator(".quick-input-list .monaco-list-row", { hasText: "Letter" }).click();
  await notice(page, "shed.pdf is written.").waitFor();
  expect(readFileSync(join(folder, "shed.pdf"), "latin1")).toMatch(/^%PDF-[\s\S]*\/MediaBox \[0 0 612 792\]/);
});

test("a file that is not ours is replaced only when one says so", async () => {
  const folder = editor.folder({ "shed.ts": shed, "notes.html": "my own notes" });
  const page = await editor.open(folder, { file: "shed.ts" });
  await statusItem(page, "Loomwright: 1 circuit").waitFor();

  const ask = async () => {
    await runFromPalette(page, "Loomwright: Write the Report");
    await saveAs(page, folder, "notes.html");
    // The editor itself asks whether the file is to be replaced: with yes it goes on to us.
    const overwrite = page.locator(".quick-input-widget", { hasText: "notes.html already exists" });
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
  await runFromPalette(page, "Loomwright: Write the Report");
  await saveAs(page, folder, "shed.html");
  await notice(page, "shed.ts is half typed").waitFor();
  expect(existsSync(join(folder, "shed.html"))).toBe(false);
});
