import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { CommandTester, samplePlans } from "./command.tester.ts";

let project: CommandTester;
beforeEach(() => {
  project = new CommandTester();
});
afterEach(() => project.dispose());

describe("check --format annotations", () => {
  test("a command for each finding, with its place, and a line of counts for the log", async () => {
    project.write("boat/plan.ts", samplePlans.droopy);
    const { code, out } = await project.run(["check", "--format", "annotations"]);
    const [finding, counts, end] = out.split("\n");
    expect(readCommand(finding!)).toEqual({
      kind: "warning",
      properties: {
        file: "boat/plan.ts",
        line: "3",
        endLine: "3",
        col: "55",
        endColumn: "57",
        title: "lamp: conductor/voltage-drop",
      },
      message: expect.stringMatching(/^Loses 1\.\d+ V, .* the limit is 10 % .*\nFix: Use \d+ AWG$/),
    });
    expect([counts, end]).toEqual(["1 plan: 1 warning", ""]);
    expect(code).toBe(1);
  });

  test("worst first; hints only counted; what is accepted is a notice with its reason", async () => {
    project.write("a.ts", samplePlans.unstated);
    project.write("b.ts", samplePlans.accepted);
    project.write("c.ts", samplePlans.droopy);
    project.write("d.ts", samplePlans.thin);
    const { out } = await project.run(["check", "--format", "annotations"]);
    const commands = out.split("\n").slice(0, -2).map(readCommand);
    expect(commands.map(({ kind, properties }) => `${kind} ${properties.file}`)).toEqual([
      "error d.ts",
      "error d.ts",
      "warning c.ts",
      "warning d.ts",
      "notice d.ts",
      "notice b.ts",
    ]);
    expect(commands.at(-1)!.message).toMatch(/^Accepted: only a marker\nLoses /);
    expect(out).toMatch(/^4 plans: 2 errors, 2 warnings, 1 for information, 1 hint, 1 accepted$/m);
  });

  test("a value over several lines has no columns", async () => {
    project.write("plan.ts", samplePlans.thin.replace("protect: 45", "protect: {\n  ratingA: 45,\n}"));
    const { out } = await project.run(["check", "--format", "annotations"]);
    const commands = out.split("\n").slice(0, -2).map(readCommand);
    expect(commands.length).toBeGreaterThan(0);
    for (const { properties } of commands) {
      expect(properties.col !== undefined).toBe(properties.line === properties.endLine);
    }
  });

  test("a plan that cannot be read is an error at the place, and exits 2", async () => {
    project.write("plan.ts", samplePlans.half);
    const { code, out } = await project.run(["check", "--format", "annotations"]);
    expect(readCommand(out.split("\n")[0]!)).toMatchObject({ kind: "error", properties: { line: "3" } });
    expect(code).toBe(2);
  });
});

const hostileNames = [
  "a\n::error::b",
  "a\r\n::add-mask::b",
  "::stop-commands::x",
  "a%0A::error::b",
  "a%0a%3A%2C",
  "a,file=other.ts,line=1",
  "a::b",
  "##[error]a",
  "a ##[group]b",
  "##vso[task.complete]",
  "\u2028::error::a",
  "\u001b[2J",
  "\u202egnihton",
];

describe("names that would give orders", () => {
  test.each(hostileNames)("%j stays a part of its finding", async (name) => {
    project.write("plan.ts", samplePlans.thin.replace('"winch"', JSON.stringify(name)));
    const { out } = await project.run(["check", "--format", "annotations"]);
    const rows = out.split(/\r\n|[\n\r\u2028\u2029]/);
    expect(rows.length).toBeGreaterThan(2);
    expect(rows.slice(-2)).toEqual([expect.stringMatching(/^1 plan: /), ""]);
    for (const row of rows.slice(0, -2)) {
      const { kind, properties } = readCommand(row);
      expect(["error", "warning", "notice"]).toContain(kind);
      expect(properties.file).toBe("plan.ts");
      expect(Object.keys(properties).sort()).toEqual([
        "col",
        "endColumn",
        "endLine",
        "file",
        "line",
        "title",
      ]);
      expect(properties.title).toMatch(/: \w+\/[\w-]+$/);
    }
    expect(out).not.toMatch(/##(?:vso)?\[/);
  });

  test.each(["a,b.ts", "a:b.ts", "100%.ts", "::a.ts"])("a file called %s is named as it is", async (file) => {
    project.write(file, samplePlans.thin);
    const { out } = await project.run(["check", "--format", "annotations"]);
    expect(readCommand(out.split("\n")[0]!).properties.file).toBe(file);
  });

  test.each(hostileNames)("%j gives none in the text of a log either", async (name) => {
    project.write("plan.ts", samplePlans.thin.replace('"winch"', JSON.stringify(name)));
    const { out } = await project.run(["check"]);
    for (const row of out.split(/\r\n|[\n\r\u2028\u2029]/)) {
      expect(row.trimStart()).not.toMatch(/^::/);
      expect(row).not.toMatch(/##(?:vso)?\[/);
    }
  });
});

/**
 * Parses a line as the service's own runner does: `::` at its beginning, the command, properties up to the next `::`, each split
 * at its first equals sign; then the escapes of each are resolved.
 */
function readCommand(row: string) {
  const [, kind = "", given = "", message = ""] = /^::([a-z]+)(?: (.*?))?::(.*)$/s.exec(row) ?? [];
  const unescaped = (text: string) =>
    text
      .replaceAll("%0D", "\r")
      .replaceAll("%0A", "\n")
      .replaceAll("%3A", ":")
      .replaceAll("%2C", ",")
      .replaceAll("%25", "%");
  const properties = Object.fromEntries(
    given
      .split(",")
      .map((one) => [one.slice(0, one.indexOf("=")), unescaped(one.slice(one.indexOf("=") + 1))]),
  ) as Record<string, string>;
  return { kind, properties, message: unescaped(message) };
}
