import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import { boardsPlan } from "../harness/boards-plan.ts";
import { diagramIn, elementIn } from "../harness/diagram-in-workbench.ts";
import { line, pick, runFromPalette, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";
import { clearWindow } from "../harness/workbench.ts";

// In one window and in this order, which is never trusted.

const editor = useEditor({ trustEverything: false });
let page: Page;
let folder: string;

/** A link that runs a command of the editor, and an icon that occurs nowhere else on the screen. */
const trap = "[PRESS ME](command:workbench.action.terminal.new) $(squirrel)";
const folderName = `van ${trap}`;

const stranger = `import { circuit } from "loomwright";

circuit({ name: "heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
`;

const files = {
  [`${folderName}/stranger.ts`]: stranger,
  [`${folderName}/cabin.ts`]: boardsPlan,
  [`${folderName}/lens ${trap}.ts`]: `import { circuit } from "loomwright";

circuit({ name: "heater ${trap}", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
`,
  [`${folderName}/thrown ${trap}.ts`]: `import { circuit } from "loomwright";

circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
throw new Error("no lamp ${trap}");
`,
  [`${folderName}/half ${trap}.ts`]: `import { circuit } from "loomwright";

circuit({ load: `,
};

/** The folder for pictures of it, to look at. */
const pictures = fileURLToPath(new URL("../dist/hostile", import.meta.url));

beforeAll(async () => {
  folder = join(editor.folder(files), folderName);
  page = await editor.open(folder, { file: "stranger.ts", viewport: { width: 1900, height: 1000 } });
  await page.getByRole("button", { name: /^No, I don't trust/ }).click();
  await statusItem(page, "Restricted Mode").waitFor();
});

async function openFromExplorer(file: string): Promise<void> {
  await page.locator(".explorer-folders-view .monaco-list-row", { hasText: file }).dblclick();
}

/**
 * Runs in the page: links and icons that the trap made. The item in which the editor's own TypeScript reports that it is
 * analysing a file is left out: it takes the name of that file for markup, and proves that the trap works.
 */
function sprung(): string[] {
  return [
    ...document.querySelectorAll(".codicon-squirrel, [href*='terminal.new'], [data-href*='terminal.new']"),
  ]
    .map(
      (element) =>
        element.closest(".statusbar-item, .notification-list-item, .monaco-list-row, .part") ?? element,
    )
    .filter((around) => !(around.matches(".statusbar-item") && around.textContent?.includes("Analyzing")))
    .map((around) => around.outerHTML);
}

/** Nowhere in the window has a text of the plan become a link that runs something, or an icon. */
async function expectNoTrap(picture: string): Promise<void> {
  mkdirSync(pictures, { recursive: true });
  await page.screenshot({ path: join(pictures, `${picture}.png`) });
  expect(await page.evaluate(sprung)).toEqual([]);
}

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
  await openFromExplorer("cabin.ts");
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

describe("names in it are text, and no link or icon", () => {
  beforeAll(async () => {
    await clearWindow(page);
    await openFromExplorer("lens [");
  });

  test("in the lens, the outline, the list of problems and the tab of the diagram, names stay text", async () => {
    await statusItem(page, "Loomwright: 1 circuit, 1 warning").waitFor({ timeout: 60_000 });
    const lens = page.locator(".codelens-decoration", { hasText: "worst drop" });
    await lens.waitFor();
    expect(
      String(await lens.textContent())
        .replaceAll("\u2060", "")
        .replace(/\s/g, " "),
    ).toContain(`(heater ${trap})`);
    expect(await lens.locator(".codicon").count()).toBe(0);
    await expectNoTrap("lens");

    await line(page, "circuit({ name").click();
    await page.keyboard.press("Control+Shift+O");
    await page.locator(".quick-input-list .monaco-list-row", { hasText: "heater" }).waitFor();
    await expectNoTrap("outline");
    await page.keyboard.press("Escape");

    await page.keyboard.press("Control+Shift+M");
    await page.locator(".markers-panel .monaco-list-row", { hasText: "heater [" }).first().waitFor();
    await expectNoTrap("problems");

    await page.getByRole("button", { name: "Show the Wiring Diagram" }).click();
    await page.locator(".tab", { hasText: "Wiring diagram: lens" }).waitFor();
    await expectNoTrap("diagram");
  }, 150_000);

  test("in a notification the error of a plan stays text", async () => {
    await openFromExplorer("thrown [");
    await statusItem(page, "Loomwright: 1 circuit, 1 error").waitFor({ timeout: 60_000 });
    const notice = page.locator(".notification-list-item-message", { hasText: "no lamp" });
    const dialog = page.locator(".quick-input-widget", { hasText: "Write the Report" });
    await runFromPalette(page, "Loomwright: Write the Report");
    await pick(page, "Which edition", "For the inspector");
    await dialog.waitFor();
    await page.waitForFunction(
      'document.querySelector(".quick-input-widget input[type=text]").value.endsWith(".report.html")',
    );
    await dialog.locator("a.monaco-button", { hasText: /^OK$/ }).click();
    await pick(page, "Which revision", "None");
    await notice.waitFor();
    const text = String(await notice.textContent())
      .replaceAll("\u2060", "")
      .replace(/\s/g, " ");
    expect(text).toContain(`no lamp ${trap}`);
    expect(await notice.locator("a").count()).toBe(0);
    expect(await notice.locator(".codicon").count()).toBe(0);
    await expectNoTrap("notification");
  }, 150_000);

  test("in the status bar the name of a half-typed file stays text", async () => {
    await openFromExplorer("half [");
    const item = statusItem(page, "Loomwright: not checked yet: half");
    await item.waitFor();
    expect(
      String(await item.textContent())
        .replaceAll("\u2060", "")
        .replace(/\s/g, " "),
    ).toContain(trap);
    // Our own icon, before the text.
    expect(await item.locator(".codicon").count()).toBe(1);
    await expectNoTrap("status");
  }, 150_000);
});
