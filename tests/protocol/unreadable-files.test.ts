import { spawnSync } from "node:child_process";
import { chmodSync, cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { jsonReportSchema } from "../../server/command/report-schema.ts";

// Files that this user may not read. The administrator may read everything; the command then runs as another user.

/** A copy of the build: that other user may not be able to read the folder of the project. */
const installed = mkdtempSync(join(tmpdir(), "loomwright-installed-"));
const command = join(installed, "dist/command.cjs");
const folder = mkdtempSync(join(tmpdir(), "loomwright-unreadable-"));
const plan =
  'import { circuit } from "loomwright";\ncircuit({ name: "winch", load: 48, oneWayFt: 10, gauge: 12, protect: 45 });\n';
const nobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};

function write(name: string, text: string, mode = 0o644): void {
  writeFileSync(join(folder, name), text, { mode });
}

function loomwright(...words: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...words], {
    ...{ cwd: folder, env: { ...process.env, LOOMWRIGHT_CACHE: join(folder, "none") }, encoding: "utf8" },
    ...nobody,
  });
  return { code: status, out: stdout, err: stderr };
}

beforeAll(() => {
  cpSync(fileURLToPath(new URL("../../server/dist", import.meta.url)), join(installed, "dist"), {
    recursive: true,
  });
  chmodSync(installed, 0o755);
  chmodSync(folder, 0o755);
  write("package.json", "{}");
  write("plan.ts", `${plan}import "./secret.ts";\n`);
  write("lone.ts", plan.replace("45", "60").replace("12", "4"));
  write("secret.ts", plan, 0o000);
  mkdirSync(join(folder, "locked"));
  write("locked/plan.ts", plan);
  chmodSync(join(folder, "locked"), 0o000);
  mkdirSync(join(folder, "listed"));
  write("listed/plan.ts", plan);
  chmodSync(join(folder, "listed"), 0o744);
});
afterAll(() => {
  for (const made of [folder, installed]) rmSync(made, { recursive: true, force: true });
});

if (process.platform === "win32")
  console.warn("Not tried here, because permissions are others: files that cannot be read.");
else {
  test("each is listed with the reason, and the answer is 2", () => {
    const { code, out } = loomwright("check", "--format", "json");
    expect(code).toBe(2);
    const { plans, passedBy, summary } = jsonReportSchema.parse(JSON.parse(out));
    expect(plans.map(({ file }) => file)).toEqual(["lone.ts", "plan.ts"]);
    expect(passedBy.map(({ file, reason }) => `${file}: ${reason}`)).toEqual([
      "listed/plan.ts: unreadable",
      "locked: unreadable",
      "secret.ts: unreadable",
    ]);
    expect(summary.notJudged).toBe(4);
    const [, importing] = plans;
    expect(importing?.notJudged?.reason).toBe("cannot-run");
    expect(importing?.findings[0]).toMatchObject({
      ...{ rule: "plan/cannot-run", line: 3, column: 8 },
      message: expect.stringContaining('"./secret.ts" cannot be read: permission denied'),
    });
  });

  test.each(["text", "sarif", "annotations"])("in %s too", (format) => {
    const { code, out } = loomwright("check", "--format", format);
    expect(code).toBe(2);
    for (const name of ["listed/plan.ts", "locked", "secret.ts"])
      expect(out).toContain(`${name} cannot be read: permission denied`);
  });

  test.each(["secret.ts", "locked", "locked/plan.ts", "listed/plan.ts"])("%s by its name", (name) => {
    const { code, out, err } = loomwright("check", name);
    expect(code).toBe(2);
    expect(out + err).toContain("permission denied");
    expect(out + err).not.toMatch(/is not a plan|there is no file/);
  });
}
