import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { boardsPlan } from "../harness/boards-plan.ts";
import { diagramIn, elementIn } from "../harness/diagram-in-workbench.ts";
import { line, runFromPalette, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

const stranger = `import { circuit } from "loomwright";

circuit({ name: "heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
`;

// In one window and in this order, which is never trusted.

const editor = useEditor({ trustEverything: false });
let page: Page;
let folder: string;

beforeAll(async () => {
  folder = editor.folder({ "stranger.ts": stranger, "cabin.ts": boardsPlan });
  page = await editor.open(folder, { file: "stranger.ts", viewport: { width: 1900, height: 1000 } });
  await page.getByRole("button", { name: /^No, I don't trust/ }).click();
  await statusItem(page, "Restricted Mode").waitFor();
});

test("a plan in a folder that nobody trusts is checked and drawn", async () => {
  await page.locator(".squiggly-warning").first().waitFor();
  await statusItem(page, "Loomwright: 1 circuit, 1 warning").waitFor();
  await page.getByRole("button", { name: "Show the Wiring Diagram" }).click();
  await elementIn(diagramIn(page), "heater").waitFor();
  await page.locator(".tab", { hasText: /^stranger\.ts$/ }).click();
  await runFromPalette(page, "Loomwright: Show Whether the Bank Keeps Up");
  await diagramIn(page).getByText("The plan has no period").waitFor();
  await page.locator(".tab", { hasText: /^stranger\.ts$/ }).click();
  await runFromPalette(page, "Loomwright: Show the Boards to Scale");
  await diagramIn(page).getByText("The plan has no surface").waitFor();
});

test("boards there: they open, change no text by themselves, move no part with a computed place, and one by its literals if asked", async () => {
  await page.locator(".explorer-folders-view .monaco-list-row", { hasText: "cabin.ts" }).dblclick();
  await line(page, "leftMm: 600 + gap").waitFor();
  await runFromPalette(page, "Loomwright: Show the Boards to Scale");
  const view = diagramIn(page);
  const part = (name: string) => view.getByRole("button", { name: new RegExp(`^${name}, `) });
  const text = async () => {
    const lines = await page.locator(".view-line").allTextContents();
    return lines.join("\n").replaceAll("\u00a0", " ");
  };
  await part("plus").waitFor();

  const { x, y } = (await part("minus").boundingBox())!;
  await page.mouse.move(x + 5, y + 5);
  await page.mouse.down();
  await page.mouse.move(x - 40, y - 20, { steps: 8 });
  await page.mouse.up();
  await view.locator("#said", { hasText: "its distance from the left is computed" }).waitFor();
  expect(await text()).toContain("{ on: board, leftMm: 600 + gap, topMm: 300 }");
  expect(readFileSync(join(folder, "cabin.ts"), "utf8")).toBe(boardsPlan);

  await part("plus").focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Enter");
  await part("plus").and(view.locator("[aria-label*='605 mm from the left']")).waitFor();
  await expect.poll(text, { timeout: 30_000 }).toContain("{ on: board, leftMm: 605, topMm: 300 }");
});
