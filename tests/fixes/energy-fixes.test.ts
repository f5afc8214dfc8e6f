import { afterAll, expect, test } from "vitest";
import { askedAnswer } from "../../library/rules/asked-answer.ts";
import { checkFiles, closeCheckers, filesOf } from "../provenance/marked-plan.ts";
import { applyEdits } from "./apply-edits.ts";

afterAll(closeCheckers);

const hut = ({ loadW = 40, place = 'place: "Tarifa, ES"', chargers = "" } = {}) => `
build({ insulationC: 105 });
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 5, reservePercent: 20 });
const off = disconnect({ ratedA: 100 });
const plus = busBar({ side: "positive" });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
cable({ from: house.positive, to: off.line, lengthM: 0.5, gauge: 4, protect: { ...classT, ratingA: 80, distanceIn: 6 } });
cable({ from: off.load, to: plus.stud, lengthM: 0.5, gauge: 4 });
circuit({ from: plus.stud, returnTo: house.negative, oneWayM: 2, gauge: 10, name: "fridge", loadW: ${loadW}, protect: { ...classT, ratingA: 10, distanceIn: 4 }, use: {} });
const roof = solarArray({ openCircuitV: 22, shortCircuitA: 10, maxPowerV: 18, maxPowerA: 9 });
const mppt = solarController({ maxInputV: 100, outputA: 30 });
cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 2, gauge: 4 });
cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 2, gauge: 4 });
cable({ from: mppt.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: { ...classT, ratingA: 40, distanceIn: 4 } });
cable({ from: mppt.negative, to: house.negative, lengthM: 1, gauge: 6 });
${chargers}
const year = period({ name: "year", ${place} });
`;

const mains = `
const mains = shoreCharger({ outputA: 20 });
cable({ from: mains.positive, to: plus.stud, lengthM: 1, gauge: 8, protectFarEnd: { ...classT, ratingA: 25, distanceIn: 4 } });
cable({ from: mains.negative, to: house.negative, lengthM: 1, gauge: 8 });`;

const words =
  "battery, build, busBar, cable, circuit, disconnect, period, shoreCharger, solarArray, solarController";

async function runsShortIn(text: string) {
  const files = filesOf(`import { ${words} } from "loomwright";${text}`);
  const { plan, checker } = await checkFiles(files);
  return {
    files,
    plan,
    checker,
    placed: plan.findings.find(({ finding }) => finding.rule === "energy/runs-short"),
  };
}

test("each single change is proved, written where the plan states it, and alone mends it", async () => {
  const { files, plan, checker, placed } = await runsShortIn(hut({ loadW: 14, chargers: mains }));
  const fixes = await checker.provenFixes(plan, placed!);
  expect(fixes.map(({ kind, edits }) => [kind, edits.map(({ newText }) => newText.trim())])).toEqual([
    ["suggestion", [expect.stringMatching(/^\d+00$/)]],
    ["suggestion", [expect.stringMatching(/^, parallel: \d+$|parallel: \d+,?$/)]],
    ["suggestion", [expect.stringMatching(/shore: \{ hoursPerDay: [\d.]+ \}/)]],
  ]);
  for (const { edits } of fixes) {
    const after = await checkFiles(applyEdits(files, edits));
    expect(after.plan.findings.map(({ finding }) => finding.rule)).not.toContain("energy/runs-short");
  }
  expect(await checker.fixAll(plan)).toBeUndefined();
}, 60_000);

test("of two banks that run short in one period, each has its fixes", async () => {
  const shed = `
const spare = battery({ name: "spare", chemistry: "LiFePO4", capacityAh: 50, internalMilliohm: 5, reservePercent: 20 });
circuit({ from: spare.positive, oneWayM: 2, gauge: 10, name: "bell", load: 0.1, protect: { ...classT, ratingA: 5, distanceIn: 4 }, use: {} });
`;
  const text = hut({ loadW: 14, chargers: shed }).replace(/place: "Tarifa, ES"/, '$&, months: ["Jan"]');
  const { plan, checker } = await runsShortIn(text);
  const short = plan.findings.filter(({ finding }) => finding.rule === "energy/runs-short");
  expect(short.map(({ finding }) => (finding.values as { bank: string }).bank)).toEqual(["house", "spare"]);
  for (const placed of short) expect(await checker.provenFixes(plan, placed)).not.toEqual([]);
});

test("a size that no builder would choose is named, and is no fix", async () => {
  const { plan, checker, placed } = await runsShortIn(hut({ loadW: 17, chargers: mains }));
  const titles = (await checker.provenFixes(plan, placed!)).map(({ title }) => title);
  expect(titles.filter((title) => title.includes("Ah"))).toEqual([]);
  expect(titles).toHaveLength(2);
  expect(askedAnswer(placed!.finding).advice).toMatch(
    /^The least that mends it, each alone: a bank of \d+ Ah; /,
  );
});

test("a larger controller current is a fix where it alone mends it", async () => {
  const text = hut({ loadW: 85 })
    .replace("capacityAh: 100", "capacityAh: 600")
    .replace("maxPowerA: 9 }", "maxPowerA: 9, parallel: 12 }")
    .replace("outputA: 30", "outputA: 20");
  const { files, plan, checker, placed } = await runsShortIn(text);
  const fixes = await checker.provenFixes(plan, placed!);
  const larger = fixes.find(({ title }) => /^Use a controller of \d+ A, rounded up to 5 A$/.test(title));
  expect(larger?.edits.map(({ newText }) => Number(newText))).toEqual([expect.any(Number)]);
  const after = await checkFiles(applyEdits(files, larger!.edits));
  expect(after.plan.findings.map(({ finding }) => finding.rule)).not.toContain("energy/runs-short");
}, 60_000);

test("in a polar winter no single change mends it, and the advice says which sizes were tried", async () => {
  const { plan, checker, placed } = await runsShortIn(hut({ place: "latitudeDeg: 70, longitudeDeg: -150" }));
  expect(await checker.provenFixes(plan, placed!)).toEqual([]);
  expect(askedAnswer(placed!.finding).advice).toBe(
    "No single change mends it, not even a bank of 3,200 Ah or 5,180 W of modules with a controller to match: combine them, use less, or leave out the months that run short.",
  );
});

test("the fixes are worked out only when somebody asks: the finding itself has none", async () => {
  const { placed } = await runsShortIn(hut());
  expect(placed!.finding.fixes).toEqual([]);
});
