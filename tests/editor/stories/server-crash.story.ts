import { test, vi } from "vitest";
import { statusItem } from "../harness/on-screen.ts";
import { editorToDisturb, serverProcesses } from "../harness/server-processes.ts";
import { useEditor } from "../harness/use-editor.ts";

const editor = useEditor(editorToDisturb);

test("a server that dies is started again; one that keeps dying is not, and the reason and a way out are shown", async () => {
  const plan = `import { circuit } from "loomwright";

circuit({ name: "heater", load: 15, oneWayFt: 20, gauge: 14, protect: 20, insulationC: 105 });
`;
  const { page } = await editor.show({ "heater.ts": plan }, "heater.ts");
  await statusItem(page, "1 warning").waitFor();
  const killed = new Set<number>();
  for (let deaths = 1; deaths <= 4; deaths++) {
    const id = await vi.waitUntil(() => serverProcesses(editor.server()).find((one) => !killed.has(one)), {
      timeout: 20_000,
    });
    killed.add(id);
    process.kill(id, "SIGKILL");
  }
  const message = page.locator(".notification-toast", { hasText: "was not started again" });
  await message.getByText(/signal SIGKILL/).waitFor();
  await statusItem(page, "not checking").waitFor();
  await message.getByRole("button", { name: "Restart the Server" }).click();
  await statusItem(page, "1 warning").waitFor();
});
