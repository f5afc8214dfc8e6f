import { readFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { cautions, planningAid } from "../../library/documents/report/cautions.ts";
import { notCheckedToday, whatIsChecked } from "../../library/documents/report/not-checked.ts";
import type { ReportContent } from "../../library/documents/report/report-content.ts";
import { isInGroup, ruleGroups } from "../../library/documents/report/rule-groups.ts";
import { rules } from "../../library/rules/registry.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import { chapterOf, reported, reportedOf, rowsOf, tableOf, wordsOf, wordsOfBlock } from "./reported-plan.ts";

const house = new URL("../../", import.meta.url);
const one = `import { circuit } from "loomwright";
circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: 50, name: "winch" });
`;

describe("one circuit", () => {
  let content: ReportContent;
  beforeAll(async () => {
    content = await reported(one);
  });

  // By hand, as in library/documents/derivation.test.ts: Table 5 gives 125 A for 4 AWG of 75 °C; 30 + 45 · (40/125)² = 34.6 °C;
  // 0.322 V over the round trip, 2.68 % of 12 V.
  test("has its figures beside their limits", () => {
    expect(rowsOf(tableOf(content, "circuits"))).toEqual([
      "winch | 4 AWG, 75 °C taken | 15 ft | 40 | 125 | 85 | 34.6 | 0.322 | 2.68 | 10 | 50 A | 40 to 125 | F1",
    ]);
  });

  test("reads, without the lists of rules and sources, as it was read by eye", async () => {
    const chapters = [
      "summary",
      "runs",
      "network",
      "findings",
      "accepted",
      "assumptions",
      "not-checked",
      "cautions",
    ];
    const text = chapters.map((id) =>
      [`== ${id}`, ...chapterOf(content, id).flatMap(wordsOfBlock)].join("\n"),
    );
    await expect(`${text.join("\n\n")}\n`).toMatchFileSnapshot("one-circuit.txt");
  });

  test("the same again is the same", async () => {
    expect(await reported(one)).toEqual(content);
  });
});

describe("what was taken because nobody states it", () => {
  const taken = async (text: string) => rowsOf(tableOf(await reported(text), "assumptions-runs"));

  test("all of it is there, each with how it is known", async () => {
    expect(await taken(one)).toEqual([
      "Nominal voltage of the build | 12 V | if neither a circuit nor a battery states its own | common practice, no source",
      "Insulation | rated 75 °C, or the next cooler column of the table | winch | common practice, no source",
      "Temperature of the place, AWG sizes | 30 °C | winch | two boat-wiring suppliers' explanation; the table prints no ambient",
      "Other loaded conductors beside one | none but the run's own | winch | common practice, no source",
      "Duration of a load | continuous, which raises the rating of its fuse | winch | common practice, no source",
      "Sheath | none | winch | common practice, no source",
      "Start of a circuit that names none | a bus bar or a panel, not a battery | winch | common practice, no source",
      "Feed of such a circuit | from one end | winch | common practice, no source",
      "Limit of drop elsewhere | 10 % | winch | common practice, no source",
      "Conductor | annealed copper, finely stranded | all runs | the conductor of the tables of currents and resistances",
      expect.stringMatching(
        /^Strands longer .* \| 1.02 times the resistance of solid wire \| winch \| NFPA 70 .* \[S\d+\], read$/,
      ),
      "Fuses, contacts, lugs, switches | 0 Ω | everywhere | common practice, no source",
    ]);
  });

  test("what the plan states is not among it", async () => {
    const stated = `import { build, circuit } from "loomwright";
build({ name: "shed", voltage: 12, insulationC: 105, ambientC: 40, dropPercent: 5, continuous: true });
circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5, bundledWith: 3, sheathed: true, fromBattery: true, fedFromBothEnds: true });
`;
    const names = (await taken(stated)).map((row) => row.split(" | ")[0]);
    expect(names).toEqual([
      "Conductor",
      "Strands longer than the conductor, AWG sizes",
      "Fuses, contacts, lugs, switches",
    ]);
  });
});

describe("what could not be judged stands before everything else", () => {
  const cases: readonly (readonly [string, string, RegExp])[] = [
    [
      "a network that cannot be read",
      `import { battery, circuit, fusePanel } from "loomwright";
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: -100 });
const panel = fusePanel({ name: "panel", positions: 4 });
circuit({ name: "feed", from: bank.positive, to: panel, returnTo: bank.negative, oneWayFt: 3, gauge: 4, protect: 60 });
circuit({ name: "lamp", from: panel.branch, load: 2, oneWayFt: 9, gauge: 14, protect: 5 });
`,
      /^The network was not judged as a whole: a value of it is invalid \(F1\), so its currents, voltages and faults are unknown\. Size, fuse and ampacity of its circuits and cables are judged by the stated load and by single devices; its parts are not judged\.$/,
    ],
    [
      "a circuit that cannot be read",
      `${one}circuit({ name: "lamp", load: -2, oneWayFt: 9, gauge: 14, protect: 5 });\n`,
      /^Not judged at all, because a value of it is invalid \(F\d+\): lamp\.$/,
    ],
    [
      "a place too hot for the insulation",
      `${one}circuit({ name: "stove", load: 2, oneWayFt: 9, gauge: 14, protect: 5, insulationC: 60, ambientC: 70 });\n`,
      /^Ampacity was not judged, because the place is too hot for its insulation: stove\.$/,
    ],
  ];

  test.each(cases)("%s", async (_, text, expected) => {
    const content = await reported(text);
    const [first] = chapterOf(content, "summary");
    expect(first).toMatchObject({ kind: "notice", title: "Not judged in this plan" });
    expect(first?.kind === "notice" && first.lines).toContainEqual(expect.stringMatching(expected));
  });

  test("nothing is said there of a plan that was judged as a whole", async () => {
    const [first] = chapterOf(await reported(one), "summary");
    expect(first?.kind).toBe("paragraph");
  });
});

test("findings that follow from another one are listed under it, except those about ampacity and fuses", async () => {
  const content = await reported(`
import { battery, build, busBar, cable, circuit } from "loomwright";
build({ voltage: 24, insulationC: 105 });
const figures = { chemistry: "AGM", capacityAh: 100, internalMilliohm: 8, maxDischargeA: 300 } as const;
const plus = busBar({ name: "plus", side: "positive", ratedA: 250 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 250 });
const bank = battery({ ...figures, name: "bank", nominalV: 24 });
const spare = battery({ ...figures, name: "spare", nominalV: 12 });
for (const { positive, negative } of [bank, spare]) {
  cable({ from: positive, to: plus.stud, lengthFt: 2, gauge: 2, protect: 100 });
  cable({ from: negative, to: minus.stud, lengthFt: 2, gauge: 2 });
}
circuit({ name: "fans", from: plus.stud, returnTo: minus.stud, load: 60, oneWayFt: 5, gauge: 4, protect: 80 });
`);
  const findings = chapterOf(content, "findings").flatMap((block) =>
    block.kind === "finding" ? [block] : [],
  );
  const cause = findings.find(({ rule }) => rule === "battery/unlike");
  const under = cause?.following?.findings.map(({ rule, subject }) => `${rule} ${subject}`) ?? [];
  expect(under).toEqual(expect.arrayContaining(["bus/rating plus", "battery/discharge-current bank"]));
  expect(cause?.following?.title).toBe(`${under.length} findings follow from it:`);
  const [ampacity] = findings.filter(({ rule }) => rule === "conductor/ampacity");
  expect(ampacity?.followsFrom).toBe(`battery/unlike at spare (${cause?.number})`);
  // Folded ones are counted all the same.
  const facts = chapterOf(content, "summary").flatMap((block) => (block.kind === "facts" ? block.facts : []));
  const numbers = findings.flatMap((one) => [one, ...(one.following?.findings ?? [])]);
  const warnings = numbers.filter(({ severity }) => severity === "warning").length;
  expect(facts.find(({ name }) => name === "Findings")?.value).toContain(`${warnings} warnings`);
  expect(new Set(numbers.map(({ number }) => number)).size).toBe(numbers.length);
});

test("an accepted finding stands in its own chapter, with the reason, and counts as accepted", async () => {
  const content = await reported(`import { circuit } from "loomwright";
circuit({ name: "anchor light", load: 2, oneWayFt: 40, gauge: 16, insulationC: 105, critical: true, protect: 3,
  accept: { "conductor/voltage-drop": "LED lamp, works down to 9 V" } });
`);
  const [accepted] = chapterOf(content, "accepted").filter(({ kind }) => kind === "finding");
  expect(accepted).toMatchObject({
    number: "A1",
    rule: "conductor/voltage-drop",
    accepted: "LED lamp, works down to 9 V",
    place: "plan.ts:2",
  });
  expect(
    chapterOf(content, "findings").some((block) => block.kind === "finding" && block.number === "A1"),
  ).toBe(false);
  expect(wordsOf(content)).toContain("Accepted, with a reason: 1");
});

test("the cautions and the limits are those of the README", () => {
  const readme = readFileSync(new URL("README.md", house), "utf8").replaceAll("`", "");
  const chapter = (title: string) => readme.split(`\n## ${title}\n`)[1]?.split("\n## ")[0] ?? "";
  const bullets = (text: string) =>
    text.split("\n").flatMap((line) => (line.startsWith("- ") ? [line.slice(2)] : []));
  expect(bullets(chapter("Cautions"))).toEqual(cautions);
  for (const sentence of planningAid) expect(chapter("Cautions")).toContain(`\n${sentence}\n`);
  expect(bullets(chapter("Limits"))).toEqual(notCheckedToday);
  for (const sentence of whatIsChecked) expect(chapter("Limits")).toContain(`\n${sentence}\n`);
});

test("an interrupting rating that is stated for less voltage than the circuit has is listed as not judged", async () => {
  const content = await reported(`import { battery, circuit } from "loomwright";
const bank = battery({ chemistry: "AGM", nominalV: 24, capacityAh: 100, internalMilliohm: 20 });
const protect = { ratingA: 10, family: "circuit breaker", interruptingA: 5_000, interruptingAtV: 12, ratedV: 30 } as const;
circuit({ name: "lamp", from: bank.positive, load: 4, oneWayFt: 3, gauge: 14, protect });
circuit({ name: "fan", from: bank.positive, load: 4, oneWayFt: 3, gauge: 14, protect: { ...protect, interruptingAtV: 24 } });
`);
  const words = chapterOf(content, "not-checked").flatMap(wordsOfBlock).join("\n");
  expect(words).toMatch(
    /at the voltage of its circuit: it is stated for less \(interruptingAtV\)[^\n]*lamp \(10 A\)/,
  );
  expect(words).not.toMatch(/interruptingAtV[^\n]*fan/);
});

test("fuses and breakers that are parts of their own are counted, shown, and listed if a figure of theirs is missing", async () => {
  const content =
    await reported(`import { battery, breaker, cable, circuit, fuseHolder, fusePanel } from "loomwright";
const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
const main = fuseHolder({ ratingA: 100, ratedV: 58, milliohm: 0.5, on: house.positive });
const panel = fusePanel({ positions: 6 });
const lampBreaker = breaker({ ratingA: 10, interruptingA: 10_000, openingTimes: [{ atPercent: 200, withinS: 60 }], on: panel.branch });
cable({ name: "feed", from: main.load, to: panel.feed, lengthM: 1, mm2: 35 });
cable({ name: "back", from: panel.negative, to: house.negative, lengthM: 1, mm2: 35 });
circuit({ name: "lamp", from: lampBreaker.load, returnTo: panel.negative, load: 4, oneWayM: 3, mm2: 2.5 });
`);
  const rowsWith = (id: string, start: string) =>
    rowsOf(tableOf(content, id)).filter((row) => row.startsWith(start));
  expect(rowsWith("checked", "Fuses and breakers")[0]).toContain("| 3 runs, 2 parts |");
  expect(rowsWith("checked", "Conductors")[0]).toContain("| 3 runs |");
  expect(rowsWith("limit-figures", "Rating of a device against its")).toEqual([
    expect.stringContaining("| 2 devices |"),
    expect.stringContaining("| 2 devices |"),
  ]);
  expect(rowsWith("limit-figures", "Voltage rating")[0]).toContain("| 2 devices |");
  expect(rowsWith("ratings", "main")[0]).toMatch(/^main \| fuse holder \| carries \| 4 \| .* \| 100 \| 96 /);
  expect(rowsWith("ratings", "lampBreaker")[0]).toMatch(
    /^lampBreaker \| breaker \| carries \| 4 .* \| 10 \| 6 /,
  );
  expect(rowsWith("cables", "feed")[0]).toContain("| 100 A: main |");
  expect(rowsWith("circuits", "lamp")[0]).toContain("| 10 A, circuit breaker: lampBreaker |");
  expect(rowsWith("shorts", "main | 100 A | house")[0]).toMatch(/\| not known \|/);
  expect(rowsWith("shorts", "lampBreaker | 10 A, circuit breaker | house")[0]).toContain("| 10,000 |");
  const silent = chapterOf(content, "not-checked").flatMap(wordsOfBlock);
  const about = (start: string) => silent.find((line) => line.startsWith(start));
  expect(about("Interrupting rating")).toMatch(/: main \(100 A\)$/);
  expect(about("Opening time")).toMatch(/: main \(100 A\)$/);
  expect(about("Distance of a fuse")).toBeUndefined();
  expect(rowsWith("assumptions-runs", "Fuses, contacts")[0]).toContain("everywhere except in main");
  expect(wordsOf(content).join("\n")).toContain("inductance of the cable, except the resistance of main.");
});

test("fuses and contacts are taken as 0 Ω except in every part that has a resistance", async () => {
  const content = await reported(`import { battery, cable, circuit, part, shunt } from "loomwright";
const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
const meter = shunt({ ratedA: 100 });
const plug = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"], milliohm: 2 }] });
const link = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"] }] });
cable({ name: "feed", from: house.positive, to: plug.in, lengthM: 1, mm2: 35, protect: 100 });
cable({ name: "on", from: plug.out, to: link.in, lengthM: 1, mm2: 35 });
cable({ name: "back", from: meter.systemSide, to: house.negative, lengthM: 1, mm2: 35 });
circuit({ name: "lamp", from: link.out, returnTo: meter.batterySide, load: 4, oneWayM: 3, mm2: 2.5, protect: 10 });
`);
  const taken = rowsOf(tableOf(content, "assumptions-runs")).filter((row) =>
    row.startsWith("Fuses, contacts"),
  );
  expect(taken).toEqual([expect.stringContaining("| everywhere except in meter; plug |")]);
  expect(wordsOf(content).join("\n")).toContain(
    "inductance of the cable, except the resistance of meter and plug.",
  );
});

test("every rule is counted in exactly one line of the summary", () => {
  for (const { id } of rules)
    expect([id, ruleGroups.filter((group) => isInGroup(group, id)).length]).toEqual([id, 1]);
});

describe("the examples", () => {
  const examples = new URL("examples/", house);
  const workspace = diskWorkspace([examples.href]);
  const checker = createChecker(workspace, { sandbox: sharedSandbox });
  afterAll(() => checker.dispose());

  const files = [
    "first-circuit/plan.ts",
    "camper-draft/camper.ts",
    "library-bus/bus.ts",
    "rangers-hut/hut.ts",
    "river-launch/launch.ts",
    "faulty-workshop/workshop.ts",
    "faulty-workshop/pumping-station.ts",
    "faulty-workshop/roof.ts",
    "faulty-workshop/yard.ts",
  ];

  describe.each(files)("%s", (file) => {
    let content: ReportContent;
    let findings: readonly { readonly finding: { readonly accepted?: string }; readonly message: string }[];

    beforeAll(async () => {
      const plan = await checker.check(pathToFileURL(fileURLToPath(new URL(file, examples))).href);
      if (plan.state !== "checked") throw new Error("half typed");
      findings = plan.findings;
      content = await reportedOf(plan, workspace);
    });

    test("every finding is in it once, the accepted ones among themselves", () => {
      const shown = (chapter: string) =>
        chapterOf(content, chapter).flatMap((block) =>
          block.kind === "finding"
            ? [block.message, ...(block.following?.findings.map(({ message }) => message) ?? [])]
            : [],
        );
      const told = (accepted: boolean) =>
        findings
          .filter(({ finding }) => (finding.accepted !== undefined) === accepted)
          .map(({ message }) => message);
      expect([...shown("findings")].sort()).toEqual(told(false).sort());
      expect([...shown("accepted")].sort()).toEqual(told(true).sort());
    });

    test("it never calls anything safe", () => {
      expect(wordsOf(content).filter((words) => /\b(un)?safe\b/i.test(words))).toEqual([]);
    });

    test("every source that is cited stands in the list, and every one in the list is cited", () => {
      const list = tableOf(content, "sources");
      const elsewhere = content.blocks.filter((block) => !(block.kind === "table" && block.table === list));
      const cited = elsewhere.flatMap(wordsOfBlock).flatMap((words) => words.match(/\[S\d+\]/g) ?? []);
      const listed = list.rows.map(([number]) => `[${number}]`);
      expect(new Set(listed).size).toBe(listed.length);
      expect([...new Set(cited)].sort()).toEqual([...listed].sort());
    });

    test("headings are numbered in order and go by one name each", () => {
      const headings = content.blocks.flatMap((block) => (block.kind === "heading" ? [block] : []));
      let [chapter, section] = [0, 0];
      for (const { level, number } of headings) {
        [chapter, section] = level === 2 ? [chapter + 1, 0] : [chapter, section + 1];
        expect(number).toBe(level === 2 ? `${chapter}` : `${chapter}.${section}`);
      }
      // One more if the plan has a period, and two if it has surfaces.
      const has = (chapterId: string) => headings.some(({ id }) => id === chapterId);
      expect(chapter).toBe(11 + (has("energy") ? 1 : 0) + (has("boards") ? 2 : 0));
      expect(new Set(headings.map(({ id }) => id)).size).toBe(headings.length);
    });

    test("tables are whole, and none is an empty frame", () => {
      for (const block of content.blocks) {
        if (block.kind !== "table") continue;
        const { id, columns, rows } = block.table;
        expect(rows.length, id).toBeGreaterThan(0);
        for (const row of rows) expect(row.length, id).toBe(columns.length);
        expect(rowsOf(block.table).join("\n"), id).not.toMatch(/NaN|Infinity|undefined/);
      }
    });

    test("every drawing is there, with words for those who cannot see it", () => {
      const figures = content.blocks.flatMap((block) => (block.kind === "figure" ? [block] : []));
      expect(figures.slice(0, 2).map(({ caption }) => caption.split(":")[0])).toEqual([
        "One-line diagram",
        "Wiring diagram",
      ]);
      // The front view of each surface, and of the energy of each period: its months, and its worst week.
      for (const { caption } of figures.slice(2))
        expect(caption).toMatch(/^Front view of .+, to scale$|: (month by month|the worst week)/);
      for (const { description } of figures) expect(description.length).toBeGreaterThan(40);
    });
  });

  test("the pumping station says first in which scenario nothing could be worked out", async () => {
    const plan = await checker.check(new URL("faulty-workshop/pumping-station.ts", examples).href);
    if (plan.state !== "checked") throw new Error("half typed");
    const content = await reportedOf(plan, workspace);
    const [first] = chapterOf(content, "summary");
    expect(first?.kind === "notice" && first.lines[0]).toMatch(
      /^In scenario "the heater on" there is no voltage at which everything could run, first at trough heater \(F\d+\); its currents and voltages are not judged/,
    );
    const [conductors] = rowsOf(tableOf(content, "checked"));
    // Only the finding that the least currents prove: the heater's own drop, accepted in the plan.
    expect(conductors).toMatch(/^Conductors \| .* \| 0 of 5 runs in full \| 1 accepted: A1$/);
    // Its only lasting scenario has no results: all its runs are listed, and none has a figure.
    expect(rowsOf(tableOf(content, "circuits"))).toEqual(
      ["well pump supply", "trough heater supply", "panel feeder", "yard lamp"].map((name) =>
        expect.stringMatching(
          new RegExp(`^${name} \\| .* \\| not worked out \\|  \\|  \\|  \\| not worked out \\|`),
        ),
      ),
    );
    expect(rowsOf(tableOf(content, "assumptions-runs")).join("\n")).toContain(
      "Limit of drop elsewhere | 10 %",
    );
    const row = rowsOf(tableOf(content, "scenarios")).find((cells) => cells.startsWith("the heater on"));
    expect(row).toMatch(/^the heater on \| no: voltage collapse/);
  });
});
