import { execFileSync } from "node:child_process";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { useEditor } from "../harness/use-editor.ts";

const editor = useEditor({ trustEverything: true });

test("a server that dies is started again; one that keeps dying is not, and the reason and a way out are shown", async () => {
  const folder = editor.folder({
    "heater.ts": `import { circuit } from "loomwright";

circuit({ name: "heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
`,
  });
  const page = await editor.open(folder, { file: "heater.ts" });
  await planIs(page, /1 warning/);
  const killed = new Set<number>();
  for (let deaths = 1; deaths <= 4; deaths++) {
    const server = await expect.poll(() => serverProcesses().find((id) => !killed.has(id)), {
      timeout: 20_000,
    });
    await server.toBeDefined();
    const id = serverProcesses().find((one) => !killed.has(one));
    if (id === undefined) throw new Error("the server that was just seen is gone");
    killed.add(id);
    process.kill(id, "SIGKILL");
  }
  const message = page.locator(".notification-toast", { hasText: "was not started again" });
  await message.getByText(/signal SIGKILL/).waitFor();
  await planIs(page, /not checking/);
  await message.getByRole("button", { name: "Restart the Server" }).click();
  await planIs(page, /1 warning/);
});

async function planIs(page: Page, state: RegExp): Promise<void> {
  await page.locator(".statusbar-item", { hasText: state }).waitFor();
}

/** Process ids of the language servers below this test's editor, told by their bundle's path in its extensions folder. */
function serverProcesses(): number[] {
  return execFileSync("ps", ["-eo", "pid=,args="])
    .toString()
    .split("\n")
    .filter((line) => line.includes(editor.server().data) && line.includes("language-server.cjs"))
    .map((line) => Number.parseInt(line, 10));
}
