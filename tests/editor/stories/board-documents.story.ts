import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { boardsPlan } from "../harness/boards-plan.ts";
import { pick, runFromPalette, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

// Front views and drilling templates, from the palette to the file, in one window and in this order.

const editor = useEditor({ trustEverything: true });
let folder: string;
let page: Page;

beforeAll(async () => {
  ({ page, folder } = await editor.show({ "cabin.ts": boardsPlan }, "cabin.ts"));
  await statusItem(page, "Loomwright: 1 circuit").waitFor({ timeout: 90_000 });
});

/** Accepts the name that the editor's own dialog proposes, beside the plan. */
async function acceptName(title: string, name: string): Promise<void> {
  const dialog = page.locator(".quick-input-widget", { hasText: title });
  await dialog.waitFor();
  await expect
    .poll(() => dialog.locator("input[type=text]").inputValue(), { timeout: 30_000 })
    .toBe(join(folder, name));
  await dialog.locator("a.monaco-button", { hasText: /^OK$/ }).click();
}

const written = (name: string) =>
  page.locator(".notification-list-item", { hasText: `${name} is written.` }).waitFor();

const pagesOf = (name: string) => readFileSync(join(folder, name), "latin1").match(/\/Type \/Page\b/g);

test("the front views of all boards are one PDF, a sheet each", async () => {
  await runFromPalette(page, "Loomwright: Write the Front Views of the Boards");
  await acceptName("Write the Front Views of the Boards", "cabin.boards.pdf");
  await pick(page, "Paper of the front views", "A4");
  await pick(page, "Conductors of the front views", "Along their ways");
  await pick(page, "Which revision", "None");
  await written("cabin.boards.pdf");
  expect(pagesOf("cabin.boards.pdf")).toHaveLength(2);
});

test("Export offers the drilling templates, which say how to print them", async () => {
  await runFromPalette(page, "Loomwright: Export");
  await pick(page, "What should be written?", "Drilling templates");
  await acceptName("Write the Drilling Templates", "cabin.templates.pdf");
  await pick(page, "Paper of the templates", "A4");
  await written("cabin.templates.pdf");
  await page.locator(".notification-list-item", { hasText: "Print at actual size" }).waitFor();
  // 1,200 mm × 800 mm and 600 mm × 800 mm need more than one sheet each.
  expect(pagesOf("cabin.templates.pdf")!.length).toBeGreaterThan(8);
});
