import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { CommandTester } from "./command.tester.ts";
import { energyJsonSchema } from "./energy-json.ts";

const project = new CommandTester();

const hut = `import { battery, build, busBar, cable, circuit, inverter, period, shoreCharger, solarArray, solarController } from "loomwright";
build({ insulationC: 105 });
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, reservePercent: 20 });
const plus = busBar({ side: "positive" });
const minus = busBar({ side: "negative" });
cable({ from: house.positive, to: plus.stud, lengthM: 1, gauge: "1/0", protect: 250 });
cable({ from: house.negative, to: minus.stud, lengthM: 1, gauge: "1/0" });
const on = { from: plus.stud, returnTo: minus.stud, oneWayM: 4, gauge: 12, protect: 15 } as const;
const fridge = circuit({ ...on, name: "fridge", loadW: 50, use: { dutyPercent: 40 } });
circuit({ ...on, name: "lights", loadW: 30, use: { hoursPerDay: 4, when: "dark" } });
circuit({ ...on, name: "pump", loadW: 60 });
const ac = inverter({ name: "inverter", continuousW: 1000, idleW: 10, devices: [
  { name: "laptop", powerW: 60, use: { hoursPerDay: 3, fromHour: 18, untilHour: 23 } },
] });
circuit({ from: plus.stud, returnTo: minus.stud, to: ac, oneWayM: 1, gauge: 2, protect: 150 });
const roof = solarArray({ name: "roof", openCircuitV: 45, shortCircuitA: 11, maxPowerV: 37, maxPowerA: 10.5 });
const mppt = solarController({ maxInputV: 100, outputA: 30 });
cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 5, gauge: 10 });
cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 5, gauge: 10 });
cable({ from: mppt.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
cable({ from: mppt.negative, to: minus.stud, lengthM: 1, gauge: 6 });
const shore = shoreCharger({ name: "shore", outputA: 30 });
cable({ from: shore.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
cable({ from: shore.negative, to: minus.stud, lengthM: 1, gauge: 6 });
period({ name: "All year", place: "Tarifa, ES" });
period({ name: "Winter", latitudeDeg: -45, longitudeDeg: 170, months: ["Jun", "Jul"], notUsed: [fridge], shore: { hoursPerDay: 6, everyDays: 3 } });
`;

beforeAll(() => {
  project.write("hut/plan.ts", hut);
  project.write(
    "lone.ts",
    'import { circuit } from "loomwright";\ncircuit({ load: 5, oneWayFt: 5, gauge: 10, protect: 10 });\n',
  );
});
afterAll(() => project.dispose());

const loomwright = (...words: string[]) => project.run(["energy", ...words]);

async function json(...words: string[]) {
  const { out } = await loomwright("hut", "--format", "json", ...words);
  return energyJsonSchema.parse(JSON.parse(out));
}

describe("loomwright energy", () => {
  test("a load that cannot run, and one that no bank feeds, are named beside the figures", async () => {
    const far = `const machine = alternator({ ratedA: 50 });
const far = busBar({ side: "positive" });
cable({ from: machine.positive, to: far.stud, lengthM: 1, gauge: 4, protectFarEnd: 60 });
circuit({ name: "blower", from: far.stud, returnTo: machine.negative, oneWayM: 2, gauge: 12, protect: 15, load: 5, use: { hoursPerDay: 1 } });
circuit({ ...on, name: "heater", loadW: 4_000, oneWayM: 40, gauge: 18, use: { hoursPerDay: 1 } });\n`;
    project.write("far.ts", hut.replace("import { ", "import { alternator, ") + far);
    const { out } = await loomwright("far.ts");
    expect(out).toContain("No voltage exists at which heater can run: nominal power counts");
    expect(out).toContain("No bank feeds blower: not in these figures.");
    const { plans } = energyJsonSchema.parse(
      JSON.parse((await loomwright("far.ts", "--format", "json")).out),
    );
    const [year] = plans[0]!.periods;
    expect([year!.withoutBank, year!.banks[0]!.unsolved]).toEqual([["blower"], ["heater"]]);
  });

  test("a run of unknown length makes every verdict one at best, and is named", async () => {
    const lengthless = hut
      .replace(/circuit\(\{ \.\.\.on, name: "pump".*\n/, "")
      .replace('to: plus.stud, lengthM: 1, gauge: "1/0"', 'name: "feed", to: plus.stud, gauge: "1/0"')
      .replace(
        /shore\.positive, to: plus.stud, lengthM: 1/,
        'shore.positive, name: "shore plus", to: plus.stud',
      );
    project.write("lengthless.ts", lengthless);
    const { out, err } = await loomwright("lengthless.ts");
    expect(err).toBe("");
    expect(out).toMatch(/Jun +● at best keeps up/);
    // Without shore power in the year, its conductor is in none of its figures.
    expect(out).toContain("The length of feed is not known: the loss in it is not in these figures.");
    expect(out).toContain(
      "The lengths of feed and shore plus are not known: the loss in them is not in these figures.",
    );
    expect(out).toContain(
      "the loss in its wiring included, without that in feed, whose length is not known.",
    );
    const { plans } = energyJsonSchema.parse(
      JSON.parse((await loomwright("lengthless.ts", "--format", "json")).out),
    );
    const banks = plans[0]!.periods.map(({ banks: [bank] }) => bank!);
    expect(banks.map(({ withoutLength }) => withoutLength)).toEqual([["feed"], ["feed", "shore plus"]]);
    expect(banks.map(({ withoutHours }) => withoutHours)).toEqual([[], []]);
  });

  test("a bank whose loads state no hours is not judged", async () => {
    project.write(
      "silent.ts",
      hut.replaceAll(/, use: \{[^}]*\}/g, "").replace(/idleW: 10, devices: \[[^\]]*\]/, "loadW: 60"),
    );
    const { out, err } = await loomwright("silent.ts");
    expect(err).toBe("");
    expect(out).toMatch(/Jun +– not judged/);
    expect(out).toContain("All year is not judged: no load of this bank states its hours (use).");
    expect(out).not.toContain("keeps up");
  });

  test("shows each period with its months, its use, the worksheet and the assumptions with their sources", async () => {
    const { code, out, err } = await loomwright("hut");
    expect([code, err]).toEqual([0, ""]);
    for (const title of [
      "All year: house",
      "Winter: house",
      "All year: use",
      "All year: the classic worksheet",
    ])
      expect(out).toContain(title);
    expect(out).toMatch(/Month +Verdict +Use, Wh\/day +Sun, Wh\/day/);
    expect(out).toMatch(/Jun +● at best keeps up/);
    expect(out).toContain("At best: All year: the bank runs short in ");
    expect(out).toContain("The plan states no hours for pump: not in these figures.");
    expect(out).toContain("Tarifa, ES: 36°, -5.6°");
    expect(out).toContain("GeoNames");
    expect(out).toContain("Hours are solar hours");
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  test("the JSON has its published shape, unrounded figures, and adds up", async () => {
    const { plans } = await json();
    const [year, winter] = plans[0]!.periods;
    expect([year!.place, winter!.place]).toEqual(["Tarifa, ES", null]);
    const [bank] = year!.banks;
    expect(bank!.months.map(({ month }) => month)).toEqual(
      "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" "),
    );
    expect(bank!.withoutHours).toEqual(["pump"]);
    const sheet = bank!.worksheet!;
    expect(sheet.loadAhPerDay * sheet.nominalV).toBeCloseTo(sheet.loadWhPerDay, 6);
    expect(sheet.arrayA! * sheet.sunHoursPerDay).toBeCloseTo(sheet.correctedAhPerDay, 6);
    const usesWh = bank!.consumers.map(({ whPerDay }) => whPerDay);
    expect(usesWh.some((wh) => Number(wh.toPrecision(12)) !== wh)).toBe(true);
    // 50 W for 40 % of a day, 30 W for 4 h, 10 W idle, 60 W for 3 h through 90 %: and up to 5 % in the wires.
    const alone = [480, 120, 240, 200];
    const found = ["fridge", "lights", "inverter, idle", "laptop"].map(
      (name) => bank!.consumers.find((consumer) => consumer.name === name)!.whPerDay,
    );
    found.forEach((whPerDay, index) => {
      expect(whPerDay).toBeGreaterThanOrEqual(alone[index]! - 1e-6);
      expect(whPerDay).toBeLessThan(alone[index]! * 1.05);
    });
    for (const month of bank!.months) {
      const { sourcesWhPerDay, useWhPerDay, missingWhPerDay, notTakenWhPerDay, lostWhPerDay, days } = month;
      const kept = sourcesWhPerDay - useWhPerDay + missingWhPerDay - notTakenWhPerDay - lostWhPerDay;
      // The rest is the change of the charge: at most one full bank in the month.
      expect(Math.abs(kept * days)).toBeLessThanOrEqual(bank!.fullWh);
    }
    expect(winter!.banks[0]!.months.map(({ month }) => month)).toEqual(["Jun", "Jul"]);
    expect(winter!.banks[0]!.consumers.map(({ name }) => name)).not.toContain("fridge");
    expect(winter!.banks[0]!.sources.map(({ kind }) => kind)).toEqual(["sun", "shore"]);
    expect(year!.banks[0]!.sources.map(({ kind }) => kind)).toEqual(["sun"]);
    expect(year!.assumptions.every(({ source }) => source.length > 10)).toBe(true);
  });

  test("the least of each change that keeps up, in whole batteries and modules of the plan", async () => {
    const { out } = await loomwright("hut", "--table", "least-changes");
    expect(out).toContain("All year: the least that keeps up");
    expect(out).toMatch(/Bank +200 Ah +\d+00 Ah +the plan's own batteries, 200 Ah/);
    expect(out).toContain("At best: each of them alone, with everything else as it is and the mean sun.");
    expect(out).toContain("The plan has no charger that charges this bank with driving.");
    expect(out).not.toContain("Verdict");
    const { plans } = await json();
    const [bank] = plans[0]!.periods[0]!.banks;
    expect(bank!.leastChanges.map(({ change, stepIs }) => [change, stepIs])).toEqual([
      ["bank", "own"],
      ["array", "own"],
      ["shore", "round"],
    ]);
    for (const { now, least } of bank!.leastChanges) expect(least).toBeGreaterThan(now);
    const csv = await loomwright(
      ...["hut", "--table", "least-changes", "--format", "csv", "--period", "All year"],
    );
    const rows = parse(csv.out, { columns: true, bom: true }) as Record<string, string>[];
    expect(rows.map(({ change, unit }) => [change, unit])).toEqual([
      ["Bank", "Ah"],
      ["Solar array", "W"],
      ["Shore power", "h a day"],
    ]);
  });

  test("where no single change mends it, it says so with the sizes that were tried", async () => {
    project.write(
      "north.ts",
      hut
        .replace('place: "Tarifa, ES"', "latitudeDeg: 70, longitudeDeg: -150")
        .replace(/period\(\{ name: "Winter".*\n/, "")
        .replaceAll(/.*\bshore\b.*\n/g, ""),
    );
    const { out, err } = await loomwright("north.ts", "--table", "least-changes");
    expect(err).toBe("");
    expect(out).toMatch(/Bank +200 Ah +not even 6,400 Ah/);
    expect(out).toContain("no single change mends it: combine them");
    expect(out).toContain("The plan has no charger that charges this bank with driving or shore power.");
  });

  test("the same plan gives the same bytes", async () => {
    const [one, other] = await Promise.all([
      loomwright("hut", "--format", "json"),
      loomwright("hut", "--format", "json"),
    ]);
    expect(one.out).toBe(other.out);
  });

  test("one period as CSV, a row a month", async () => {
    const { out } = await loomwright("hut", "--format", "csv", "--period", "All year");
    const rows = parse(out, { columns: true, bom: true }) as Record<string, string>[];
    expect(rows).toHaveLength(12);
    expect(Object.values(rows[0]!)[0]).toBe("Jan");
    const { code, err } = await loomwright("hut", "--format", "csv");
    expect([code, err.split("\n")[0]]).toEqual([
      2,
      "loomwright: CSV holds one table, and the plan has several periods: name one with --period.",
    ]);
  });

  test.each([
    [
      ["hut", "--period", "Summer"],
      "hut/plan.ts: there is no period 'Summer'; there are 'All year', 'Winter'.",
    ],
    [["lone.ts"], "lone.ts: the plan has no period: period() states where and when you live with it."],
    [["hut", "--format", "xml"], "--format"],
    [["hut", "--table", "sun"], "--table"],
    [["hut", "--format", "json", "--table", "use"], "JSON holds everything"],
  ])("%s is refused", async (words, message) => {
    const { code, out, err } = await loomwright(...words);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(message);
  });

  test("a place that is not clear is left to check", async () => {
    project.write(
      "where.ts",
      hut.replace("Tarifa, ES", "San Fernando").replace(/period\(\{ name: "Winter".*\n/, ""),
    );
    const { code, err } = await loomwright("where.ts");
    expect([code, err]).toEqual([
      2,
      "loomwright: where.ts: the place of 'All year' is not clear; loomwright check reports it.\n",
    ]);
    expect((await project.run(["check", "where.ts"])).out).toContain('7 places are called "San Fernando"');
  });

  test("a plan whose only period has an invalid value is not one without a period", async () => {
    project.write(
      "only.ts",
      hut
        .replace('period({ name: "All year"', 'period({ startPercent: 200, name: "All year"')
        .replace(/period\(\{ name: "Winter".*\n/, ""),
    );
    const { code, err } = await loomwright("only.ts");
    expect([code, err]).toEqual([
      2,
      "loomwright: only.ts: a value of the period 'All year' is invalid; loomwright check names it.\n",
    ]);
  });

  test("a period and a circuit with an invalid value are named, and the others are shown", async () => {
    project.write(
      "half.ts",
      hut
        .replace('name: "fridge"', 'name: "fridge", gauge: 3')
        .replace('period({ name: "Winter"', 'period({ startPercent: 200, name: "Winter"'),
    );
    const { code, out, err } = await loomwright("half.ts");
    expect([code, err]).toEqual([
      2,
      "loomwright: half.ts: a value of the period 'Winter' is invalid; loomwright check names it.\n",
    ]);
    expect(out).toContain("All year: house");
    expect(out).toContain("A value of fridge is invalid: not in these figures, see loomwright check.");
  });

  test("charts go to a file, whole or not at all, and never over one that is not ours", async () => {
    expect((await loomwright("hut", "--out", "chart.svg")).out).toBe(
      "chart.svg: the energy of hut/plan.ts\n",
    );
    const chart = project.read("chart.svg");
    expect(chart).toContain("All year: house, month by month");
    expect(chart).toContain("Winter: house, the worst week of");
    expect((await loomwright("hut", "--out", "chart.svg", "--period", "Winter")).code).toBe(0);
    expect(project.read("chart.svg")).not.toContain("All year");
    project.write("mine.svg", "<svg/>");
    const { code, err } = await loomwright("hut", "--out", "mine.svg");
    expect(code).toBe(2);
    expect(err).toContain(
      "no chart was written: mine.svg was not made by Loomwright; only --force overwrites it",
    );
    expect(project.read("mine.svg")).toBe("<svg/>");
  });

  test("the month of the worst week can be chosen", async () => {
    await loomwright("hut", "--out", "june.svg", "--month", "Jun");
    expect(project.read("june.svg")).toContain("All year: house, the worst week of Jun");
    const { code, err } = await loomwright("hut", "--out", "x.svg", "--month", "Mar", "--period", "Winter");
    expect([code, err]).toEqual([
      2,
      "loomwright: hut/plan.ts: no chart was written: Mar is in none of these periods.\n",
    ]);
    expect((await loomwright("hut", "--month", "Jun")).err).toContain(
      "--month is for charts: say where with --out.",
    );
    expect((await loomwright("hut", "--out", "x.svg", "--format", "csv")).err).toContain(
      "--format is for the figures",
    );
  });
});
