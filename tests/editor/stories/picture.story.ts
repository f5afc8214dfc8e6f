import { copyFileSync, mkdirSync, readFileSync, statSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { useEditor } from "../harness/use-editor.ts";

// The picture in the README is taken of the real editor with the real extension: `node tests/editor/run.mjs --picture`.

const house = new URL("../../../", import.meta.url);
const fresh = fileURLToPath(new URL("tests/editor/dist/finding.png", house));
const kept = fileURLToPath(new URL("extension/media/finding.png", house));

const editor = useEditor({ trustEverything: true });

test("the README's picture can be taken: a heater's wire, underlined, with what was found", async () => {
  const folder = editor.folder({
    "camper.ts": readFileSync(new URL("examples/camper-draft/camper.ts", house), "utf8"),
    "tsconfig.json": readFileSync(new URL("examples/camper-draft/tsconfig.json", house), "utf8"),
    ".vscode/settings.json": JSON.stringify(calm),
  });
  const page = await editor.open(folder, { file: "camper.ts", viewport: { width: 1200, height: 750 } });
  await page.locator(".statusbar-item", { hasText: /Loomwright: 8 circuits/ }).waitFor();
  await page
    .locator(".view-line", { hasText: /cabin heater/ })
    .getByText("14", { exact: true })
    .first()
    .hover();
  await page
    .locator(".monaco-hover:visible")
    .getByText(/conductor\/voltage-drop/)
    .waitFor();
  mkdirSync(dirname(fresh), { recursive: true });
  await page.screenshot({ path: fresh });
  expect(statSync(fresh).size).toBeLessThan(400_000);
  if (process.env.LOOMWRIGHT_PICTURE) copyFileSync(fresh, kept);
});

/** Nothing but the plan and what is said of it. */
const calm = {
  "workbench.activityBar.location": "hidden",
  "workbench.sideBar.visible": false,
  "workbench.colorTheme": "Default Light Modern",
  "workbench.layoutControl.enabled": false,
  "window.commandCenter": false,
  "window.menuBarVisibility": "hidden",
  "breadcrumbs.enabled": false,
  "editor.minimap.enabled": false,
  "editor.fontSize": 15,
  "editor.fontFamily": "DejaVu Sans Mono",
  "editor.lightbulb.enabled": "off",
};
