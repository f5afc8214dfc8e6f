import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { FrameLocator, Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { boardsPlan } from "../harness/boards-plan.ts";
import { diagramIn } from "../harness/diagram-in-workbench.ts";
import { line, runFromPalette, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

// An arrangement that is suggested in the view of the boards, in one window and in this order.

/** Two parts have no place yet. */
const plan = boardsPlan.replace("  at: { on: board, leftMm: 600, topMm: 300 },\n", "");
const editor = useEditor({ trustEverything: true });
let page: Page;
let file: string;
let view: FrameLocator;

beforeAll(async () => {
  const shown = await editor.show({ "cabin.ts": plan }, "cabin.ts", {
    viewport: { width: 1900, height: 1000 },
  });
  page = shown.page;
  file = join(shown.folder, "cabin.ts");
  await statusItem(page, "Loomwright: 1 circuit").waitFor();
  view = diagramIn(page);
});

/** On a busy machine too. */
const eventually = <Value>(look: () => Promise<Value> | Value) => expect.poll(look, { timeout: 30_000 });
const suggest = () => view.getByRole("button", { name: "Suggest an arrangement on Main board" });
const onScreen = async () =>
  (await page.locator(".view-line").allTextContents()).join("\n").replaceAll("\u00a0", " ");
const saved = async () => {
  await line(page, "insulationC").click();
  await page.keyboard.press("Control+s");
  return readFileSync(file, "utf8");
};
const found = async () => {
  await suggest().focus();
  await page.keyboard.press("Enter");
  await view.getByRole("heading", { name: "Suggested arrangement" }).waitFor();
  for (const name of ["plus", "Fridge"])
    await view.getByRole("button", { name: new RegExp(`^${name}, suggested place: \\d`) }).waitFor();
};

test("it shows the places with their copper and findings, and leaves the text as it is", async () => {
  await runFromPalette(page, "Loomwright: Show the Boards to Scale");
  await suggest().waitFor();
  await found();
  await view.getByText(/9\.5 m of conductor today, [\d.]+ m suggested; copper/).waitFor();
  await view.getByText(/^Findings today: .*\. With these places: .*\.$/).waitFor();
  await view.getByRole("button", { name: "Leave", exact: true }).click();
  await view.getByText("The suggestion was left; the text is unchanged.").waitFor();
  expect(await view.getByRole("button", { name: /suggested place/ }).count()).toBe(0);
  expect(await saved()).toBe(plan);
});

test("all its places are taken as one step, with the keyboard, and one undo gives the text back", async () => {
  await found();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await view.getByText("The suggested places are in the text, as one step").waitFor();
  await eventually(async () => (await onScreen()).match(/^ *at: \{ on: board, leftMm: \d/gm)?.length).toBe(4);
  await view.getByRole("button", { name: /^plus, \d/ }).waitFor();
  await eventually(saved).not.toBe(plan);
  await view.getByRole("button", { name: "Undo" }).click();
  await view.getByRole("button", { name: "Put on Main board: plus" }).waitFor();
  await eventually(saved).toBe(plan);
});

test("an edit while it is shown drops it, with a sentence", async () => {
  await found();
  await line(page, "loadW: 60").click();
  await page.keyboard.press("End");
  // One word: the editor undoes it as one step, however slowly it is typed.
  await page.keyboard.type("//W");
  await view.getByText("The text changed: the suggestion was dropped.").waitFor();
  await page.keyboard.press("Control+z");
  await eventually(saved).toBe(plan);
});
