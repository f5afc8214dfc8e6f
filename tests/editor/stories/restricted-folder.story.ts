import { test } from "vitest";
import { diagramIn, elementIn } from "../harness/diagram-in-workbench.ts";
import { runFromPalette, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

const editor = useEditor({ trustEverything: false });

test("a plan in a folder that nobody trusts is checked and drawn", async () => {
  const folder = editor.folder({
    "stranger.ts": `import { circuit } from "loomwright";

circuit({ name: "heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
`,
  });
  const page = await editor.open(folder, { file: "stranger.ts" });
  await page.getByRole("button", { name: /^No, I don't trust/ }).click();
  await statusItem(page, "Restricted Mode").waitFor();
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
