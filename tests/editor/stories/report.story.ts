import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { line, pick, runFromPalette, shows, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

// In one window and in this order.

const editor = useEditor({ trustEverything: true });
let folder: string;
let page: Page;

const shed = `import { build, circuit } from "loomwright";

build({ name: "shed", insulationC: 105 });
circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
`;

/**
 * Requests the report and names its file in the editor's own dialog, until `next` appears. Tries again if the dialog closed
 * without a result: it closes when something else takes the focus, such as a part of the window that is still being filled.
 */
async function writeAs(
  page: Page,
  path: string,
  next: Locator,
  edition: { readonly label: string; readonly ending: string } = forInspector,
): Promise<void> {
  const dialog = page.locator(".quick-input-widget", { hasText: "Write the Report" });
  const editions = page.locator(".quick-input-widget", { hasText: "Which edition" });
  for (let tries = 0; tries < 3; tries++) {
    await runFromPalette(page, "Loomwright: Write the Report");
    if (!(await shows(editions, 15_000))) continue;
    await pick(page, "Which edition", edition.label);
    await dialog.waitFor();
    // It proposes a name after a moment, which would replace a name typed before.
    const proposed = JSON.stringify(join(dirname(path), `shed.${edition.ending}`));
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

const forInspector = { label: "For the inspector", ending: "report.html" };
const forBench = { label: "For the bench", ending: "bench.html" };

const revisions = (page: Page) => page.locator(".quick-input-widget", { hasText: "Which revision" });

const noRevision = (page: Page) => pick(page, "Which revision", "None");

const notice = (page: Page, text: string | RegExp) =>
  page.locator(".notification-list-item", { hasText: text });

beforeAll(async () => {
  ({ page, folder } = await editor.show({ "shed.ts": shed, "notes.html": "my own notes" }, "shed.ts"));
  await statusItem(page, "Loomwright: 1 circuit").waitFor({ timeout: 90_000 });
});

test("the report of the plan in the editor is written where one says, as a page or as a PDF", async () => {
  // The proposed name, beside the plan.
  await writeAs(page, join(folder, "shed.report.html"), revisions(page));
  await noRevision(page);
  await notice(page, "shed.report.html is written.").waitFor();
  expect(readFileSync(join(folder, "shed.report.html"), "utf8")).toContain("<title>shed: report</title>");
  await page.locator(".notification-list-item .monaco-button", { hasText: "Open" }).waitFor();

  const letter = page.locator(".quick-input-list .monaco-list-row", { hasText: "Letter" });
  await writeAs(page, join(folder, "shed.pdf"), letter);
  await letter.click();
  await noRevision(page);
  await notice(page, "shed.pdf is written.").waitFor();
  expect(readFileSync(join(folder, "shed.pdf"), "latin1")).toMatch(/^%PDF-[\s\S]*\/MediaBox \[0 0 612 792\]/);
});

test("the edition, the paper and the revision are chosen by keyboard", async () => {
  const papers = page.locator(".quick-input-widget", { hasText: "Paper of the report" });
  await writeAs(page, join(folder, "shed.bench.pdf"), papers, forBench);
  await page.keyboard.type("A3");
  await page.keyboard.press("Enter");
  await revisions(page).waitFor();
  await page.keyboard.type("A text");
  await page.keyboard.press("Enter");
  await page.locator(".quick-input-widget", { hasText: "such as B" }).waitFor();
  await page.keyboard.type("C");
  await page.keyboard.press("Enter");
  await notice(page, "shed.bench.pdf is written.").waitFor();
  expect(readFileSync(join(folder, "shed.bench.pdf"), "latin1")).toMatch(
    /\/MediaBox \[0 0 841\.89 1190\.551\]/,
  );
});

test("a file that is not ours is replaced only when one says so", async () => {
  const ask = async () => {
    // The editor itself asks whether to replace the file: after "yes" it continues with our command.
    const overwrite = page.locator(".quick-input-widget", { hasText: "notes.html already exists" });
    await writeAs(page, join(folder, "notes.html"), overwrite);
    await overwrite.locator("a.monaco-button", { hasText: /^OK$/ }).click();
    await noRevision(page);
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
  await line(page, "circuit({ name").click();
  await page.keyboard.press("Control+End");
  await page.keyboard.type("circuit({ load: ");
  await writeAs(page, join(folder, "shed.html"), revisions(page));
  await noRevision(page);
  await notice(page, "shed.ts is half typed").waitFor();
  expect(existsSync(join(folder, "shed.html"))).toBe(false);
});
