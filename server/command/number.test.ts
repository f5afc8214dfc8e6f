import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { CommandTester } from "./command.tester.ts";

let tester: CommandTester;
let _folder: string;
beforeEach(() => {
  tester = new CommandTester();
  _folder = tester.folder;
});
afterEach(() => tester.dispose());

const write = (name: string, text: string) => tester.write(name, text);
const read = (name: string) => tester.read(name);
const loomwright = (...words: string[]) => tester.run(words);

const kept = "boat.wire-numbers.txt";
const head =
  'import { battery, build, cable, circuit, fusePanel } from "loomwright";\nbuild({ insulationC: 105 });\n';
const lamp = 'circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n';
const horn = 'circuit({ name: "horn", load: 5, oneWayFt: 4, gauge: 14, protect: 10 });\n';
const network = `const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
const panel = fusePanel({ name: "panel", positions: 4 });
cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthFt: 2, gauge: 6, protect: 40 });
cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: 2, gauge: 6 });
`;

describe("what is written", () => {
  test("the first time: every conductor, in the order of the plan", async () => {
    write("boat.ts", head + lamp + horn);
    const { code, out, err } = await loomwright("number");
    expect(err).toBe("");
    expect(code).toBe(0);
    expect(out).toContain("boat.wire-numbers.txt: written; 4 conductors numbered, 4 added");
    expect(lines()).toEqual([
      '"horn" positive: the supply to its load = 3',
      '"horn" return: its load to the supply = 4',
      '"lamp" positive: the supply to its load = 1',
      '"lamp" return: its load to the supply = 2',
    ]);
  });
  test("again: nothing", async () => {
    write("boat.ts", head + lamp);
    await loomwright("number");
    const text = read(kept);
    const { code, out } = await loomwright("number");
    expect(out).toContain("unchanged; 2 conductors numbered");
    expect(code).toBe(0);
    expect(read(kept)).toBe(text);
  });
  test("with other line ends, as git may put them there: nothing", async () => {
    write("boat.ts", head + lamp);
    await loomwright("number");
    const text = read(kept).replaceAll("\n", "\r\n");
    write(kept, text);
    expect((await loomwright("number", "--dry-run")).code).toBe(0);
    expect(read(kept)).toBe(text);
  });
  test("what was added, renamed, reconnected, and retired", async () => {
    write("boat.ts", head + network + lamp);
    await loomwright("number");
    write(
      "boat.ts",
      `${head}${network.replace('"feeder"', '"panel feed"').replace("to: bank.negative", "to: spare.negative")}${horn}`.replace(
        "const panel",
        'const spare = battery({ name: "spare", chemistry: "AGM", capacityAh: 100 });\nconst panel',
      ),
    );
    const { out } = await loomwright("number");
    expect(out).toContain("4 conductors numbered, 2 added, 1 renamed, 1 reconnected, 2 retired");
    expect(out).toMatch(/added +5 {2}horn, positive/);
    expect(out).toMatch(/renamed +1 {2}panel feed .*, was feeder/);
    expect(out).toMatch(/joins +2 {2}back .*spare · negative/);
    expect(out).toMatch(/retired +3 {2}lamp, positive/);
    // A lamp that became a horn, or a horn instead of a lamp: only the builder knows.
    expect(out).toContain("under another name");
    expect(lines()).toContain('"lamp" positive: the supply to its load = 3 retired');
  });
  test("a circuit under another name keeps its number once its builder says so in the file", async () => {
    write("boat.ts", head + lamp);
    await loomwright("number");
    write("boat.ts", head + lamp.replace('"lamp"', '"reading lamp"'));
    await loomwright("number");
    // As the message asks.
    const told = read(kept)
      .split("\n")
      .filter((line) => !line.endsWith(" retired"))
      .map((line) => line.replace(/= 3$/, "= 1").replace(/= 4$/, "= 2"));
    write(kept, told.join("\n"));
    expect((await loomwright("number")).out).toContain("unchanged");
    expect(lines()).toEqual([
      '"reading lamp" positive: the supply to its load = 1',
      '"reading lamp" return: its load to the supply = 2',
    ]);
  });
  test("a plan without conductors gets no file", async () => {
    write("boat.ts", head);
    const { code, out } = await loomwright("number", "--dry-run");
    expect(code).toBe(0);
    expect(out).toContain("unchanged; 0 conductors");
  });
  test("a circuit that has no name of its own is told to get one", async () => {
    write("boat.ts", `${head}circuit({ load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n${lamp}`);
    const { out } = await loomwright("number");
    expect(out).toContain("2 conductors without a name");
    expect(lines()).toHaveLength(2);
    // A circuit held by a variable takes its name from that.
    write(
      "boat.ts",
      `${head}const fan = circuit({ load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n${lamp}`,
    );
    expect((await loomwright("number")).out).toContain("fan, positive");
  });
});

describe("--dry-run", () => {
  test("exits 1 and writes nothing where something would change", async () => {
    write("boat.ts", head + lamp);
    const { code, out } = await loomwright("number", "--dry-run");
    expect(code).toBe(1);
    expect(out).toContain("would change");
    expect(() => read(kept)).toThrow();
  });
  test("exits 0 where nothing would", async () => {
    write("boat.ts", head + lamp);
    await loomwright("number");
    expect((await loomwright("number", "--dry-run")).code).toBe(0);
  });
});

describe("nothing is written, and nothing lost", () => {
  async function refused(text: string | undefined, plan: string) {
    write("boat.ts", plan);
    if (text !== undefined) write(kept, text);
    const result = await loomwright("number");
    expect(result.code).toBe(2);
    if (text !== undefined) expect(read(kept)).toBe(text);
    return result;
  }
  test("over a conflict that git left behind: its lines are named", async () => {
    const line = '"lamp" positive: the supply to its load = 1';
    const { err } = await refused(`# head\n<<<<<<< ours\n${line}\n=======\n>>>>>>> theirs\n`, head + lamp);
    expect(err).toContain(`${kept}:2: This is a conflict that git left behind`);
    expect(err).toContain(`${kept}:4:`);
    expect(err).toContain(`${kept}: it was not written`);
  });
  test("over lines of something else", async () => {
    expect((await refused("shopping list\n", head + lamp)).err).toContain(
      `${kept}:1: This is not a wire number`,
    );
  });
  test("for a half-typed plan", async () => {
    expect((await refused("", `${head}circuit({ name: "lamp", load: `)).err).toContain(
      "not complete TypeScript",
    );
  });
  test("for a plan of which a circuit cannot be read: its number would be retired", async () => {
    write("boat.ts", head + lamp + horn);
    await loomwright("number");
    const { err } = await refused(read(kept), head + lamp.replace("load: 2", "load: -2") + horn);
    expect(err).toContain('"lamp" cannot be read');
  });
  test("for a network that cannot be read", async () => {
    const { err } = await refused("", head + network.replace("capacityAh: 100", "capacityAh: -1"));
    expect(err).toContain("the network cannot be read");
  });
});

test("one number for two conductors, as after a merge, is resolved and said", async () => {
  write("boat.ts", head + lamp + horn);
  write(kept, '"horn" positive: the supply to its load = 1\n"lamp" positive: the supply to its load = 1\n');
  const { code, out } = await loomwright("number");
  expect(code).toBe(0);
  expect(out).toMatch(/given twice +2 {2}lamp, positive .*1 stays with the conductor above it in the file/);
  expect(lines()).toContain('"horn" positive: the supply to its load = 1');
});

test("names of a stranger's plan cannot repaint the screen", async () => {
  write(
    "boat.ts",
    `${head}circuit({ name: "lamp\\u001b[31m\\u202eevil", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n`,
  );
  const { out } = await loomwright("number");
  for (const mark of ["\u001b", "\u202e"]) expect(out).not.toContain(mark);
});

function lines(): string[] {
  return read(kept)
    .split("\n")
    .filter((line) => line !== "" && !line.startsWith("#"));
}

describe("a plan that was renamed", () => {
  const renamed = () => {
    write("boat.ts", head + lamp + horn);
    return loomwright("number").then(() => {
      const text = read(kept);
      tester.remove("boat.ts");
      // The order changed meanwhile: numbers in the order of the plan would differ.
      write("van.ts", head + horn + lamp);
      return text;
    });
  };

  test("has the numbers of the file that is left, in every list and without a word", async () => {
    const text = await renamed();
    const { out } = await loomwright("schedule", "van.ts", "--table", "wire-schedule", "--format", "csv");
    expect(out).toMatch(/^3,horn/m);
    expect(out).toMatch(/^1,lamp/m);
    const written = await loomwright("number", "van.ts");
    expect(written.out).toContain("van.wire-numbers.txt: written; 4 conductors numbered");
    expect(written.out).toContain("those of boat.wire-numbers.txt: delete that file");
    expect(read("van.wire-numbers.txt")).toBe(text);
  });

  test("and mostly rewritten: asks for the old one, and takes its numbers over", async () => {
    await renamed();
    write("van.ts", `${head}${lamp}${["a", "b", "c"].map((name) => horn.replace("horn", name)).join("")}`);
    write(
      kept,
      `${read(kept)}"x" positive: the supply to its load = 7\n"y" positive: the supply to its load = 8\n`,
    );
    expect((await loomwright("number", "van.ts", "--dry-run")).out).not.toContain("boat");
    const { code, out } = await loomwright("number", "van.ts", "--from", "boat.ts");
    expect(code).toBe(0);
    expect(out).toContain("boat.wire-numbers.txt");
    expect(read("van.wire-numbers.txt")).toContain('"lamp" positive: the supply to its load = 1');
    expect((await loomwright("number", "van.ts", "--from", "boat.ts")).err).toContain("is there already");
  });

  test("the file of a plan that is still there is nobody else's", async () => {
    write("boat.ts", head + lamp);
    await loomwright("number");
    write("copy.ts", head + horn + lamp);
    const { out } = await loomwright("number", "copy.ts", "--dry-run");
    expect(out).not.toContain("boat");
  });

  test("an old file that is not there: 2", async () => {
    write("van.ts", head + lamp);
    const { code, err } = await loomwright("number", "van.ts", "--from", "boat.ts");
    expect([code, err]).toEqual([2, expect.stringContaining("there is no boat.wire-numbers.txt")]);
  });
});

test("two circuits of one name keep their numbers when their lines change places", async () => {
  const far = lamp.replace("oneWayFt: 10", "oneWayFt: 22");
  write("boat.ts", head + lamp + far);
  await loomwright("number");
  const text = read(kept);
  expect(text).toContain('"lamp" positive: the supply to its load (14 AWG, 3.05 m, 5 A) = 1');
  write("boat.ts", head + far + lamp);
  expect((await loomwright("number", "--dry-run")).code).toBe(0);
  const { out } = await loomwright("schedule", "--table", "wire-schedule", "--format", "csv");
  expect(out).toMatch(/^3,lamp.*6\.7056/m);
  expect(out).toMatch(/^1,lamp.*3\.048/m);
  // One of them is gone: the other is known, whichever it is.
  write("boat.ts", head + far);
  await loomwright("number");
  expect(read(kept)).toContain('"lamp" positive: the supply to its load = 3');
});
