import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { arrangeJsonSchema } from "./arrange-json.ts";
import { CommandTester } from "./command.tester.ts";

const project = new CommandTester();

const board = `import { battery, build, busBar, cable, circuit, surface } from "loomwright";
build({ insulationC: 105, slackPercent: 0 });
const wall = surface({ name: "Locker wall", size: { widthMm: 1_500, heightMm: 600 } });
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, size: { widthMm: 300, heightMm: 200 }, at: { on: wall, leftMm: 1_150, topMm: 350 } });
const plus = busBar({ name: "plus", side: "positive", size: { widthMm: 200, heightMm: 50 } });
const minus = busBar({ name: "minus", side: "negative", size: { widthMm: 200, heightMm: 50 } });
cable({ name: "feed", from: house.positive, to: plus.stud, lengthM: 4, gauge: "1/0", protect: 250 });
cable({ name: "back", from: house.negative, to: minus.stud, lengthM: 4, gauge: "1/0" });
circuit({ name: "lamp", from: plus.stud, returnTo: minus.stud, oneWayM: 4, gauge: 12, protect: 15, load: 2 });
`;
const crowded = board.replaceAll("widthMm: 200, heightMm: 50", "widthMm: 1_000, heightMm: 500");

beforeAll(() => {
  project.write("board.ts", board);
  project.write("crowded.ts", crowded);
  project.write("large.ts", board.replaceAll("heightMm: 50 ", "heightMm: 1_700 "));
  project.write("two.ts", `${board}surface({ name: "Roof", size: { widthMm: 900, heightMm: 900 } });\n`);
  project.write("wrong.ts", board.replace("heightMm: 600", "heightMm: -600"));
  project.write("unsized.ts", board.replaceAll(", size: { widthMm: 200, heightMm: 50 }", ""));
  project.write("without-lengths.ts", board.replaceAll("lengthM: 4, ", ""));
  project.write(
    "walls.ts",
    `import { surface } from "loomwright";\nexport ${board.match(/const wall.*\n/)![0]}`,
  );
  project.write(
    "spread.ts",
    'import { wall } from "./walls.ts";\nexport const onWall = { on: wall } as const;\n',
  );
  project.write(
    "imports.ts",
    board
      .replace(/const wall.*\n/, 'import "./walls.ts";\nimport { onWall } from "./spread.ts";\n')
      .replace("on: wall", "...onWall"),
  );
  project.write("bare.ts", board.replace(/const wall.*\n/, "").replace(/, at: \{[^}]*\}/, ""));
});
afterAll(() => project.dispose());

const loomwright = (...words: string[]) => project.run(["arrange", ...words]);

async function json(...words: string[]) {
  const { code, out } = await loomwright(...words, "--format", "json");
  return { code, ...arrangeJsonSchema.parse(JSON.parse(out)).plans[0]! };
}

describe("loomwright arrange", () => {
  test("suggests a place for each part without one, shows what to write, and changes no file", async () => {
    const { code, out, err } = await loomwright("board.ts");
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain("Suggested places on Locker wall");
    expect(out).toMatch(/plus +Locker wall +[\d,]+ +\d+ +0°/);
    expect(out).toMatch(/^ {2}plus: at: \{ on: wall, leftMm: [\d_]+, topMm: \d+ \}$/m);
    expect(out).toContain("Left out: the plan states no size (size) for lamp.");
    expect(out).toMatch(/feed +4 +0?\.?\d/);
    expect(out).toMatch(/lamp +8 +no way/);
    expect(out).toMatch(/2 runs with both lengths: 8 m of conductor today, [\d.]+ m suggested; copper/);
    expect(project.read("board.ts")).toBe(board);
  });

  test("a plan with the suggested places has the lengths that were shown, and nothing left to place", async () => {
    const { parts, runs, total, newFindings } = await json("board.ts");
    expect(parts.map(({ name }) => name)).toEqual(["plus", "minus"]);
    let placed = board.replaceAll(/lengthM: 4, /g, "");
    for (const { name, at } of parts) placed = placed.replace(`name: "${name}",`, `name: "${name}", ${at},`);
    project.write("placed.ts", placed);
    const checked = await project.run(["check", "placed.ts", "--format", "json"]);
    const { ways } = JSON.parse(checked.out).plans[0].placement;
    for (const name of ["feed", "back"]) {
      const run = runs.find((one) => one.name === name)!;
      expect(run.todayM).toBe(4);
      expect(ways.find((way: { name: string }) => way.name === name).lengthMm / 1_000).toBeCloseTo(
        run.suggestedM!,
        9,
      );
    }
    const [feed, back] = ["feed", "back"].map((name) => runs.find((one) => one.name === name)!.suggestedM!);
    expect(total).toMatchObject({ runs: 2, todayM: 8 });
    expect(total!.suggestedM).toBeCloseTo(feed! + back!, 9);
    expect(total!.suggestedCopperKg / total!.todayCopperKg).toBeCloseTo(total!.suggestedM / 8, 9);
    // A length that the plan states and the way between the places contradict each other: that is told before anything is written.
    expect(newFindings.map(({ rule }) => rule)).toContain("placement/stated-length");
    const again = await json("placed.ts");
    expect([again.code, again.parts]).toEqual([0, []]);
    expect(again.why).toBe("no part without a place can be placed");
  });

  test("sums up the lengths of runs that have none today", async () => {
    const { out } = await loomwright("without-lengths.ts");
    expect(out).toContain("No run has a known length both today and with these places.");
    expect(out).toMatch(/2 runs without a length today: [\d.]+ m of conductor with these places\./);
  });

  test("names a surface that the file can import", async () => {
    const { out } = await loomwright("imports.ts");
    expect(out).toMatch(/^ {2}plus: at: \{ on: wall, leftMm: /m);
  });

  test("is in eighths of an inch on a surface in inches", async () => {
    const inches = board.replace("widthMm: 1_500, heightMm: 600", "widthIn: 60, heightIn: 24");
    project.write("inches.ts", inches);
    const { out } = await loomwright("inches.ts");
    expect(out).toMatch(/Part +Surface +Left, in +Top, in/);
    const { parts } = await json("inches.ts");
    let placed = inches;
    for (const { name, at, leftMm, topMm } of parts) {
      const [left, top] = /leftIn: ([\d._]+), topIn: ([\d._]+)/.exec(at)!.slice(1).map(Number);
      expect([8 * left!, 8 * top!].every(Number.isInteger)).toBe(true);
      expect([leftMm, topMm]).toEqual([expect.closeTo(25.4 * left!, 6), expect.closeTo(25.4 * top!, 6)]);
      placed = placed.replace(`name: "${name}",`, `name: "${name}", ${at},`);
    }
    project.write("inches-placed.ts", placed);
    expect((await json("inches-placed.ts")).why).toBe("no part without a place can be placed");
  });

  test("says why it found none, and exits with 2", async () => {
    const { code, out } = await loomwright("crowded.ts");
    expect(code).toBe(2);
    expect(out).toContain(
      "No places on Locker wall: there is no room for 3 parts with 118 % of the area of the surface.",
    );
    expect((await json("crowded.ts")).parts).toEqual([]);
    const large = await loomwright("large.ts");
    expect(large.out).toMatch(/plus and .*minus are larger than the surface/);
  });

  test("shows no table of lengths if no conductor ends at the parts", async () => {
    project.write("loose.ts", board.replace(/^(cable|circuit).*\n/gm, ""));
    const { code, out } = await loomwright("loose.ts");
    expect(code).toBe(0);
    expect(out).toMatch(/No run of the plan ends at these parts\.$/m);
    expect(out).not.toContain("no entries");
  });

  test("names the parts without a size", async () => {
    const { code, leftOut } = await json("unsized.ts");
    expect(code).toBe(0);
    expect(leftOut.map(({ because }) => because)).toEqual(["no size", "no size", "no size"]);
  });

  test("asks for the surface if there are several, and takes the one that is named", async () => {
    const { code, err } = await loomwright("two.ts");
    expect(code).toBe(2);
    expect(err).toContain('name one with --surface, "Locker wall", "Roof"');
    expect((await json("two.ts", "--surface", "Roof")).surface).toBe("Roof");
    expect((await loomwright("two.ts", "--surface", "Rof")).err).toContain(
      'the plan has no surface called "Rof". It has "Locker wall", "Roof".',
    );
  });

  test("suggests nothing for a plan without a surface, or with a refused value", async () => {
    expect((await loomwright("bare.ts")).err).toContain("the plan has no surface: describe a board");
    const { code, out, err } = await loomwright("wrong.ts");
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain("while a value of the plan is refused; loomwright check names it");
  });
});
