import { existsSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { expect, test } from "vitest";
import { runFromPalette, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

const editor = useEditor({ trustEverything: true });

test("a new build is made from the command palette, in a new folder of the name one gives", async () => {
  const { page, folder } = await editor.show({ "notes.txt": "mine\n" }, "notes.txt");
  const workspace = dirname(folder);
  await runFromPalette(page, "Loomwright: New Build from Template");

  const templates = page.locator(".quick-input-widget", { hasText: "What is it for?" });
  await templates.getByText("A small boat").waitFor();
  await page.keyboard.type("small boat");
  await page.keyboard.press("Enter");

  // The editor's own dialog for folders of another machine: the workspace's folder is proposed.
  await page.locator(".quick-input-widget", { hasText: "Where should the new build go?" }).waitFor();
  await page.locator(".quick-input-widget a.monaco-button", { hasText: "Make It Here" }).click();

  const name = page.locator(".quick-input-widget", { hasText: "Name of the new folder" });
  await name.waitFor();
  await name.locator("input[type=text]").fill(basename(folder));
  await name.getByText("exists already").waitFor();
  await name.locator("input[type=text]").fill("van");
  await page.keyboard.press("Enter");

  await page.locator(".tab.active", { hasText: "plan.ts" }).waitFor();
  await statusItem(page, "Loomwright: 8 circuits").waitFor();
  expect(existsSync(join(workspace, "van", "package.json"))).toBe(true);
});
