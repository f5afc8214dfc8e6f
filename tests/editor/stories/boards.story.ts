import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { FrameLocator, Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { boardsPlan } from "../harness/boards-plan.ts";
import { diagramIn } from "../harness/diagram-in-workbench.ts";
import { line, runFromPalette, statusItem, valueOn } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";
import { isReloaded, reloadWindow } from "../harness/workbench.ts";

// The boards beside the text, as a person works with them, in one window and in this order.

const editor = useEditor({ trustEverything: true });
let page: Page;
let file: string;
let view: FrameLocator;

beforeAll(async () => {
  const shown = await editor.show({ "cabin.ts": boardsPlan }, "cabin.ts", {
    viewport: { width: 1900, height: 1000 },
  });
  page = shown.page;
  file = join(shown.folder, "cabin.ts");
  await statusItem(page, "Loomwright: 1 circuit").waitFor();
  view = diagramIn(page);
});

const part = (name: string) => view.getByRole("button", { name: new RegExp(`^${name}, `) });

/** On a busy machine too. */
const eventually = <Value>(look: () => Promise<Value> | Value) => expect.poll(look, { timeout: 30_000 });

/** The statement of a part: its line with `at`. */
const placeInText = async (name: string) => {
  const lines = await page.locator(".view-line").allTextContents();
  const text = lines.join("\n").replaceAll("\u00a0", " ");
  return new RegExp(`name: "${name}"[^]*?at: (\\{.*?\\})`).exec(text)?.[1];
};

/** Drags a part by some millimetres; `whileDown` looks at the page before it is let go. */
async function drag(name: string, across: number, down: number, whileDown = async () => {}): Promise<void> {
  const box = (await part(name).boundingBox())!;
  const mm = box.width / 120;
  const [x, y] = [box.x + 5, box.y + 5];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + across * mm, y + down * mm, { steps: 8 });
  await whileDown();
  await page.mouse.up();
}

const asItWas = "{ on: board, leftMm: 600, topMm: 300 }";

test("the command shows the boards beside the text, which keeps the focus", async () => {
  await runFromPalette(page, "Loomwright: Show the Boards to Scale");
  await page.locator(".tab", { hasText: "Boards: cabin" }).waitFor();
  await part("plus").waitFor();
  await page.locator(".monaco-editor.focused").waitFor();
});

test("a part that is dragged shows its effects, and its literals change when it is let go, as one step", async () => {
  await eventually(() => placeInText("plus")).toBe(asItWas);
  await drag("plus", -200, -95, async () => {
    await view.getByText("the text is unchanged").waitFor();
    await view.locator("#effect", { hasText: "plus: " }).waitFor();
    expect(await placeInText("plus")).toBe(asItWas);
  });
  await eventually(() => placeInText("plus")).not.toBe(asItWas);
  const dragged = await placeInText("plus");
  await part("plus").focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await eventually(() => placeInText("plus")).not.toBe(dragged);
  const stepped = await placeInText("plus");

  await view.getByRole("button", { name: "Undo" }).click();
  await eventually(() => placeInText("plus")).toBe(dragged);
  await part("plus").focus();
  await page.keyboard.press("Control+z");
  await eventually(() => placeInText("plus")).toBe(asItWas);
  await part("plus").and(view.locator("[aria-label*='600 mm from the left']")).waitFor();

  // Redone from the text itself.
  await line(page, "insulationC").click();
  await page.keyboard.press("Control+y");
  await eventually(() => placeInText("plus")).toBe(dragged);
  await page.keyboard.press("Control+y");
  await eventually(() => placeInText("plus")).toBe(stepped);
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  await eventually(() => placeInText("plus")).toBe(asItWas);
  await page.keyboard.press("Control+s");
  await eventually(() => readFileSync(file, "utf8")).toBe(boardsPlan);
});

test("a part with a computed place says why it cannot be dragged", async () => {
  // The view has followed the last undo: a text that changes ends a drag.
  await part("plus").and(view.locator("[aria-label*='600 mm from the left']")).waitFor();
  await drag("minus", -200, -95);
  await view.locator("#said", { hasText: "its distance from the left is computed" }).waitFor();
  expect(await placeInText("minus")).toBe("{ on: board, leftMm: 600 + gap, topMm: 300 }");
});

test("a part that hangs nowhere is put on a board, and taken off again by one undo", async () => {
  const put = view.getByRole("button", { name: "Put on Main board: Fridge" });
  await put.focus();
  await page.keyboard.press("Enter");
  await view.getByText("the text is unchanged").waitFor();
  await page.keyboard.press("Enter");
  await eventually(() => placeInText("Fridge")).toBe("{ on: board, leftMm: 0, topMm: 0 }");
  await part("Fridge").focus();
  await page.keyboard.press("Control+z");
  await put.waitFor();
  await eventually(() => placeInText("Fridge")).toBe(undefined);
});

test("a click leads to the line, and the cursor in the text selects its part", async () => {
  await part("house").click();
  await view.getByRole("heading", { name: "house", exact: true }).waitFor();
  await page.locator(".active-line-number", { hasText: /^6$/ }).waitFor();
  await valueOn(page, "leftMm: 600, topMm", "600").click();
  await view.getByRole("heading", { name: "plus", exact: true }).waitFor();
});

if (isReloaded("boards"))
  test("a reload of the window brings the view back", async () => {
    await view.getByRole("checkbox", { name: "Conductors" }).check();
    await view.locator(".stage .loomwright-conductor").first().waitFor();
    await reloadWindow(page, /conductors\\*":true/);
    view = diagramIn(page);
    await part("plus").waitFor();
    await view.getByRole("checkbox", { name: "Conductors", checked: true }).waitFor();
    await view.locator(".stage .loomwright-conductor").first().waitFor();
  });
