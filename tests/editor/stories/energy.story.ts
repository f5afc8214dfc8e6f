import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { FrameLocator, Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { diagramIn } from "../harness/diagram-in-workbench.ts";
import { energyPlan } from "../harness/energy-plan.ts";
import { line, runFromPalette, statusItem, valueOn } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";
import { isReloaded, reloadWindow } from "../harness/workbench.ts";

// Whether the bank keeps up, beside the text, as a person works with it, in one window and in this order.

const editor = useEditor({ trustEverything: true });
let page: Page;
let file: string;
let view: FrameLocator;

beforeAll(async () => {
  const shown = await editor.show({ "hut.ts": energyPlan }, "hut.ts", {
    viewport: { width: 1600, height: 1000 },
  });
  page = shown.page;
  file = join(shown.folder, "hut.ts");
  await statusItem(page, "Loomwright: 2 circuits").waitFor();
  view = diagramIn(page);
});

const months = () => view.locator("#months").textContent();
/** The months of the plan as it is opened. */
let asItWas: string | null;

const capacity = () => view.getByRole("slider", { name: "house: capacity" });
const figure = () => view.locator(".lever", { hasText: "house: capacity" }).locator("output");

/** On a busy machine too. */
const eventually = <Value>(look: () => Promise<Value> | Value) => expect.poll(look, { timeout: 30_000 });

/** Drags the thumb to a share of the way; `whileDown` looks at the page before it is let go. */
async function drag(share: number, whileDown: () => Promise<void> = async () => {}): Promise<void> {
  await capacity().scrollIntoViewIfNeeded();
  const box = (await capacity().boundingBox())!;
  const at = await capacity().evaluate((element) => {
    const { min, max, value } = element as HTMLInputElement;
    return (Number(value) - Number(min)) / (Number(max) - Number(min));
  });
  const y = box.y + box.height / 2;
  // The thumb is about 16 px wide and stays within the lever.
  const x = (part: number) => box.x + 8 + part * (box.width - 16);
  await page.mouse.move(x(at), y);
  await page.mouse.down();
  await page.mouse.move(x(share), y, { steps: 6 });
  await whileDown();
  await page.mouse.up();
}

const capacityInText = async () =>
  /capacityAh:\s(\d+)/.exec((await line(page, "capacityAh").textContent()) ?? "")?.[1];

test("the command shows the months beside the text, which keeps the focus", async () => {
  await runFromPalette(page, "Loomwright: Show Whether the Bank Keeps Up");
  await page.locator(".tab", { hasText: "Energy: hut" }).waitFor();
  await view.locator("#months tbody tr").nth(11).waitFor();
  await view.locator("#chart svg").waitFor();
  await page.locator(".monaco-editor.focused").waitFor();
  asItWas = await months();
});

test("it follows the text while somebody types", async () => {
  await valueOn(page, "dutyPercent", "40").dblclick();
  const before = await view.locator("#months tbody tr").first().textContent();
  await page.keyboard.type("60");
  await eventually(() => view.locator("#months tbody tr").first().textContent()).not.toBe(before);
  await page.keyboard.press("Control+z");
  await eventually(() => view.locator("#months tbody tr").first().textContent()).toBe(before);
});

test("a lever shows its effect while it moves, and changes its number when it is let go, as one step", async () => {
  await eventually(months).toBe(asItWas);
  await drag(0.6, async () => {
    await view.getByText("the text is unchanged").waitFor();
    await eventually(months).not.toBe(asItWas);
    expect(await capacityInText()).toBe("100");
  });
  await eventually(capacityInText).not.toBe("100");
  const first = await capacityInText();
  await eventually(() => figure().textContent()).toBe(`${first} Ah`);
  await drag(0.9);
  await eventually(capacityInText).not.toBe(first);
  const second = await capacityInText();

  await view.getByRole("button", { name: "Undo" }).click();
  await eventually(capacityInText).toBe(first);
  await eventually(() => figure().textContent()).toBe(`${first} Ah`);
  await capacity().focus();
  await page.keyboard.press("Control+z");
  await eventually(capacityInText).toBe("100");
  await eventually(() => figure().textContent()).toBe("100 Ah");

  // Redone from the text itself.
  await line(page, "reservePercent").click();
  await page.keyboard.press("Control+y");
  await eventually(capacityInText).toBe(first);
  await page.keyboard.press("Control+y");
  await eventually(capacityInText).toBe(second);
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  await eventually(capacityInText).toBe("100");
  await page.keyboard.press("Control+s");
  await eventually(() => readFileSync(file, "utf8")).toBe(energyPlan);
});

test("a change that was made in the text is not undone from the view", async () => {
  await eventually(months).toBe(asItWas);
  await valueOn(page, "dutyPercent", "40").dblclick();
  await page.keyboard.type("45");
  await eventually(months).not.toBe(asItWas);
  await view.getByRole("button", { name: "Undo" }).click();
  await view.getByText("The last change was not made here: undo it in the text.").waitFor();
  await line(page, "dutyPercent: 45").waitFor();
  await valueOn(page, "dutyPercent", "45").click();
  await page.keyboard.press("Control+z");
  await line(page, "dutyPercent: 40").waitFor();
  await eventually(months).toBe(asItWas);
});

test("an absent number is inserted, and taken out again by one undo", async () => {
  const strings = view.getByRole("slider", { name: /roof: strings/ });
  await strings.focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Enter");
  await line(page, "parallel: 2").waitFor();
  await strings.focus();
  await page.keyboard.press("Control+z");
  await eventually(() => page.locator(".view-line", { hasText: "parallel" }).count()).toBe(0);
});

if (isReloaded("energy"))
  test("a reload of the window brings the view back", async () => {
    await view.getByRole("button", { name: "Jun", exact: true }).click();
    await view.getByRole("heading", { name: /worst week of Jun/ }).waitFor();
    await reloadWindow(page, /loomwright\.energy/);
    view = diagramIn(page);
    await view.locator("#months tbody tr").nth(11).waitFor();
    await view.locator("#chart svg").waitFor();
  });
