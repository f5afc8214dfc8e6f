import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const command = fileURLToPath(new URL("../../server/dist/command.cjs", import.meta.url));

test("a reader who closes the pipe early sees no crash, and the exit code still tells what was found", async () => {
  const folder = mkdtempSync(join(tmpdir(), "loomwright-pipe-"));
  try {
    // Far more than a pipe holds: writing continues after it was closed.
    const circuits =
      "for (let n = 0; n < 1_000; n++) circuit({ name: `lamp ${n}`, load: 48, oneWayFt: 9, gauge: 12 });";
    writeFileSync(join(folder, "package.json"), "{}");
    writeFileSync(join(folder, "plan.ts"), `import { circuit } from "loomwright";\n${circuits}\n`);
    const child = spawn(process.execPath, [command, "check", "--format", "json"], { cwd: folder });
    let said = "";
    child.stderr.on("data", (text) => {
      said += text;
    });
    child.stdout.once("data", () => child.stdout.destroy());
    const [code] = await once(child, "close");
    expect(said).toBe("");
    expect(code).toBe(1);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
