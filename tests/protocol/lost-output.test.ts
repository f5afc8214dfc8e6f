import { spawnSync } from "node:child_process";
import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";

// Output to a full disk: one sentence, and 2.

const command = fileURLToPath(new URL("../../server/dist/command.cjs", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "loomwright-lost-"));
const env = { ...process.env, LOOMWRIGHT_CACHE: join(folder, "kept") };
writeFileSync(
  join(folder, "plan.ts"),
  `import { circuit } from "loomwright";\n${Array.from({ length: 60 }, (_, lamp) => `circuit({ name: "lamp ${lamp}", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n`).join("")}`,
);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const hasFullDisk = existsSync("/dev/full");

if (!hasFullDisk) console.warn("Not tried here, because there is no /dev/full: output to a full disk.");

const commands = [
  ["check"],
  ["check", "--format", "json"],
  ["check", "--format", "sarif"],
  ["schedule"],
  ["--help"],
  ["explain", "conductor/ampacity"],
];
for (const words of hasFullDisk ? commands : []) {
  test(`${words.join(" ")} to a full disk`, () => {
    const full = openSync("/dev/full", "w");
    const { status, stderr } = spawnSync(process.execPath, [command, ...words], {
      ...{ cwd: folder, env, encoding: "utf8" },
      stdio: ["ignore", full, "pipe"],
    });
    closeSync(full);
    expect(stderr).toBe(
      "loomwright: the output could not be written: the disk is full; it is not complete.\n",
    );
    expect(status).toBe(2);
  });
}

if (hasFullDisk) {
  test("the standard error on a full disk too", () => {
    const full = openSync("/dev/full", "w");
    const { status, stdout } = spawnSync(process.execPath, [command, "check", "nothing.ts"], {
      ...{ cwd: folder, env, encoding: "utf8" },
      stdio: ["ignore", "pipe", full],
    });
    closeSync(full);
    expect([status, stdout]).toEqual([2, ""]);
  });
}

// A disk that is nearly full accepts the beginning without an error.
if (process.platform !== "win32") {
  test("a text of which only a part fits is not taken for whole", () => {
    const out = join(folder, "report.json");
    const words = `ulimit -f 8; exec "$0" "$1" check --format json > "$2"`;
    const { status, stderr } = spawnSync("sh", ["-c", words, process.execPath, command, out], {
      ...{ cwd: folder, env, encoding: "utf8" },
    });
    expect(stderr).toMatch(/^loomwright: the output is too large for this disk; it is not complete\.\n$/);
    expect(status).toBe(2);
    const whole = spawnSync(process.execPath, [command, "check", "--format", "json"], { cwd: folder, env });
    expect(statSync(out).size).toBeLessThan(whole.stdout.length);
    expect(whole.stdout.toString().startsWith(readFileSync(out, "utf8"))).toBe(true);
  });
}
