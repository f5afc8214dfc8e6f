import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { CommandTester } from "./command.tester.ts";

let tester: CommandTester;
const testers: CommandTester[] = [];

beforeEach(() => {
  tester = new CommandTester();
  testers.push(tester);
});

afterAll(() => {
  for (const one of testers) one.dispose();
});

describe("loomwright new", () => {
  test("without a template: lists them", async () => {
    const { code, out } = await tester.run(["new"]);
    expect(code).toBe(0);
    expect(out.split("\n").map((line) => line.split(" ")[0])).toEqual(["van", "boat", "hut", "circuit", ""]);
  });

  test("makes a plan here that checks clean, with the compiler's settings", async () => {
    const made = await tester.run(["new", "van"]);
    expect(made).toMatchObject({ code: 0, err: "" });
    expect(JSON.parse(tester.read("tsconfig.json"))).toHaveProperty("compilerOptions");
    const checked = await tester.run(["check"]);
    expect(checked.code).toBe(0);
    expect(checked.out).toContain("plan.ts: 8 circuits, 11 parts, 6 cables · no findings");
  });

  test("makes the folder that is named", async () => {
    expect((await tester.run(["new", "boat", "my boats/first"])).code).toBe(0);
    expect(tester.read("my boats/first/plan.ts")).toContain("bilge pump");
  });

  test("overwrites nothing", async () => {
    tester.write("plan.ts", "// mine\n");
    const refused = await tester.run(["new", "hut"]);
    expect(refused).toMatchObject({ code: 2, out: "" });
    expect(refused.err).toContain("plan.ts is there already; no file was written");
    expect(tester.read("plan.ts")).toBe("// mine\n");
    expect(() => tester.read("tsconfig.json")).toThrow();

    tester.write("other/tsconfig.json", "{}");
    const kept = await tester.run(["new", "hut", "other"]);
    expect(kept.code).toBe(0);
    expect(kept.out).toContain("other/tsconfig.json: left as it is");
    expect(tester.read("other/tsconfig.json")).toBe("{}");
  });

  test("names the template that was meant", async () => {
    const { code, err } = await tester.run(["new", "bota"]);
    expect(code).toBe(2);
    expect(err).toContain("there is no template 'bota'. Did you mean boat?");
    expect((await tester.run(["new", "van", "a", "b"])).code).toBe(2);
  });

  test("a folder that cannot be made is named, and nothing is written", async () => {
    tester.write("file", "");
    const { code, err } = await tester.run(["new", "van", "file/below"]);
    expect(code).toBe(2);
    expect(err).toContain("file/below/plan.ts is below a file, not a folder; no file was written");
  });
});
