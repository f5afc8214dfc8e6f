import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { sampledRuns } from "../../../tests/setup/sampled.ts";
import { endAt, sampleCircuitWires, sampleWire } from "./sample-wires.tester.ts";
import { type NumberedWires, numberWires } from "./wire-numbers.ts";
import { readWireNumbers, wireNumbersFile, writeWireNumbers } from "./wire-numbers-file.ts";
import type { Wire } from "./wires.ts";

const feeder = sampleWire({ name: "feeder", from: endAt("bus stud"), to: endAt("panel feed") });
const bankCable = sampleWire({ name: "bank cable" });
const lamp = sampleCircuitWires("lamp");
const plan = [bankCable, feeder, ...lamp];
const file = fileOf(plan);

test("the file is named beside the root", () => {
  expect(wireNumbersFile("file:///a/bus.ts")).toBe("file:///a/bus.wire-numbers.txt");
  expect(wireNumbersFile("file:///a/my.bus.mts")).toBe("file:///a/my.bus.wire-numbers.txt");
  expect(wireNumbersFile("file:///a/bus.jsx")).toBe("file:///a/bus.wire-numbers.txt");
});

test("a line a conductor, sorted, numbers in the order of the plan", () => {
  expect(linesOf(file)).toEqual([
    '"bank cable" cable: "bank" positive to "bus" stud = 1',
    '"feeder" cable: "bus" stud to "panel" feed = 2',
    '"lamp" positive: "panel" branch to its load = 3',
    '"lamp" return: its load to "panel" negative = 4',
  ]);
});

describe("what is known again", () => {
  const cases: readonly (readonly [string, readonly Wire[], readonly (readonly [string, number])[]])[] = [
    [
      "the same plan",
      plan,
      [
        ["bank cable", 1],
        ["feeder", 2],
        ["lamp positive", 3],
        ["lamp return", 4],
      ],
    ],
    [
      "another order",
      [...plan].reverse(),
      [
        ["lamp return", 4],
        ["lamp positive", 3],
        ["feeder", 2],
        ["bank cable", 1],
      ],
    ],
    [
      "a circuit put first",
      [...sampleCircuitWires("horn"), ...plan],
      [
        ["horn positive", 5],
        ["horn return", 6],
        ["bank cable", 1],
        ["feeder", 2],
        ["lamp positive", 3],
        ["lamp return", 4],
      ],
    ],
    [
      "one removed",
      [bankCable, ...lamp],
      [
        ["bank cable", 1],
        ["lamp positive", 3],
        ["lamp return", 4],
      ],
    ],
    [
      "a cable renamed",
      [{ ...bankCable, name: "main" }, feeder],
      [
        ["main", 1],
        ["feeder", 2],
      ],
    ],
    [
      "a cable that joins something else",
      [bankCable, { ...feeder, from: endAt("other bus stud"), to: endAt("other panel feed") }],
      [
        ["bank cable", 1],
        ["feeder", 2],
      ],
    ],
    [
      "a part renamed: everything that ends there",
      plan.map((wire) =>
        wire.to.part === "bus"
          ? { ...wire, to: endAt("main bus stud") }
          : wire.from.part === "bus"
            ? { ...wire, from: endAt("main bus stud") }
            : wire,
      ),
      [
        ["bank cable", 1],
        ["feeder", 2],
        ["lamp positive", 3],
        ["lamp return", 4],
      ],
    ],
    // One that is gone and one that is new are not the same one under another name: the old label may still be on a wire.
    [
      "another circuit in the place of one",
      [bankCable, feeder, ...sampleCircuitWires("horn")],
      [
        ["bank cable", 1],
        ["feeder", 2],
        ["horn positive", 5],
        ["horn return", 6],
      ],
    ],
    [
      "two cables between the same terminals, both renamed: which is which cannot be told",
      [{ ...bankCable, name: "one" }, { ...bankCable, name: "two" }, feeder],
      [
        ["one", 5],
        ["two", 6],
        ["feeder", 2],
      ],
    ],
    [
      "a cable swapped for another between the same terminals is that cable under another name",
      [{ ...feeder, name: "panel cable" }],
      [["panel cable", 2]],
    ],
    [
      "a cable split by a fuse: the piece towards the source, under any name",
      [
        bankCable,
        {
          ...feeder,
          name: "fuse to panel",
          from: endAt("fuse load", { isSourceSide: false, on: undefined }),
        },
        { ...feeder, name: "bus to fuse", to: endAt("fuse line", { isSourceSide: true, on: undefined }) },
      ],
      [
        ["bank cable", 1],
        ["fuse to panel", 5],
        ["bus to fuse", 2],
      ],
    ],
    [
      "the same, and the piece towards the load has the name of the whole",
      [
        bankCable,
        { ...feeder, from: endAt("fuse load", { isSourceSide: false, on: undefined }) },
        {
          ...feeder,
          name: "stub",
          from: endAt("fuse line", { isSourceSide: true, on: undefined }),
          to: endAt("bus stud"),
        },
      ],
      [
        ["bank cable", 1],
        ["feeder", 5],
        ["stub", 2],
      ],
    ],
    [
      "a fuse mounted where a cable began",
      [
        {
          ...bankCable,
          name: "main",
          from: endAt("fuse load", { isSourceSide: false, on: { part: "bank", terminal: "positive" } }),
        },
        feeder,
      ],
      [
        ["main", 1],
        ["feeder", 2],
      ],
    ],
  ];
  test.each(cases)("%s", (_, wires, expected) => {
    expect(numbersOf(numberWires(wires, readWireNumbers(file)))).toEqual(expected);
  });
});

test("equal conductors keep their numbers among each other, and a further one gets its own", () => {
  const twins = [bankCable, bankCable];
  const kept = readWireNumbers(fileOf(twins));
  expect(numbersOf(numberWires([...twins, bankCable], kept))).toEqual([
    ["bank cable", 1],
    ["bank cable", 2],
    ["bank cable", 3],
  ]);
  const elsewhere = twins.map((wire) => ({ ...wire, to: endAt("new bus stud") }));
  expect(numbersOf(numberWires(elsewhere, kept))).toEqual([
    ["bank cable", 1],
    ["bank cable", 2],
  ]);
});

test("a retired number is never given again, not even to a conductor that is exactly like the one that had it", () => {
  const without = fileOf([bankCable, feeder], file);
  expect(linesOf(without)).toContain('"lamp" positive: "panel" branch to its load = 3 retired');
  const again = numberWires(plan, readWireNumbers(without));
  expect(numbersOf(again)).toEqual([
    ["bank cable", 1],
    ["feeder", 2],
    ["lamp positive", 5],
    ["lamp return", 6],
  ]);
  expect(linesOf(fileOf(plan, without)).filter((line) => line.includes('"lamp" positive'))).toEqual([
    '"lamp" positive: "panel" branch to its load = 3 retired',
    '"lamp" positive: "panel" branch to its load = 5',
  ]);
});

describe("conductors that the plan gives no name", () => {
  const place = "camper.ts line 12";
  test("between two terminals it is known by them, whatever line it comes to stand on", () => {
    const first = fileOf([{ ...bankCable, name: place }, feeder]);
    expect(linesOf(first)[1]).toBe('unnamed cable: "bank" positive to "bus" stud = 1');
    const moved = numberWires([feeder, { ...bankCable, name: "camper.ts line 40" }], readWireNumbers(first));
    expect(numbersOf(moved)).toEqual([
      ["feeder", 2],
      ["camper.ts line 40", 1],
    ]);
  });
  test("a circuit with nothing but a place has no number that can be kept", () => {
    const numbered = numberWires([...sampleCircuitWires(place), feeder], readWireNumbers(undefined));
    expect(numbered.wires.map(({ kept }) => kept)).toEqual([false, false, false]);
    expect(linesOf(writeWireNumbers(numbered, readWireNumbers(undefined)))).toEqual([
      '"feeder" cable: "bus" stud to "panel" feed = 3',
    ]);
  });
});

describe("what people and git make of the file", () => {
  test("line ends of another system, spaces, empty lines", () => {
    const read = readWireNumbers(`${file.replaceAll("\n", "\r\n")}\r\n   \r\n`);
    expect(read.problems).toEqual([]);
    expect(numbersOf(numberWires(plan, read))).toEqual(numbersOf(numberWires(plan, readWireNumbers(file))));
  });
  test("comments stay where they are", () => {
    const text = `${file.replace('"feeder"', '# checked in spring\n"feeder"')}# the end\n`;
    expect(fileOf(plan, text)).toBe(text);
    expect(fileOf([...sampleCircuitWires("horn"), ...plan], text)).toContain('# checked in spring\n"feeder"');
  });
  test.each([
    ["a conflict", `<<<<<<< HEAD\n${linesOf(file)[0]}\n=======\n>>>>>>> other`, [1, 3, 4], /conflict/],
    ["a line of something else", `${linesOf(file)[0]}\nlamp = 7`, [2], /not a wire number/],
    ["a number below 1", '"x" cable: "a" b to "c" d = 0', [1], /not a wire number/],
    ["a number and a half", '"x" cable: "a" b to "c" d = 1.5', [1], /not a wire number/],
    ["a role that is none", '"x" wire: "a" b to "c" d = 1', [1], /not a wire number/],
    ["text that is none", '"\\x" cable: "a" b to "c" d = 1', [1], /not a wire number/],
    ["text that does not end", '"x cable: "a" b to "c" d = 1', [1], /not a wire number/],
  ])("%s is said with its line", (_, text, lines, wrong) => {
    const { problems } = readWireNumbers(text);
    expect(problems.map(({ line }) => line)).toEqual(lines);
    for (const problem of problems) expect(problem.text).toMatch(wrong);
  });
  test("one number for two conductors: the first line keeps it, the later one gets a new one, and it is said", () => {
    const text = `${linesOf(file).join("\n")}\n"horn" positive: "panel" branch to its load = 2\n`;
    const numbered = numberWires([...sampleCircuitWires("horn"), ...plan], readWireNumbers(text));
    expect(numbersOf(numbered).find(([name]) => name === "feeder")).toEqual(["feeder", 2]);
    expect(numbered.twice.map(({ wire, number, instead }) => [wire.name, number, instead])).toEqual([
      ["horn", 5, 2],
    ]);
  });
  test("the same line twice is one line", () => {
    expect(fileOf(plan, `${file}${linesOf(file).join("\n")}\n`)).toBe(file);
  });
  test("any name comes back as it went in", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "grapheme", minLength: 1 }),
        fc.string({ minLength: 1 }),
        (name, terminal) => {
          fc.pre(!/ line \d+/.test(name));
          const wire = sampleWire({ name, to: { ...endAt("a b"), part: `${name}"`, terminal } });
          const text = fileOf([wire]);
          const read = readWireNumbers(text);
          expect(read.problems).toEqual([]);
          expect(numberWires([wire], read).wires[0]?.kept).toBe(true);
          expect(fileOf([wire], text)).toBe(text);
        },
      ),
    );
  });
});

/** Conductors by a handle of the test's own: one that stays keeps its handle. */
interface Planned {
  readonly handle: number;
  readonly kind: "cable" | "circuit";
  readonly name: string;
  readonly ends: string;
}

type Edit =
  | { readonly do: "add"; readonly kind: Planned["kind"] }
  | { readonly do: "remove" | "rename" | "move" | "reorder"; readonly which: number };

const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({ do: fc.constant("add" as const), kind: fc.constantFrom("cable" as const, "circuit" as const) }),
  fc.record({ do: fc.constantFrom("remove", "rename", "move", "reorder"), which: fc.nat(50) }),
);
const edits = fc.array(edit, { maxLength: 6 });

describe("any edits", () => {
  test("never change the number of what stays, and never give one a second time", () => {
    fc.assert(
      fc.property(fc.array(edits, { minLength: 1, maxLength: 8 }), (batches) => {
        const make = maker("");
        let planned: readonly Planned[] = [];
        let text: string | undefined;
        let numbers = new Map<string, number>();
        const everGiven = new Map<number, string>();
        for (const batch of batches) {
          const before = new Map(planned.map((one) => [one.handle, one]));
          planned = make(planned, batch);
          const numbered = numberWires(planned.flatMap(wiresOfPlanned), readWireNumbers(text));
          text = writeWireNumbers(numbered, readWireNumbers(text));
          const now = numbersByHandle(planned, numbered);
          expect(new Set(now.values()).size).toBe(now.size);
          expect(numbered.twice).toEqual([]);
          for (const [key, number] of now) {
            const handle = Number(key.split(" ")[0]);
            const old = before.get(handle);
            const is = planned.find((one) => one.handle === handle)!;
            const isKnown = old && (old.name === is.name || (is.kind === "cable" && old.ends === is.ends));
            if (isKnown) expect(number).toBe(numbers.get(key));
            else expect(everGiven.get(number)).toBeUndefined();
            everGiven.set(number, key);
          }
          const read = readWireNumbers(text);
          expect(read.problems).toEqual([]);
          // Every number that was ever given is still there: none is given again.
          expect(new Set(read.numbers.map(({ number }) => number))).toEqual(new Set(everGiven.keys()));
          numbers = new Map(now);
        }
      }),
      { numRuns: sampledRuns(200) },
    );
  });
});

const folder = mkdtempSync(join(tmpdir(), "loomwright-numbers-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("two branches merged by git keep every number that either had, but for those that both gave", () => {
  let conflicts = 0;
  let clean = 0;
  fc.assert(
    fc.property(edits, edits, fc.nat(12), (ofOne, ofOther, size) => {
      const start = maker("")(
        [],
        Array.from(
          { length: size },
          (_, index) => ({ do: "add", kind: index % 3 ? "circuit" : "cable" }) as const,
        ),
      );
      const base = fileOf(start.flatMap(wiresOfPlanned));
      const [one, other] = [maker("left ")(start, ofOne), maker("right ")(start, ofOther)];
      const texts = [one, other].map((planned) => fileOf(planned.flatMap(wiresOfPlanned), base)) as [
        string,
        string,
      ];
      const [left, right] = [one, other].map((planned, index) =>
        numbersByHandle(planned, numberWires(planned.flatMap(wiresOfPlanned), readWireNumbers(texts[index]))),
      ) as [Map<string, number>, Map<string, number>];

      let merged = mergeFile(texts[0], base, texts[1], []);
      if (merged.conflict) {
        conflicts++;
        const { problems } = readWireNumbers(merged.text);
        expect(problems.length).toBeGreaterThanOrEqual(3);
        const lines = merged.text.split("\n");
        for (const { line } of problems) expect(lines[line - 1]).toMatch(/^(<{7}|={7}|>{7})/);
        // The message asks for this: the lines of both sides.
        merged = mergeFile(texts[0], base, texts[1], ["--union"]);
      } else clean++;
      const kept = readWireNumbers(merged.text);
      expect(kept.problems).toEqual([]);

      const together = mergePlans(start, one, other);
      const numbered = numberWires(together.flatMap(wiresOfPlanned), kept);
      const numbers = numbersByHandle(together, numbered);
      expect(new Set(numbers.values()).size).toBe(numbers.size);
      const said = new Set(numbered.twice.map(({ number }) => number));
      for (const [key, number] of numbers) {
        const had = [left.get(key), right.get(key)].filter((one) => one !== undefined);
        if (said.has(number)) {
          // Another one that had its old number too now has it.
          expect([...numbers].some(([holder, given]) => holder !== key && had.includes(given))).toBe(true);
        } else expect(had).toContain(number);
      }
      // Once written, it is sound and stays.
      const text = writeWireNumbers(numbered, kept);
      expect(readWireNumbers(text).problems).toEqual([]);
      expect(fileOf(together.flatMap(wiresOfPlanned), text)).toBe(text);
    }),
    { numRuns: sampledRuns(100) },
  );
  // Both cases occurred.
  expect(conflicts).toBeGreaterThan(0);
  expect(clean).toBeGreaterThan(0);
});

function maker(prefix: string) {
  let next = prefix === "" ? 0 : prefix === "left " ? 1_000 : 2_000;
  const fresh = () => next++;
  return (planned: readonly Planned[], all: readonly Edit[]): readonly Planned[] => {
    let now = [...planned];
    for (const one of all) {
      if (one.do === "add") {
        const handle = fresh();
        // Names spread over the alphabet: new lines come in between.
        const name = `${"qmtbxhe"[handle % 7]} ${prefix}${handle}`;
        now.push({ handle, kind: one.kind, name, ends: `${handle}` });
        continue;
      }
      const index = one.which % Math.max(1, now.length);
      const it = now[index];
      if (!it) continue;
      if (one.do === "remove") now.splice(index, 1);
      if (one.do === "rename")
        now[index] = { ...it, name: `${"qmtbxhe"[fresh() % 7]} ${prefix}renamed ${fresh()}` };
      if (one.do === "move")
        now[index] = { ...it, ends: `${it.ends.split(" ")[0]} moved ${prefix}${fresh()}` };
      if (one.do === "reorder") now = [...now.slice(index), ...now.slice(0, index)];
    }
    return now;
  };
}

function wiresOfPlanned({ kind, name, ends }: Planned): readonly Wire[] {
  if (kind === "circuit") return sampleCircuitWires(name, `panel ${ends}`.replace(/ \d+$/, ""));
  return [sampleWire({ name, from: endAt(`part ${ends} positive`), to: endAt("bus stud") })];
}

/** "7 positive" → its number. */
function numbersByHandle(planned: readonly Planned[], { wires }: NumberedWires): Map<string, number> {
  const handles = planned.flatMap((one) => wiresOfPlanned(one).map(({ role }) => `${one.handle} ${role}`));
  return new Map(wires.map(({ number }, index) => [handles[index]!, number]));
}

/** Merges two branches of a plan: removals and changes of either apply; the first one takes precedence. */
function mergePlans(
  base: readonly Planned[],
  one: readonly Planned[],
  other: readonly Planned[],
): readonly Planned[] {
  const known = new Map(base.map((each) => [each.handle, each]));
  const others = new Map(other.map((each) => [each.handle, each]));
  const both = one.flatMap((each) => {
    const before = known.get(each.handle);
    const there = others.get(each.handle);
    if (!before) return [each];
    if (!there) return [];
    return [
      {
        ...each,
        name: each.name === before.name ? there.name : each.name,
        ends: each.ends === before.ends ? there.ends : each.ends,
      },
    ];
  });
  return [...both, ...other.filter(({ handle }) => !known.has(handle))];
}

function mergeFile(one: string, base: string, other: string, options: readonly string[]) {
  const names = ["one", "base", "other"].map((name) => join(folder, name));
  [one, base, other].forEach((text, index) => {
    writeFileSync(names[index]!, text);
  });
  try {
    return {
      conflict: false,
      text: execFileSync("git", ["merge-file", "-p", ...options, ...names], {
        encoding: "utf8",
        stdio: "pipe",
      }),
    };
  } catch (error) {
    const { status, stdout } = error as { readonly status: number; readonly stdout: string };
    if (status < 1 || status > 127) throw error;
    return { conflict: true, text: stdout };
  }
}

function fileOf(wires: readonly Wire[], before?: string): string {
  const kept = readWireNumbers(before);
  return writeWireNumbers(numberWires(wires, kept), kept);
}

function linesOf(text: string): string[] {
  return text.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
}

function numbersOf({ wires }: NumberedWires) {
  return wires.map(({ wire: { name, role }, number }) => [
    role === "cable" ? name : `${name} ${role}`,
    number,
  ]);
}
