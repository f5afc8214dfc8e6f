import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { FrameLocator, Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { diagramIn, elementIn } from "../harness/diagram-in-workbench.ts";
import { line, runFromPalette, statusItem, valueOn } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";
import { isReloaded, reloadWindow } from "../harness/workbench.ts";

// The diagram beside the text, as a person works with it, in one window and in this order.

const editor = useEditor({ trustEverything: true });
let page: Page;
let folder: string;
let diagram: FrameLocator;

const plan = `import { battery, build, cable, circuit, fusePanel, scenario } from "loomwright";

build({ name: "small boat", insulationC: 105 });
const bank = battery({
  name: "house bank",
  chemistry: "AGM",
  capacityAh: 60,
});
const panel = fusePanel({ name: "fuse panel", positions: 6 });
cable({
  name: "feeder",
  from: bank.positive,
  to: panel.feed,
  lengthFt: 4,
  gauge: 6,
  protect: 40,
});
cable({
  name: "panel return",
  from: panel.negative,
  to: bank.negative,
  lengthFt: 4,
  gauge: 6,
});
circuit({
  name: "heater",
  from: panel.branch,
  load: 15,
  oneWayFt: 12,
  gauge: 10,
  protect: 20,
});
scenario({ name: "evening", chargePercent: 50 });
scenario({ name: "cooking" });
`;

beforeAll(async () => {
  folder = editor.folder({ "boat.ts": plan });
  page = await editor.open(folder, { file: "boat.ts", viewport: { width: 1500, height: 900 } });
  await statusItem(page, "Loomwright: 1 circuit").waitFor();
  diagram = diagramIn(page);
});

const inPicture = (text: string | RegExp) => diagram.locator("#stage text", { hasText: text }).first();

test("the icon over the plan shows its diagram beside it, and the text keeps the focus", async () => {
  await page.getByRole("button", { name: "Show the Wiring Diagram" }).click();
  await page.locator(".tab", { hasText: "Wiring diagram: small boat" }).waitFor();
  await elementIn(diagram, "house bank").waitFor();
  await elementIn(diagram, "fuse panel").waitFor();
  await page.locator(".monaco-editor.focused").waitFor();
});

test("a click on a part moves the cursor to its line", async () => {
  await elementIn(diagram, "fuse panel").locator("> .frame").click();
  await diagram.locator("#details").getByRole("heading", { name: "fuse panel" }).waitFor();
  // The focus stays, to allow further clicks; Escape gives it to the text.
  await page.keyboard.press("Escape");
  await statusItem(page, "Ln 9, Col").waitFor();
});

test("the cursor in the text lights up what is written there", async () => {
  await valueOn(page, "chemistry", '"AGM"').click();
  await diagram.locator("g.marked.element", { hasText: "house bank" }).waitFor();
  expect(await diagram.locator("g.marked").count()).toBe(1);
  await valueOn(page, "oneWayFt", "12").click();
  await diagram.locator("g.marked.of-conductor").first().waitFor();
  await diagram
    .locator("#details")
    .getByRole("heading", { name: /heater/ })
    .waitFor();
});

test("an edit changes the picture, and it keeps its size", async () => {
  await diagram.locator("#view").selectOption("wiring");
  await inPicture(/10 AWG/).waitFor();
  await diagram.locator("#larger").click();
  const scale = await diagram.locator("#scale").textContent();
  await valueOn(page, "gauge: 10", "10").dblclick();
  await page.keyboard.type("8");
  await inPicture(/\b8 AWG/).waitFor();
  expect(await diagram.locator("#stage text", { hasText: "10 AWG" }).count()).toBe(0);
  expect(await diagram.locator("#scale").textContent()).toBe(scale);
});

test("while a line is half typed the last picture stays, and says what it is", async () => {
  await page.keyboard.type(" +");
  await diagram.locator("#notice", { hasText: "As of the last complete text." }).waitFor();
  await inPicture(/\b8 AWG/).waitFor();
  for (let times = 0; times < 2; times++) await page.keyboard.press("Backspace");
  await diagram.locator("#notice").waitFor({ state: "hidden" });
});

test("a scenario puts currents on the lines and voltages at the parts", async () => {
  await diagram.locator("#scenario").selectOption("evening");
  await inPicture(/15 A\b/).waitFor();
  await inPicture(/11\.\d+ V/).waitFor();
});

test("a value that is wrong for a moment takes neither the scenario nor the size away", async () => {
  const scale = await diagram.locator("#scale").textContent();
  await valueOn(page, "gauge: 8", "8").dblclick();
  await page.keyboard.type("88");
  await diagram.locator("#notice", { hasText: "could not be read" }).waitFor();
  await page.keyboard.press("Backspace");
  await inPicture(/15 A\b/).waitFor();
  await diagram.locator("#notice").waitFor({ state: "hidden" });
  expect(await diagram.locator("#scenario").inputValue()).toBe("evening");
  expect(await diagram.locator("#scale").textContent()).toBe(scale);
});

test("what is found stands at the part, and goes when it is put right", async () => {
  await valueOn(page, "gauge: 8", "8").dblclick();
  await page.keyboard.type("18");
  await diagram.locator("g.loomwright-warning").first().waitFor();
  // The cursor is on a circuit, which is a load, two conductors and a fuse: the strip leads to the intended one.
  await diagram
    .locator("#details")
    .getByRole("button", { name: /^heater, conductor\s*Warning/ })
    .click();
  await diagram.locator("#details strong", { hasText: "18 AWG is below the minimum" }).waitFor();
  await valueOn(page, "gauge: 18", "18").dblclick();
  await page.keyboard.type("10");
  await expect.poll(() => diagram.locator("g.of-conductor.loomwright-warning").count()).toBe(0);
});

test("by keyboard alone: into the panel, to a part, to its line, and back", async () => {
  await page.keyboard.press("Control+Home");
  await page.keyboard.press("Control+2");
  // The id of the focused element in the panel, or of its subject; undefined while the text has the focus.
  const focused = () =>
    diagram.locator("body").evaluate(() => {
      const { activeElement } = document;
      if (!document.hasFocus()) return undefined;
      return (activeElement as HTMLElement | null)?.dataset.element ?? activeElement?.id;
    });
  // The focus returns to the element that had it last, from which it can go back to the picture; else to the picture.
  await expect.poll(focused, { timeout: 15_000 }).toMatch(/:|^stage$/);
  for (let tabs = 0; tabs < 20 && (await focused()) !== "stage"; tabs++)
    await page.keyboard.press("Shift+Tab");
  expect(await focused()).toBe("stage");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Home");
  await page.keyboard.press("ArrowDown");
  const name = await diagram.locator("#details h2").textContent();
  // A message about an earlier move of the cursor comes late: the element that is being read keeps its details.
  await diagram.locator("body").evaluate(() => {
    for (let number = 0; number < 500; number++)
      dispatchEvent(new MessageEvent("message", { data: { type: "cursor", number, elements: [] } }));
  });
  expect(await diagram.locator("#details h2").textContent()).toBe(name);
  await page.keyboard.press("Enter");
  await expect.poll(() => statusItem(page, "Ln ").first().textContent()).not.toMatch(/Ln 1,/);
  await page.locator(".monaco-editor.focused").waitFor();
  expect(name).not.toBe("");

  await page.keyboard.press("Control+2");
  await expect.poll(focused, { timeout: 15_000 }).toMatch(/:|^stage$/);
  await page.keyboard.press("Escape");
  await page.locator(".monaco-editor.focused").waitFor();
});

test.each([
  { theme: "Default Light Modern", kind: "vscode-light" },
  { theme: "Default High Contrast", kind: "vscode-high-contrast" },
  { theme: "Default High Contrast Light", kind: "vscode-high-contrast-light" },
  { theme: "Default Dark Modern", kind: "vscode-dark" },
])("in $theme its colours are the theme's", async ({ theme, kind }) => {
  mkdirSync(join(folder, ".vscode"), { recursive: true });
  writeFileSync(join(folder, ".vscode/settings.json"), JSON.stringify({ "workbench.colorTheme": theme }));
  await diagram.locator(`body.${kind}`).waitFor();
  const colours = await diagram.locator("#stage").evaluate((stage) => {
    const painted = (property: string) => {
      const probe = document.createElement("i");
      probe.style.color = `var(${property})`;
      document.body.append(probe);
      const { color } = getComputedStyle(probe);
      probe.remove();
      return color;
    };
    const name = stage.querySelector("g.of-part text[font-weight]")!;
    const line = stage.querySelector("g.of-conductor path:not(.halo)")!;
    return {
      ...{ ink: getComputedStyle(name).fill, line: getComputedStyle(line).stroke },
      ground: getComputedStyle(document.body).backgroundColor,
      foreground: painted("--vscode-editor-foreground"),
      background: painted("--vscode-editor-background"),
    };
  });
  expect(colours.ink).toBe(colours.foreground);
  expect(colours.line).toBe(colours.foreground);
  expect(colours.ground).toBe(colours.background);
  expect(colours.ink).not.toBe(colours.ground);
});

if (isReloaded("diagram"))
  test("it is there again after a reload of the window, and follows the text", async () => {
    await reloadWindow(page, /loomwright\.diagram/);
    diagram = diagramIn(page);
    await elementIn(diagram, "fuse panel").waitFor();
    // The editor decides how much of a page's kept state is saved by then; the page's own tests cover the kept state.
    await diagram.locator("#view").selectOption("wiring");
    await inPicture(/10 AWG/).waitFor();
    await line(page, '"heater"').waitFor();
  });

test("with the tab of the text closed it stays, and a click opens the text at its line again", async () => {
  await line(page, '"heater"').click();
  await page.keyboard.press("Control+S");
  await page.locator(".tab", { hasText: "boat.ts" }).locator(".codicon-close").click();
  await page.locator(".tab", { hasText: "boat.ts" }).waitFor({ state: "detached" });
  await elementIn(diagram, "fuse panel").locator("> .frame").dblclick();
  await page.locator(".tab", { hasText: "boat.ts" }).waitFor();
  await statusItem(page, "Ln 9, Col").waitFor();
});

test("asked for again, the same panel is shown; a file that is no plan has none, and it is said", async () => {
  await line(page, '"heater"').click();
  await runFromPalette(page, "Loomwright: Show the Wiring Diagram");
  await expect.poll(() => page.locator(".tab", { hasText: "Wiring diagram" }).count()).toBe(1);
  await page.keyboard.press("Control+A");
  await page.keyboard.type("export {};");
  await diagram.locator("#notice", { hasText: "boat.ts is no longer a plan." }).waitFor();
  await elementIn(diagram, "fuse panel").waitFor();
});
