import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { shows, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

// Every command that the extension contributes is reached without a mouse.

const editor = useEditor({ trustEverything: true });

const { contributes } = JSON.parse(
  readFileSync(new URL("../../../extension/package.json", import.meta.url), "utf8"),
) as {
  readonly contributes: {
    readonly commands: readonly {
      readonly command: string;
      readonly title: string;
      readonly category: string;
    }[];
    readonly menus: Readonly<Record<string, readonly { readonly command: string }[]>>;
  };
};

const shed = `import { build, circuit } from "loomwright";

build({ name: "shed", insulationC: 105 });
circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
`;

/** Whether the palette, opened by F1, lists it. */
async function isInPalette(page: Page, title: string): Promise<boolean> {
  const input = page.locator(".quick-input-widget input[type=text]").first();
  const row = page.locator(".quick-input-list .monaco-list-row").getByText(title, { exact: true }).first();
  // The palette knows our commands once the editor has read the extensions.
  for (let tries = 0; tries < 10; tries++) {
    await page.keyboard.press("F1");
    const typed = input.fill(`>${title}`, { timeout: 2_000 }).then(
      () => true,
      () => false,
    );
    const found = (await typed) && (await shows(row, 2_000));
    await page.keyboard.press("Escape");
    if (found) return true;
  }
  return false;
}

test("every command is in the palette of a plan, and those of the context menu are in that", async () => {
  const { page } = await editor.show({ "shed.ts": shed }, "shed.ts");
  await statusItem(page, "Loomwright: 1 circuit").waitFor();

  const missing: string[] = [];
  for (const { title, category } of contributes.commands) {
    const shown = `${category}: ${title}`;
    if (!(await isInPalette(page, shown))) missing.push(shown);
  }
  expect(missing).toEqual([]);
  // A command that goes away must go away here too.
  expect(contributes.commands).toHaveLength(17);

  await page.keyboard.press("Control+End");
  await page.keyboard.press("Shift+F10");
  const menu = page.locator(".monaco-menu");
  await menu.waitFor();
  const titles = new Map(contributes.commands.map(({ command, title }) => [command, title]));
  for (const { command } of contributes.menus["editor/context"] ?? [])
    await menu.getByText(titles.get(command)!, { exact: true }).waitFor();
  await page.keyboard.press("Escape");
}, 300_000);
