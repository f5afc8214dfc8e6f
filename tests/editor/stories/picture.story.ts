import { copyFileSync, cpSync, mkdirSync, statSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { installLibrary } from "../../../extension/install-library.ts";
import { libraryArchive } from "../../../extension/library-tarball.ts";
import { sampled } from "../../setup/sampled.ts";
import { boardsPlan } from "../harness/boards-plan.ts";
import { diagramIn, elementIn } from "../harness/diagram-in-workbench.ts";
import { line, runFromPalette, statusItem, valueOn } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

// The pictures in the README are taken from the real editor with the real extension: `node tests/editor/run.mjs --picture`.

const house = new URL("../../../", import.meta.url);

const editor = useEditor({ trustEverything: true });

/** Each opens a window, which takes longest of all: without pictures to renew, a run takes a share of them. */
const pictures: readonly (readonly [string, () => Promise<void>])[] = [
  [
    "a finding: a heater's wire, underlined, with what was found",
    async () => {
      const folder = editor.folder({ ".vscode/settings.json": JSON.stringify(calm) });
      cpSync(new URL("examples/camper-draft", house), folder, { recursive: true });
      // As in a new build, to let TypeScript find the library.
      await installLibrary(await libraryArchive(fileURLToPath(new URL("extension/dist", house))), folder);

      const page = await editor.open(folder, { file: "camper.ts", viewport: { width: 1200, height: 750 } });
      await statusItem(page, "Loomwright: 8 circuits").waitFor();
      await runFromPalette(page, "View: Toggle Primary Side Bar Visibility");
      await page.locator(".part.sidebar").waitFor({ state: "hidden" });
      await line(page, "A spare").waitFor();
      await page.locator(".codelens-decoration", { hasText: "8 circuits" }).waitFor();
      const hover = page.locator(".monaco-hover:visible");
      await valueOn(page, "cabin heater", "14").hover();
      await hover.locator("a.code-link", { hasText: "conductor/voltage-drop" }).waitFor();
      await hover
        .getByText(/worked out/i)
        .first()
        .waitFor();
      await take(page, "finding.png");
    },
  ],
  [
    "the diagram: a hut's network beside its plan, in a scenario",
    async () => {
      const folder = editor.folder({ ".vscode/settings.json": JSON.stringify(calm) });
      cpSync(new URL("examples/rangers-hut", house), folder, { recursive: true });
      await installLibrary(await libraryArchive(fileURLToPath(new URL("extension/dist", house))), folder);

      const page = await editor.open(folder, { file: "hut.ts", viewport: { width: 1400, height: 800 } });
      await statusItem(page, "Loomwright: 11 circuits").waitFor();
      await runFromPalette(page, "View: Toggle Primary Side Bar Visibility");
      await page.locator(".part.sidebar").waitFor({ state: "hidden" });
      await runFromPalette(page, "Loomwright: Show the Wiring Diagram");
      const diagram = diagramIn(page);
      await elementIn(diagram, "main disconnect").waitFor();
      await diagram.locator("#scenario").selectOption("everything on, bank half charged");
      // Only a picture with the figures of a scenario says this; the one before is about to be replaced.
      await diagram
        .locator("#stage text", { hasText: /gives \d.* A$/ })
        .first()
        .waitFor();
      // The panel opens at the bank, at a size that can be read.
      await diagram.locator("#search").fill("inverter");
      await elementIn(diagram, "inverter").locator("> .frame").click();
      await diagram.locator("#search").fill("");
      await diagram.locator("#details").getByRole("heading", { name: "inverter" }).waitFor();
      await take(page, "diagram.png");
    },
  ],
  [
    "the view of energy: a bus's year, with a smaller bank held by a lever",
    async () => {
      const folder = editor.folder({ ".vscode/settings.json": JSON.stringify(calm) });
      cpSync(new URL("examples/library-bus", house), folder, { recursive: true });
      await installLibrary(await libraryArchive(fileURLToPath(new URL("extension/dist", house))), folder);

      const page = await editor.open(folder, { file: "power.ts", viewport: { width: 1500, height: 1000 } });
      await statusItem(page, "Loomwright:").waitFor();
      await runFromPalette(page, "View: Toggle Primary Side Bar Visibility");
      await page.locator(".part.sidebar").waitFor({ state: "hidden" });
      await runFromPalette(page, "Loomwright: Show Whether the Bank Keeps Up");
      const view = diagramIn(page);
      await view.locator("#chart svg").waitFor();
      const lever = view.getByRole("slider", { name: /house bank.*capacity/ });
      const box = (await lever.boundingBox())!;
      const [x, y] = [(part: number) => box.x + part * box.width, box.y + box.height / 2];
      await page.mouse.move(x(0.2), y);
      await page.mouse.down();
      await page.mouse.move(x(0.08), y, { steps: 4 });
      await view.getByText("the text is unchanged").waitFor();
      await view.locator("#months").getByText("runs short").first().waitFor();
      await take(page, "energy.png", "media/readme");
      await page.mouse.up();
    },
  ],
  [
    "the boards: a bus bar held by the pointer, and the length that follows",
    async () => {
      const folder = editor.folder({ ".vscode/settings.json": JSON.stringify(calm), "cabin.ts": boardsPlan });
      await installLibrary(await libraryArchive(fileURLToPath(new URL("extension/dist", house))), folder);

      const page = await editor.open(folder, { file: "cabin.ts", viewport: { width: 1700, height: 900 } });
      await statusItem(page, "Loomwright:").waitFor();
      await runFromPalette(page, "View: Toggle Primary Side Bar Visibility");
      await page.locator(".part.sidebar").waitFor({ state: "hidden" });
      await runFromPalette(page, "Loomwright: Show the Boards to Scale");
      const view = diagramIn(page);
      await view.getByRole("checkbox", { name: "Conductors" }).check();
      const box = (await view.getByRole("button", { name: /^plus, / }).boundingBox())!;
      const mm = box.width / 120;
      await page.mouse.move(box.x + 5, box.y + 5);
      await page.mouse.down();
      await page.mouse.move(box.x + 5 - 250 * mm, box.y + 5 - 60 * mm, { steps: 6 });
      await view.locator("#effect", { hasText: "→" }).waitFor();
      await take(page, "boards.png", "media/readme");
      await page.mouse.up();
    },
  ],
];

test.each(process.env.LOOMWRIGHT_PICTURE ? pictures : sampled("pictures of the README", pictures))(
  "the README's picture of %s",
  (_, picture) => picture(),
);

/** Into a temporary folder; also beside the README's other pictures, if those are to be renewed. */
async function take(page: Page, name: string, folder = "media"): Promise<void> {
  // TypeScript shows a spinner while it is working, and starts a second time when it has read the project.
  if (process.env.LOOMWRIGHT_PICTURE)
    for (let quiet = 0; quiet < 5; quiet++) {
      if ((await statusItem(page, "Analyzing").count()) > 0) quiet = 0;
      await page.waitForTimeout(1_000);
    }
  const fresh = fileURLToPath(new URL(`tests/editor/dist/${name}`, house));
  mkdirSync(dirname(fresh), { recursive: true });
  await page.screenshot({ path: fresh });
  expect(statSync(fresh).size).toBeLessThan(400_000);
  if (process.env.LOOMWRIGHT_PICTURE)
    copyFileSync(fresh, fileURLToPath(new URL(`extension/${folder}/${name}`, house)));
}

/** Shows only the plan and its findings. */
const calm = {
  "workbench.activityBar.location": "hidden",
  "workbench.colorTheme": "Default Light Modern",
  "workbench.layoutControl.enabled": false,
  "workbench.reduceMotion": "on",
  "window.commandCenter": false,
  "window.menuBarVisibility": "hidden",
  "breadcrumbs.enabled": false,
  "editor.minimap.enabled": false,
  "editor.fontSize": 14,
  "editor.fontFamily": "DejaVu Sans Mono",
  "editor.hover.above": false,
  "editor.lightbulb.enabled": "off",
  "editor.occurrencesHighlight": "off",
  "editor.renderLineHighlight": "none",
  "editor.scrollBeyondLastLine": false,
};
