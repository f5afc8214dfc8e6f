import { lstatSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { version } from "../../library/package.json";
import { CommandTester } from "./command.tester.ts";
import { jsonReportSchema } from "./report-schema.ts";

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

const head = 'import { build, circuit } from "loomwright";\nbuild({ insulationC: 105 });\n';
const good = `${head}circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n`;
const thin = `${head}circuit({ name: "winch", load: 48, continuous: false, oneWayFt: 10, gauge: 12, protect: 45 });\n`;
const droopy = `${head}circuit({ name: "lamp", load: 4, oneWayFt: 80, gauge: 14, protect: 5 });\n`;
const network = `import { battery, build, cable, circuit, disconnect, fusePanel, scenario } from "loomwright";
build({ insulationC: 105 });
const bank = battery({ name: "house bank", chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 8, source: "data sheet p. 3" });
const off = disconnect({ name: "main switch", ratedA: 100 });
const panel = fusePanel({ name: "fuse panel", positions: 6, ratedA: 100 });
cable({ name: "bank to switch", from: bank.positive, to: off.line, lengthFt: 1, gauge: 4, protect: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 } });
cable({ name: "feeder", from: off.load, to: panel.feed, lengthFt: 4, gauge: 4 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 4 });
circuit({ name: "heater", from: panel.branch, load: 15, oneWayFt: 12, gauge: 10, protect: { ratingA: 20, interruptingA: 5_000 } });
scenario({ name: "evening", chargePercent: 50 });
scenario({ name: "cooking" });
`;
const half = `${head}circuit({ name: "lamp", load: `;

describe("check", () => {
  test("a plan without findings exits 0 and says what was checked", async () => {
    write("plan.ts", good);
    const { code, out, err } = await loomwright("check");
    expect(err).toBe("");
    expect(out).toContain("plan.ts: 1 circuit · no findings · worst drop");
    expect(out).toContain("local codes rule");
    expect(out).not.toMatch(/\bsafe\b/i);
    expect(code).toBe(0);
  });

  test("an error exits 1 and is shown with its place, its frame and its fix", async () => {
    write("plan.ts", thin);
    const { code, out } = await loomwright("check", "plan.ts");
    expect(out).toContain("winch · plan.ts:3:");
    expect(out).toMatch(/│ circuit\({ name: "winch".*\n +│ +\^\^\n/);
    expect(out).toMatch(/fix {2}Use \d+ AWG/);
    expect(out).toContain("conductor/ampacity");
    expect(code).toBe(1);
  });

  test("warnings exit 1 unless as many are tolerated", async () => {
    write("plan.ts", droopy);
    expect((await loomwright("check")).code).toBe(1);
    expect((await loomwright("check", "--max-warnings", "0")).code).toBe(1);
    expect((await loomwright("check", "--max-warnings", "1")).code).toBe(0);
  });

  test("hints alone exit 0", async () => {
    write("plan.ts", good.replace("build({ insulationC: 105 });", ""));
    const { code, out } = await loomwright("check");
    expect(out).toContain("1 hint");
    expect(code).toBe(0);
  });

  test("an accepted finding exits 0 and is listed with its reason", async () => {
    write(
      "plan.ts",
      droopy.replace("protect: 5", 'protect: 5, accept: { "conductor/voltage-drop": "only a marker" }'),
    );
    const { code, out } = await loomwright("check");
    expect(out).toContain("accepted: only a marker");
    expect(out).toContain("1 accepted");
    expect(code).toBe(0);
  });

  test("a half-typed plan exits 2 and says where TypeScript stopped reading", async () => {
    write("plan.ts", half);
    const { code, out } = await loomwright("check");
    expect(out).toContain("not complete TypeScript yet");
    expect(out).toMatch(/plan\.ts:3:\d+/);
    expect(code).toBe(2);
  });

  test("a plan that throws exits 2 without a stack trace", async () => {
    write("plan.ts", `${good}throw new Error("no such lamp");\n`);
    const { code, out, err } = await loomwright("check");
    expect(out).toContain("no such lamp");
    expect(out + err).not.toMatch(/^\s+at /m);
    expect(code).toBe(2);
  });

  test("a plan that never ends exits 2", async () => {
    write("plan.ts", `${good}for (;;) {}\n`);
    const { code, out } = await loomwright("check");
    expect(out).toContain("plan/too-slow");
    expect(code).toBe(2);
  });

  test("a folder stands for every plan below it, a file for the plans it belongs to", async () => {
    write("boat/plan.ts", `${good}import "./lights.ts";\n`);
    // Two circuits of one plan have names of their own.
    const lights = good.replace("build({ insulationC: 105 });", "").replace('"lamp"', '"side lamp"');
    write("boat/lights.ts", lights);
    write("hut/plan.ts", good);
    expect((await loomwright("check")).out).toContain("2 plans: no findings");
    const { out } = await loomwright("check", "boat/lights.ts");
    expect(out).toContain("boat/plan.ts: 2 circuits");
    expect(out).not.toContain("hut");
  });

  test("the result does not depend on where the command runs", async () => {
    write("boat/plan.ts", thin);
    const here = await loomwright("check", "boat/plan.ts");
    const there = await tester.run(["check", "plan.ts"], { cwd: "boat" });
    expect(there.out).toBe(here.out.replaceAll("boat/plan.ts", "plan.ts"));
  });

  test("escape sequences in a stranger's plan are shown, not sent to the screen", async () => {
    write("plan.ts", thin.replace('"winch"', '"win\u001b[2Jch\u202e"'));
    const { out } = await loomwright("check");
    expect(out).not.toContain("\u001b");
    expect(out).not.toContain("\u202e");
  });

  test("colour only where asked for", async () => {
    write("plan.ts", thin);
    const { out } = await tester.run(["check"], { terminal: { colour: true, progress: false } });
    expect(out).toContain("\u001b[31m\u001b[1merror\u001b[22m\u001b[39m");
  });
});

test("a plan that makes nothing does not look checked", async () => {
  write(
    "plan.ts",
    'import { circuit } from "loomwright";\nexport const lamp = () => circuit({ load: 4, oneWayFt: 9, gauge: 14, protect: 10 });\n',
  );
  const { code, out } = await loomwright("check");
  expect(out).toBe("plan.ts: 0 circuits · nothing to check\n");
  expect(code).toBe(0);
});

describe("a network", () => {
  test("in two lines: what was solved, what is worked hardest, what gets the least", async () => {
    write("plan.ts", network);
    const { code, out } = await loomwright("check");
    expect(out).toMatch(
      /^plan\.ts: 1 circuit, 3 parts, 3 cables · no findings · worst drop 3\.\d+ %, limit 10 % \(heater, from the bank\)\n {2}network: 2 scenarios solved\n {2}nearest to its ampacity: heater, 15 A of 60 A in "evening" · lowest voltage: 12\.\d+ V at heater in "cooking"$/m,
    );
    expect(out).toContain("and the currents of each network in each of its scenarios, as written");
    expect(code).toBe(0);
  });

  test("a scenario that could not be solved is named, and an error", async () => {
    write("plan.ts", network.replace("load: 15", "loadW: 9_000"));
    const { code, out } = await loomwright("check");
    expect(out).toMatch(/network: 0 of 2 scenarios solved, not "evening", "cooking"/);
    expect(out).toContain("voltage/collapse");
    expect(code).toBe(1);
  });

  test("a refused value: nothing of the network is told, and the finding says which value it is", async () => {
    write("plan.ts", network.replace("capacityAh: 100", "capacityAh: -100"));
    const { code, out } = await loomwright("check");
    expect(out).toContain("  network: not judged, because of an invalid value, see above");
    expect(out).not.toContain("scenarios solved");
    expect(code).toBe(1);
  });

  test("a refused value of a circuit: the rest of the network is judged, and the circuit without which is named", async () => {
    write("plan.ts", network.replace("load: 15", "load: -15"));
    const { code, out } = await loomwright("check");
    expect(out).toContain(
      "  network: 2 scenarios solved, judged without heater, because of an invalid value, see above",
    );
    expect(out).toContain("Until this is corrected, the network is judged without this circuit");
    expect(code).toBe(1);
    const json = await loomwright("check", "--format", "json");
    const report = jsonReportSchema.parse(JSON.parse(json.out));
    expect(report.plans[0]!.network).toMatchObject({ judged: true, withoutCircuits: ["heater"] });
  });

  test("in JSON: parts, conductors and scenarios, with what is left of Kirchhoff's sum", async () => {
    write("plan.ts", network);
    const { out } = await loomwright("check", "--format", "json");
    const report = jsonReportSchema.parse(JSON.parse(out));
    expect(`${JSON.stringify(report, null, 2)}\n`).toBe(out);
    const [plan] = report.plans;
    expect(plan!.circuits.map(({ name }) => name)).toEqual(["heater"]);
    const judged = plan!.network;
    if (!judged?.judged) throw new Error("The network was not judged.");
    expect(judged.scenarios.map(({ name, state }) => [name, state])).toEqual([
      ["evening", "solved"],
      ["cooking", "solved"],
    ]);
    for (const scenario of judged.scenarios) {
      if (scenario.state === "solved")
        expect(scenario.residualA).toBeLessThanOrEqual(1e-9 * scenario.largestA);
    }
    expect(judged.parts.map(({ kind, name, line }) => [kind, name, line])).toEqual([
      ["battery", "house bank", 3],
      ["disconnect", "main switch", 4],
      ["fusePanel", "fuse panel", 5],
      ["load", "heater", 9],
    ]);
    expect(judged.parts[0]).toMatchObject({
      source: "data sheet p. 3",
      feeds: { currentA: expect.closeTo(15, 6) },
    });
    const feeder = judged.conductors[1]!;
    expect(feeder).toMatchObject({
      name: "feeder",
      role: "cable",
      from: { part: "main switch", terminal: "load" },
      to: { part: "fuse panel", terminal: "feed" },
      conductor: { awg: 4 },
      // 33 CFR 183.425, Table 5: 4 AWG, 105 °C.
      ampacityA: 160,
    });
    expect(feeder.results.map(({ currentA }) => currentA)).toEqual([
      expect.closeTo(15, 6),
      expect.closeTo(15, 6),
    ]);
    expect(judged.conductors.map(({ role }) => role)).toEqual([
      "cable",
      "cable",
      "cable",
      "positive",
      "return",
    ]);
    expect(judged.conductors[0]!.devices).toMatchObject([
      { end: "near", ratingA: 60, interruptingA: 20_000 },
    ]);
    expect(judged.waysFromBank).toMatchObject([
      { part: "heater", battery: "house bank", dropLimitPercent: 10 },
    ]);
  });

  test("in JSON a fuse or breaker that is a part has its figures and the faults through it", async () => {
    write(
      "plan.ts",
      `import { battery, breaker, build, circuit, fuseHolder } from "loomwright";
build({ insulationC: 105 });
const bank = battery({ name: "house bank", chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 8 });
const main = fuseHolder({ name: "main fuse", ratingA: 60, family: "UL 248-15 Class T", interruptingA: 20_000, on: bank.positive });
circuit({ name: "heater", from: main.load, returnTo: bank.negative, load: 15, oneWayFt: 12, gauge: 10 });
breaker({ name: "spare breaker", ratingA: 30 });
`,
    );
    const { out } = await loomwright("check", "--format", "json");
    const report = jsonReportSchema.parse(JSON.parse(out));
    expect(`${JSON.stringify(report, null, 2)}\n`).toBe(out);
    const judged = report.plans[0]!.network;
    if (!judged?.judged) throw new Error("The network was not judged.");
    expect(judged.parts.map(({ name, device }) => [name, device])).toEqual([
      ["house bank", undefined],
      [
        "main fuse",
        {
          ...{ ratingA: 60, interruptingA: 20_000, estimated: false, leastA: expect.any(Number) },
          // 14.6 V / 8 mΩ, as nothing but the battery is in the way of the current.
          greatestA: expect.closeTo(1_825, 0),
        },
      ],
      ["heater", undefined],
      // No source reaches it.
      [
        "spare breaker",
        { ratingA: 30, interruptingA: null, greatestA: null, leastA: null, estimated: false },
      ],
    ]);
    expect(judged.conductors.flatMap(({ devices }) => devices)).toEqual([]);
  });

  test("in JSON parts and conductors name the lengths without which their figures are not known", async () => {
    write(
      "plan.ts",
      `import { battery, build, cable, circuit, busBar } from "loomwright";
build({ insulationC: 105 });
const bank = battery({ name: "house bank", chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 8 });
const bus = busBar({ name: "bus", side: "positive" });
cable({ name: "feed", from: bank.positive, to: bus.stud, mm2: 35, protect: 100 });
cable({ name: "second feed", from: bank.positive, to: bus.stud, lengthM: 1, mm2: 35, protect: 100 });
circuit({ name: "heater", from: bus.stud, returnTo: bank.negative, load: 15, oneWayFt: 12, gauge: 10, protect: 30 });
`,
    );
    const { out } = await loomwright("check", "--format", "json");
    const judged = jsonReportSchema.parse(JSON.parse(out)).plans[0]!.network;
    if (!judged?.judged) throw new Error("The network was not judged.");
    expect(judged.parts.map(({ name, withoutLength }) => [name, withoutLength])).toEqual([
      ["house bank", []],
      ["bus", ["feed"]],
      ["heater", ["feed"]],
    ]);
    expect(judged.conductors.map(({ name, withoutLength }) => [name, withoutLength])).toEqual([
      ["feed", ["feed"]],
      ["second feed", ["feed"]],
      ["heater", []],
      ["heater", []],
    ]);
  });

  test("in JSON a plan without a network has none, and one that could not be read is not judged", async () => {
    write("lone.ts", good);
    write("refused.ts", network.replace("capacityAh: 100", "capacityAh: -100"));
    const { out } = await loomwright("check", "--format", "json");
    const report = jsonReportSchema.parse(JSON.parse(out));
    expect(report.plans.map(({ network }) => network)).toEqual([null, { judged: false }]);
  });

  test("names of a stranger's network are shown, not sent to the screen", async () => {
    write(
      "plan.ts",
      network.replace('"evening"', '"eve\u001b[2Jning\u202e"').replace('"heater"', '"h\u001b[2J"'),
    );
    const { out } = await loomwright("check");
    expect(out).not.toContain("\u001b");
    expect(out).not.toContain("\u202e");
  });
});

describe("check --format json", () => {
  test("keeps to its schema and round-trips", async () => {
    write("plan.ts", `${thin}${droopy.replace(head, "")}`);
    const { code, out } = await loomwright("check", "--format", "json");
    const report = jsonReportSchema.parse(JSON.parse(out));
    expect(`${JSON.stringify(report, null, 2)}\n`).toBe(out);
    expect(report.tool).toEqual({ name: "loomwright", version });
    expect(report.plans).toHaveLength(1);
    const [plan] = report.plans;
    expect(plan!.circuits[0]).toMatchObject({
      name: "winch",
      file: "plan.ts",
      line: 3,
      loadA: 48,
      systemV: 12,
      conductor: { awg: 12 },
      ampacityA: 45,
      protection: { ratingA: 45, minA: 48, maxA: 45 },
    });
    expect(plan!.circuits[0]!.lengthOneWayM).toBeCloseTo(3.048, 12);
    const drop = plan!.findings.find(({ rule }) => rule === "conductor/voltage-drop")!;
    expect(drop).toMatchObject({ severity: "warning", file: "plan.ts" });
    expect(drop.fixes[0]!.edits[0]).toMatchObject({ file: "plan.ts", line: drop.line, column: drop.column });
    expect(report.summary.warnings).toBeGreaterThan(0);
    expect(code).toBe(1);
  });

  test("a plan that could not be read is a finding too", async () => {
    write("plan.ts", half);
    const { code, out } = await loomwright("check", "--format", "json");
    const report = jsonReportSchema.parse(JSON.parse(out));
    expect(report.plans[0]!.findings.map(({ rule }) => rule)).toEqual(["plan/cannot-run"]);
    expect(report.summary.errors).toBe(1);
    expect(code).toBe(2);
  });
});

describe("fix", () => {
  test("repairs the file, leaves nothing else behind, and checks again", async () => {
    write("plan.ts", droopy);
    const { code, out } = await loomwright("fix");
    expect(out).toMatch(/plan\.ts: 14 → \d+\n/);
    expect(out).toContain("plan.ts: 1 finding fixed\n");
    expect(out).toContain("no findings");
    expect(read("plan.ts")).toMatch(/gauge: (12|10|8),/);
    expect(read("plan.ts").replace(/gauge: \d+/, "gauge: 14")).toBe(droopy);
    expect(readdirSync(folder).sort()).toEqual(["package.json", "plan.ts"]);
    expect(code).toBe(0);
  });

  test("--dry-run writes nothing", async () => {
    write("plan.ts", droopy);
    const { code, out } = await loomwright("fix", "--dry-run");
    expect(out).toMatch(/plan\.ts: 14 → \d+\n/);
    expect(out).toContain("plan.ts: 1 finding would be fixed\n");
    expect(read("plan.ts")).toBe(droopy);
    expect(code).toBe(1);
  });

  test("a file keeps its byte order mark, and a link stays a link", async () => {
    write("real.ts", `\uFEFF${droopy}`);
    symlinkSync(join(folder, "real.ts"), join(folder, "plan.ts"));
    const { code, out, err } = await loomwright("fix", "plan.ts");
    expect(err).toBe("");
    expect(out).toMatch(/plan\.ts: 14 → \d+\n/);
    expect(read("real.ts").replace(/gauge: \d+/, "gauge: 14")).toBe(`\uFEFF${droopy}`);
    expect(read("real.ts")).not.toContain("gauge: 14");
    expect(lstatSync(join(folder, "plan.ts")).isSymbolicLink()).toBe(true);
    expect(code).toBe(0);
  });

  test("a file with bytes that are no UTF-8 is not judged and left alone, and the reason is said; others are repaired", async () => {
    const latin = Buffer.from(`${droopy}// K\u00fchlbox\n`, "latin1");
    writeFileSync(join(folder, "latin.ts"), latin);
    write("plan.ts", droopy);
    const { code, out, err } = await loomwright("fix");
    expect(err).toBe("");
    expect(out).toContain("latin.ts is not UTF-8 text: save it as UTF-8");
    expect(out).not.toMatch(/latin\.ts: 14 →/);
    expect(readFileSync(join(folder, "latin.ts")).equals(latin)).toBe(true);
    expect(read("plan.ts")).not.toContain("gauge: 14");
    expect(readdirSync(folder).sort()).toEqual(["latin.ts", "package.json", "plan.ts"]);
    expect(code).toBe(2);
  });

  test("a plan that cannot be read is left alone", async () => {
    write("plan.ts", half);
    expect((await loomwright("fix")).code).toBe(2);
    expect(read("plan.ts")).toBe(half);
  });
});

describe("explain", () => {
  test("lists every rule", async () => {
    const { code, out } = await loomwright("explain");
    expect(out).toMatch(/^conductor\/voltage-drop +warning +\S/m);
    expect(code).toBe(0);
  });

  test.each(["conductor/voltage-drop", "Excessive voltage drop", "too much voltage lost on the way"])(
    "finds a rule by its name, its title and a former title: %s",
    async (asked) => {
      const { code, out } = await loomwright("explain", asked);
      expect(out).toMatch(/^# Excessive voltage drop/);
      expect(code).toBe(0);
    },
  );

  test("a rule that does not exist is answered with those that may be meant", async () => {
    const { code, err } = await loomwright("explain", "voltage");
    expect(err).toContain("Did you mean battery/charging-voltage or conductor/voltage-drop or ");
    expect(code).toBe(2);
  });
});

describe("words it does not understand", () => {
  test.each([
    [["chek"], "there is no command 'chek'. Did you mean check?"],
    [["scheduel"], "Did you mean schedule?"],
    [["rep"], "Did you mean report?"],
    [["paint"], "there is no command 'paint'; there are check, fix, "],
    [["help", "chek"], "Did you mean check?"],
    [["check", "--page", "A4"], "'check' does not take --page.\nloomwright help check shows its arguments"],
    [["check", "--format", "xml"], "--format is text, json, sarif or annotations, not 'xml'"],
    [["check", "--max-warnings", "-1"], "--max-warnings"],
    [["check", "--max-warnings", "many"], "takes a whole number from 0 up, not 'many'"],
    [["check", "--frmat", "json"], "there is no option --frmat. Did you mean --format?"],
    [["check", "--colour"], "there is no option --colour. Did you mean --colours?"],
    [["check", "--zebra"], "Unknown option '--zebra'."],
    [["explain", "conductor/ampcity"], "Did you mean conductor/ampacity?"],
    [["check", "nowhere"], "no file or folder 'nowhere'"],
    [["check", "."], "no plan found below '.'"],
    [["check", "package.json"], "is not a plan"],
    [["explain", "a", "b"], "one rule at a time"],
  ])("%j exits 2 and says why", async (words, said) => {
    const { code, out, err } = await loomwright(...words);
    expect(err).toContain(said);
    expect(out).toBe("");
    expect(code).toBe(2);
  });

  test.each([
    ["help", "diff"],
    ["diff", "--help"],
    ["--help", "diff"],
    ["diff", "-h"],
  ])("%s %s shows the arguments and options of that command alone", async (...words) => {
    const { code, out } = await loomwright(...words);
    expect(code).toBe(0);
    expect(out).toContain("loomwright diff <revision> [folder]");
    expect(out).toContain("--all");
    expect(out).toContain("the form of the output: text, markdown or json; default text");
    expect(out).not.toMatch(/--page|loomwright check|sarif/);
  });

  test("help and version are commands too", async () => {
    expect((await loomwright("help")).out).toBe((await loomwright("--help")).out);
    expect(await loomwright("version")).toMatchObject({ code: 0, out: `${version}\n` });
  });

  test("--help and --version", async () => {
    expect(await loomwright("--help")).toMatchObject({ code: 0, out: expect.stringContaining("Exit codes") });
    expect(await loomwright()).toMatchObject({ code: 0, out: expect.stringContaining("Usage") });
    expect(await loomwright("--version")).toMatchObject({ code: 0, out: `${version}\n` });
  });
});
