import { afterAll, expect, test } from "vitest";
import { boardsPlan } from "../harness/boards-plan.ts";
import { diagramIn } from "../harness/diagram-in-workbench.ts";
import { energyPlan } from "../harness/energy-plan.ts";
import { runFromPalette, statusItem } from "../harness/on-screen.ts";
import { editorToDisturb, serverProcesses } from "../harness/server-processes.ts";
import { useEditor } from "../harness/use-editor.ts";

const editor = useEditor(editorToDisturb);

const held = new Set<number>();
/** Stops the server's process as a machine does that has no time for it. */
const hold = () => {
  for (const id of serverProcesses(editor.server())) {
    process.kill(id, "SIGSTOP");
    held.add(id);
  }
  expect(held.size).toBeGreaterThan(0);
};
const letGo = () => {
  for (const id of held) process.kill(id, "SIGCONT");
  held.clear();
};
afterAll(letGo);

test("the boards say that an answer takes long, and show it when it comes", async () => {
  const { page } = await editor.show({ "cabin.ts": boardsPlan }, "cabin.ts");
  await statusItem(page, "Loomwright: 1 circuit").waitFor();
  await runFromPalette(page, "Loomwright: Show the Boards to Scale");
  const view = diagramIn(page);
  await view.getByRole("button", { name: /^plus, / }).waitFor();
  expect(await view.locator("#notice").textContent()).toBe("");
  hold();
  await view.getByRole("checkbox", { name: "Conductors" }).check();
  await view.locator("#notice", { hasText: "The boards are still being checked." }).waitFor();
  letGo();
  await view.locator(".stage .loomwright-conductor").first().waitFor({ state: "attached" });
  await expect.poll(() => view.locator("#notice").textContent()).toBe("");
});

test("the view of energy does so while a lever moves, and the lever stays where it is", async () => {
  const { page } = await editor.show({ "hut.ts": energyPlan }, "hut.ts");
  await statusItem(page, "Loomwright: 2 circuits").waitFor();
  await runFromPalette(page, "Loomwright: Show Whether the Bank Keeps Up");
  const view = diagramIn(page);
  await view.locator("#chart svg").waitFor();
  const months = () => view.locator("#months").textContent();
  const before = await months();
  hold();
  const lever = view.getByRole("slider", { name: "house: capacity" });
  await lever.focus();
  await page.keyboard.press("Home");
  await view.locator("#notice", { hasText: "The figures are still being worked out." }).waitFor();
  expect(await months()).toBe(before);
  letGo();
  await expect.poll(months).not.toBe(before);
  await view.locator("#notice", { hasText: "the text is unchanged" }).waitFor();
  expect(await lever.inputValue()).toBe(await lever.getAttribute("min"));
});
