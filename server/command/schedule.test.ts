import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { labelSheets } from "../../library/documents/schedules/label-sheets.ts";
import { CommandTester } from "./command.tester.ts";
import { tablesJsonSchema } from "./tables-json.ts";

let tester: CommandTester;
let folder: string;
beforeEach(() => {
  tester = new CommandTester();
  folder = tester.folder;
});
afterEach(() => tester.dispose());

const write = (name: string, text: string) => tester.write(name, text);
const read = (name: string) => tester.read(name);
const loomwright = (...words: string[]) => tester.run(words);

const lamp = `import { circuit } from "loomwright";
circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, insulationC: 105, protect: 5 });
`;
const boat = `import { battery, build, cable, circuit, fusePanel, scenario } from "loomwright";
build({ insulationC: 105 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
const panel = fusePanel({ name: "panel", positions: 3 });
cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthM: 1, mm2: 10, protect: 40 });
cable({ name: "back", from: panel.negative, to: bank.negative, lengthM: 1, mm2: 10 });
const light = circuit({ name: "light", from: panel.branch, load: 2, oneWayM: 3, mm2: 2.5, protect: 5 });
scenario({ name: "evening" });
scenario({ name: "day", off: [light] });
`;
const ids = [
  ...["wire-schedule", "cut-list", "spools", "fewer-sizes", "parts-list", "fuse-map", "labels"],
  ...["first-power-conductors", "first-power-insulation", "first-power-protection", "first-power-voltages"],
];

describe("on the screen", () => {
  test("every table, columns aligned, what is empty left out", async () => {
    write("boat.ts", boat);
    const { code, out, err } = await loomwright("schedule");
    expect(err).toBe("");
    expect(code).toBe(0);
    const titles = [
      "Wire schedule",
      "Cut list",
      "Spools to buy",
      "Fewer sizes to buy",
      "Parts list",
      "Fuse map",
      "Wire labels",
    ];
    for (const title of titles) expect(out).toContain(`${title}\n`);
    expect(out).toMatch(/^ {2}No\. {2}Name +From +To +Side/m);
    expect(out).toMatch(/^ {3}1\* {2}feeder {2}bank · positive +panel · feed/m);
    expect(out).not.toContain("Protection at to");
    for (const line of out.split("\n")) expect(line).toBe(line.trimEnd());
  });
  test("one table", async () => {
    write("boat.ts", boat);
    const { out } = await loomwright("schedule", "boat.ts", "--table", "fuse-map");
    expect(out).toMatch(/panel +1 +light +3\* +5/);
    expect(out).toMatch(/panel +2 +free/);
    expect(out).not.toContain("Wire schedule");
  });
  test("all checks before first power by one word", async () => {
    write("boat.ts", boat);
    const { out } = await loomwright("schedule", "boat.ts", "--table", "first-power");
    expect(out.match(/^(Before|At) first power/gm)).toHaveLength(4);
  });
  test("numbers that are kept have no mark", async () => {
    write("boat.ts", boat);
    await loomwright("number");
    const { out } = await loomwright("schedule", "--table", "wire-schedule");
    expect(out).toMatch(/^ +1 {2}feeder/m);
    expect(out).not.toContain("not kept");
  });
  test("a file of numbers that is not sound is said; the list is there all the same", async () => {
    write("boat.ts", boat);
    write("boat.wire-numbers.txt", "<<<<<<< ours\n");
    const { code, out, err } = await loomwright("schedule", "--table", "wire-schedule");
    expect(err).toContain("boat.wire-numbers.txt:1: This is a conflict that git left behind");
    expect(out).toContain("feeder");
    expect(code).toBe(0);
  });
  test("voltages in the scenario that is asked for", async () => {
    write("boat.ts", boat);
    const { out } = await loomwright("schedule", "--table", "first-power", "--scenario", "day");
    expect(out).toMatch(/^ {2}light .* day +off/m);
    const { code, err } = await loomwright("schedule", "--scenario", "night");
    expect(err).toContain('there is no scenario "night", only "evening", "day"');
    expect(code).toBe(2);
  });
  test("names of a stranger's plan cannot repaint the screen", async () => {
    write("boat.ts", boat.replace('name: "light"', 'name: "light", label: "\\u001b[31m\\u202egreen"'));
    const { out } = await loomwright("schedule");
    for (const mark of ["\u001b", "\u202e"]) expect(out).not.toContain(mark);
  });
  test("a plan that cannot be run exits 2, and the others are shown", async () => {
    write("boat.ts", boat);
    write("half.ts", 'import { circuit } from "loomwright";\ncircuit({ load: ');
    const { code, out, err } = await loomwright("schedule", "--table", "cut-list");
    expect(code).toBe(2);
    expect(err).toMatch(/half\.ts:2:\d+: this text is not complete TypeScript yet/);
    expect(out).toContain("2.5 mm²");
  });
});

describe("as data", () => {
  test("CSV of one table, as an independent parser reads it", async () => {
    write("boat.ts", boat);
    const { out } = await loomwright("schedule", "--table", "cut-list", "--format", "csv");
    const records = parse(out, { bom: true, columns: true }) as Record<string, string>[];
    expect(records[0]).toMatchObject({
      size: "2.5 mm²",
      colour: "black",
      pieces: "1",
      lengthM: "3.5",
      wires: "4*",
    });
  });
  test("JSON after its schema, numbers unrounded", async () => {
    write("boat.ts", boat);
    write("lamp.ts", lamp);
    const { out } = await loomwright("schedule", "--format", "json");
    const { plans } = tablesJsonSchema.parse(JSON.parse(out));
    expect(plans.map(({ file }) => file)).toEqual(["boat.ts", "lamp.ts"]);
    for (const { tables } of plans) {
      expect(tables.map(({ id }) => id)).toEqual(ids);
      for (const { columns, rows } of tables)
        for (const row of rows) expect(Object.keys(row)).toEqual(columns.map(({ id }) => id));
    }
    expect(plans[1]!.tables[0]!.rows[0]).toMatchObject({ lengthM: 10 * 0.3048, number: "1*" });
  });
  test("Markdown", async () => {
    write("boat.ts", boat);
    const { out } = await loomwright("schedule", "--format", "markdown");
    expect(out).toMatch(/^# boat\.ts\n/);
    expect(out).toContain("| No. | Name | From |");
  });
});

describe("in a folder", () => {
  test.each([
    ["csv", ".csv"],
    ["markdown", ".md"],
    ["json", ".json"],
  ])("%s: a file for each table, written again without a question", async (format, ending) => {
    write("boat.ts", boat);
    const words = ["schedule", "--out", "lists", "--format", format];
    const { code, out } = await loomwright(...words);
    expect(code).toBe(0);
    const files = ids.map((id) => `boat.${id}${ending}`);
    expect(readdirSync(join(folder, "lists")).sort()).toEqual([...files].sort());
    expect(out.trim().split("\n")).toEqual(files.map((file) => join("lists", file)));
    const before = read(join("lists", files[0]!));
    // A size of the other system gives other columns, and is the same list.
    write("boat.ts", boat.replace("mm2: 10 });", "gauge: 6 });"));
    expect((await loomwright(...words)).code).toBe(0);
    expect(read(join("lists", files[0]!))).not.toBe(before);
    write("boat.ts", boat);
    expect((await loomwright(...words)).code).toBe(0);
    expect(read(join("lists", files[0]!))).toBe(before);
  });
  test("a file that is not ours is left alone, unless one insists", async () => {
    write("boat.ts", boat);
    write("lists/boat.spools.csv", "mine\n");
    const { code, err } = await loomwright("schedule", "--out", "lists");
    expect(code).toBe(2);
    expect(err).toContain("boat.spools.csv was not made by Loomwright; only --force overwrites it");
    expect(read("lists/boat.spools.csv")).toBe("mine\n");
    expect(read("lists/boat.labels.csv")).toContain("feeder");
    expect((await loomwright("schedule", "--out", "lists", "--force")).code).toBe(0);
    expect(read("lists/boat.spools.csv")).toContain("mm²");
  });
  test.each([
    ["csv", ".csv", (text: string) => text.replace(/,,\r\n$/, ",12.6,\r\n")],
    ["markdown", ".md", (text: string) => text.replace(/\| {2}\|(?=\n\n)/, "| 12.6 |")],
  ])(
    "measurements that were filled in (%s) are kept, and their rows named, also when the plan changed",
    async (format, ending, fillIn) => {
      write("boat.ts", boat);
      const words = ["schedule", "--out", "lists", "--table", "first-power", "--format", format];
      await loomwright(...words);
      const file = `lists/boat.first-power-voltages${ending}`;
      const filled = fillIn(read(file));
      expect(filled).toContain("12.6");
      write(file, filled);
      for (const plan of [boat, boat.replace("mm2: 10 });", "gauge: 6 });")]) {
        write("boat.ts", plan);
        const { code, err } = await loomwright(...words);
        expect(code).toBe(2);
        expect(err).toMatch(
          /first-power-voltages\.\w+ holds entries that Loomwright did not write \(rows "[^"]+"\); only --force/,
        );
        expect(read(file)).toBe(filled);
      }
      expect((await loomwright(...words, "--force")).code).toBe(0);
      expect(read(file)).not.toContain("12.6");
      expect((await loomwright(...words)).code).toBe(0);
    },
  );
  test("two plans of one name do not write over each other", async () => {
    write("a/plan.ts", lamp);
    write("b/plan.ts", boat);
    expect((await loomwright("schedule", "--out", "lists", "--table", "labels")).code).toBe(0);
    expect(readdirSync(join(folder, "lists")).sort()).toEqual(["a-plan.labels.csv", "b-plan.labels.csv"]);
  });
});

describe("labels on paper", () => {
  test("a PDF for the sheet that is asked for", async () => {
    write("boat.ts", boat);
    const { code, out, err } = await loomwright("schedule", "--out", "labels.pdf", "--sheet", "Letter-3x10");
    expect(err).toBe("");
    expect(code).toBe(0);
    // Four wires with two ends each.
    expect(out).toContain("labels.pdf: 8 labels for sheets of Letter, 3 × 10 of 66.7 × 25.4 mm");
    expect(readFileSync(join(folder, "labels.pdf"), "latin1")).toMatch(/^%PDF-/);
    expect((await loomwright("schedule", "--out", "labels.pdf")).code).toBe(0);
  });
  test("the help names the sheet that is taken", async () => {
    const { out } = await loomwright("--help");
    expect(out).toContain(`default ${labelSheets[0]!.id}`);
  });
});

describe("words that do not go together", () => {
  test.each([
    [["--format", "csv"], "CSV holds one table"],
    [["--format", "csv", "--table", "first-power"], "CSV holds one table"],
    [["--format", "pdf"], "--format is text, csv, markdown or json"],
    [["--table", "wires"], "--table is wire-schedule, cut-list, spools"],
    [["--out", "lists.csv"], "--out takes a folder"],
    [["--out", ""], "--out takes the name of a folder"],
    [["--out", "lists", "--format", "text"], "text is for the screen"],
    [["--out", "a.pdf", "--table", "spools"], "holds only the labels"],
    [["--out", "a.pdf", "--sheet", "A5-1x1"], "--sheet is A4-5x13"],
    [["--sheet", "A4-5x13"], "--sheet is for labels on paper"],
  ])("%j", async (words, why) => {
    write("boat.ts", boat);
    const { code, err } = await loomwright("schedule", ...words);
    expect(code).toBe(2);
    expect(err).toContain(why);
  });
  test("one file for several plans", async () => {
    write("boat.ts", boat);
    write("lamp.ts", lamp);
    for (const words of [
      ["--out", "a.pdf"],
      ["--format", "csv", "--table", "spools"],
    ]) {
      const { code, err } = await loomwright("schedule", ...words);
      expect(code).toBe(2);
      expect(err).toContain("there are 2 plans");
    }
  });
});
