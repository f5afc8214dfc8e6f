import { expect, test } from "vitest";
import { startEditor } from "./scripted-editor.ts";

const plan = (load: number) => `import { circuit } from "loomwright";
import { wire } from "./wire.ts";
circuit({ name: "lamp", load: ${load}, oneWayFt: 9, gauge: wire, protect: 20 });
`;

test("the plan that is open does not wait for others, however many others changed on the disk with it", {
  timeout: 120_000,
}, async () => {
  const others = Array.from({ length: 120 }, (_, n) => `plan-${n}.ts`);
  const files = Object.fromEntries([
    ["wire.ts", "export const wire = 14;\n"],
    ["open.ts", plan(2)],
    ...others.map((name) => [name, plan(3)] as const),
  ]);
  const editor = await startEditor({ files });
  editor.open("open.ts");
  await editor.until("open.ts", "idle");
  const { plans } = await editor.request<{ plans: readonly unknown[] }>("loomwright/checkWorkspace", {});
  expect(plans).toHaveLength(121);
  const before = editor.statuses.length;
  // Changes a file that all of them use, and all of them.
  editor.onDisk({
    ...Object.fromEntries(others.map((name) => [name, plan(4)])),
    "wire.ts": "export const wire = 12;\n",
  });
  const idle = () => editor.statuses.slice(before).filter(({ state }) => state === "idle");
  const place = () => idle().findIndex(({ uri }) => uri === editor.uri("open.ts"));
  await expect.poll(place, { timeout: 60_000 }).toBeGreaterThanOrEqual(0);
  // Another engine checks the others meanwhile; a few of them may be done.
  expect(place()).toBeLessThan(20);
  const checked = () =>
    new Set(
      editor.statuses.slice(before).flatMap(({ state, uri }) => (state === "idle" && uri ? [uri] : [])),
    );
  await expect.poll(() => checked().size, { timeout: 60_000 }).toBe(121);
  expect(await editor.quit()).toBe(0);
});
