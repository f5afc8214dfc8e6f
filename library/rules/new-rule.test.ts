import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const house = fileURLToPath(new URL("../..", import.meta.url));
let copy: string;

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), "new-rule-"));
  for (const part of ["library", "package.json"])
    cpSync(join(house, part), join(copy, part), {
      recursive: true,
      filter: (path) => !/node_modules|dist$/.test(path),
    });
  symlinkSync(join(house, "node_modules"), join(copy, "node_modules"));
});
afterAll(() => rmSync(copy, { recursive: true, force: true }));

const run = (script: string, ...words: string[]) =>
  spawnSync(process.execPath, [join(copy, "library/rules", script), ...words], { encoding: "utf8" });
const text = (path: string) => readFileSync(join(copy, "library/rules", path), "utf8");

describe("new-rule.mjs", () => {
  it("refuses what is no id, no title, or there already, and changes nothing", () => {
    const before = text("registry.ts");
    for (const words of [
      [],
      ["voltage-drop", "A title"],
      ["Conductor/Colour", "A title"],
      ["conductor/colour", ""],
      ["conductor/colour", "one two three four five six seven eight nine"],
      ["conductor/ampacity", "A title"],
      ["--network"],
      ["--network", "bus/studs", "A title"],
    ]) {
      const { status, stderr } = run("new-rule.mjs", ...words);
      expect({ status, usage: stderr.includes("Usage:") }).toEqual({ status: 2, usage: true });
    }
    expect(text("registry.ts")).toBe(before);
  });

  it("makes three files and registers the rule, and its page gets its head", () => {
    expect(run("new-rule.mjs", "conductor/colour-code", "Conductor of the wrong colour").status).toBe(0);
    expect(text("conductor/colour-code.ts")).toContain('id: "conductor/colour-code"');
    expect(text("conductor/colour-code.test.ts")).toContain("testRule(colourCode");
    const registry = text("registry.ts");
    expect(registry).toContain('import { colourCode } from "./conductor/colour-code.ts";\n');
    expect(registry).toMatch(/ampacity,\n {2}colourCode,\n {2}faultWithstand,/);
    for (const list of ["../plan/rule-id.ts", "../model/acceptable-rules.ts"])
      expect(text(list)).toContain('"conductor/colour-code"');
    // The new rule is bundled with all others here, so this shows that its files fit together.
    expect(run("write-docs.mjs").status).toBe(0);
    expect(text("conductor/colour-code.md")).toContain(
      "# Conductor of the wrong colour\n\n`conductor/colour-code` · warning",
    );
    expect(text("README.md")).toContain("Conductor of the wrong colour");
    expect(run("write-docs.mjs", "--check").status).toBe(0);
  });

  it("makes the files of a rule about networks", () => {
    expect(run("new-rule.mjs", "--network", "bus/crowded", "Many conductors on one stud").status).toBe(0);
    expect(text("bus/crowded.ts")).toContain("inNetwork(plan, ({ network }) =>");
    expect(text("bus/crowded.test.ts")).toContain('plan: bus("studs: 3")');
    expect(text("bus/crowded.md")).toContain("studs: 2 });");
    expect(text("registry.ts")).toContain('import { busCrowded } from "./bus/crowded.ts";\n');
    expect(run("write-docs.mjs", "--check").status).toBe(0);
  });
});
