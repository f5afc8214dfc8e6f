import { join } from "node:path";
import type { Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { line, openQuickFixes, statusItem, valueOn } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";
import { openFile } from "../harness/workbench.ts";

// The view and clicks of a person, from the first underline to the corrected plan, in one window and in this order.

const editor = useEditor({ trustEverything: true });
let page: Page;
let folder: string;

const heater = {
  "heater.ts": `import { circuit } from "loomwright";

circuit({ name: "heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
`,
};

/** The same once more, for a finding that is accepted. */
const files = { ...heater, "accepted.ts": heater["heater.ts"] };

beforeAll(async () => {
  ({ page, folder } = await editor.show(files, "heater.ts"));
});

test("the wrong value is underlined", async () => {
  await page.locator(".squiggly-warning").first().waitFor();
});

test("the state of the plan stands in the status bar", async () => {
  await statusItem(page, "Loomwright: 1 circuit, 1 warning").waitFor();
});

test("drop and spare capacity stand beside the size, and a line over the plan sums it up", async () => {
  await line(page, "A spare").waitFor();
  await page.locator(".codelens-decoration", { hasText: /1 circuit.*1 warning/ }).waitFor();
});

test("resting the pointer on the value shows what was found and what the circuit carries", async () => {
  await valueOn(page, "heater", "14").hover();
  const hover = page.locator(".monaco-hover:visible");
  await hover.locator("a.code-link", { hasText: "conductor/voltage-drop" }).waitFor();
  await hover
    .getByText(/worked out/i)
    .first()
    .waitFor();
  expect(await hover.textContent()).toMatch(/\d %/);
});

test("a click on the rule's name opens its page", async () => {
  await page.locator(".monaco-hover:visible a.code-link").click();
  const tab = page.locator(".tab", { hasText: "Preview voltage-drop.md" });
  const preview = page.frameLocator("iframe.webview").frameLocator("iframe#active-frame");
  await preview.getByRole("heading", { name: "Why it matters" }).waitFor();
  await tab.locator(".codicon-close").click();
});

test("the light bulb's fix is applied, and the underline is gone", async () => {
  await openQuickFixes(page, valueOn(page, "heater", "14"), /AWG/);
  await page.keyboard.press("Enter");
  await statusItem(page, "Loomwright: 1 circuit, no findings").waitFor();
  expect(await page.locator(".squiggly-warning").count()).toBe(0);
  expect(await line(page, "heater").textContent()).not.toMatch(/gauge:\s14/);
});

test("sizes are offered while one types, each with its drop", async () => {
  await page.keyboard.press("Control+End");
  await page.keyboard.type(
    'circuit({ name: "lamp", load: 2, oneWayFt: 30, protect: 5, insulationC: 105, gauge: ',
  );
  await page.keyboard.press("Control+Space");
  await page
    .locator(".suggest-widget.visible .monaco-list-row", { hasText: /: drop \S+ %/ })
    .first()
    .waitFor();
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  await statusItem(page, "Loomwright: 2 circuits").waitFor();
});

test("the state goes when the file no longer imports the library", async () => {
  await page.keyboard.press("Control+A");
  await page.keyboard.type("export {};");
  await statusItem(page, "Loomwright").waitFor({ state: "detached" });
});

test("a finding is accepted with a reason, and is no warning any more", async () => {
  await openFile(page, join(folder, "accepted.ts"));
  await statusItem(page, "Loomwright: 1 circuit, 1 warning").waitFor();
  await page.locator(".squiggly-warning").first().waitFor();
  await openQuickFixes(page, valueOn(page, "heater", "14"), /^Accept, with a reason: excessive voltage drop/);
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await line(page, "accept").waitFor();
  await page.keyboard.type("runs on shore power only");
  await statusItem(page, "Loomwright: 1 circuit, 1 accepted").waitFor();
});
