import type { Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { line, openQuickFixes, statusItem, valueOn } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

// A network as a person sees it: from the cable without a fuse to the table of scenarios, in one window and in this order.

const editor = useEditor({ trustEverything: true });
let page: Page;

const plan = `import { battery, build, cable, circuit, fusePanel, scenario } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ name: "house bank", chemistry: "AGM", capacityAh: 60, internalMilliohm: 20 });
const panel = fusePanel({ name: "fuse panel", positions: 6, ratedA: 100 });
cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthFt: 4, gauge: 6 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 6 });
circuit({ name: "heater", from: panel.branch, load: 15, oneWayFt: 12, gauge: 10, protect: 20 });
scenario({ name: "evening", chargePercent: 50 });
scenario({ name: "cooking" });
`;

beforeAll(async () => {
  ({ page } = await editor.show({ "camper.ts": plan }, "camper.ts"));
});

test("the terminal that the bank reaches the cable at is underlined", async () => {
  // TypeScript also underlines the import: the library is not installed in this folder.
  await page.locator(".squiggly-error").nth(1).waitFor();
  await statusItem(page, "Loomwright: 1 circuit, 2 parts, 2 cables, 1 error, 1 warning").waitFor();
});

test("the current and what is spare stand beside a cable's size", async () => {
  await line(page, "carries 15 A, 105 A spare").waitFor();
});

test("the light bulb puts the fuse in, and the underline is gone", async () => {
  await openQuickFixes(page, valueOn(page, '"feeder"', "positive"), /^Add .*fuse/);
  await page.keyboard.press("Enter");
  await line(page, "protect: { ratingA").waitFor();
  expect(await line(page, '"feeder"').textContent()).toMatch(/family:\s"ISO\s8820/);
  await statusItem(page, "Loomwright: 1 circuit, 2 parts, 2 cables, 1 warning").waitFor();
  await page.locator(".squiggly-error").nth(1).waitFor({ state: "detached" });
});

test("resting the pointer on a cable shows a table of the scenarios", async () => {
  await valueOn(page, '"feeder"', '"feeder"').hover();
  const hover = page.locator(".monaco-hover:visible");
  await hover
    .getByText(/may carry 120 A/)
    .first()
    .waitFor();
  const cells = hover.locator("table").first().locator("tr");
  await cells.filter({ hasText: "evening" }).waitFor();
  await cells.filter({ hasText: "cooking" }).waitFor();
});

test("a heavier load than the cables may carry is said over the plan", async () => {
  await page.keyboard.press("Escape");
  await valueOn(page, '"heater"', "15").dblclick();
  await page.keyboard.type("500");
  await page.locator(".codelens-decoration", { hasText: /2 cables.*error/ }).waitFor();
});
