import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import { testWorld } from "../../library/analysis/energy/world.tester.ts";
import { worstMonth, worstWeek } from "../../library/analysis/energy/worst-week.ts";
import { textWidth } from "../../library/documents/diagram/text-measure.ts";
import { type ChartOf, energyChart } from "../../library/documents/energy/energy-chart.ts";
import { judge } from "../../library/judge.ts";
import type { PlanRecord } from "../../library/model/record.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { blots, type Measure, piecesOf } from "../diagram/pieces-of-svg.ts";

const bank = `
  const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, reservePercent: 20 });
  const plus = busBar({ side: "positive" });
  const minus = busBar({ side: "negative" });
  cable({ from: house.positive, to: plus.stud, lengthM: 1, gauge: "1/0", protect: 250 });
  cable({ from: house.negative, to: minus.stud, lengthM: 1, gauge: "1/0" });
  const on = { from: plus.stud, returnTo: minus.stud, oneWayM: 4, gauge: 12, protect: 15 };`;
const solar = `
  const roof = solarArray({ name: "roof", openCircuitV: 45, shortCircuitA: 11, maxPowerV: 37, maxPowerA: 10.5 });
  const mppt = solarController({ maxInputV: 100, outputA: 30 });
  cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 5, gauge: 10 });
  cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 5, gauge: 10 });
  cable({ from: mppt.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
  cable({ from: mppt.negative, to: minus.stud, lengthM: 1, gauge: 6 });`;
const shore = `
  const quay = shoreCharger({ name: "quay", outputA: 30 });
  cable({ from: quay.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
  cable({ from: quay.negative, to: minus.stud, lengthM: 1, gauge: 6 });`;
const spare = `
  const start = battery({ name: "start", chemistry: "AGM", capacityAh: 90 });
  circuit({ name: "alarm", from: start.positive, returnTo: start.negative, oneWayM: 2, gauge: 12, protect: 5, loadW: 2, use: { hoursPerDay: 24 } });
  cable({ from: start.negative, to: minus.stud, lengthM: 1, gauge: 6 });`;
const loads = (count: number, name = "load with a name as long as builders write") =>
  Array.from(
    { length: count },
    (_, index) =>
      `circuit({ ...on, name: ${JSON.stringify(`${name} ${index}`)}, loadW: ${10 + index}, use: { hoursPerDay: ${1 + (index % 7)}, fromHour: ${(index * 5) % 24}, untilHour: ${(index * 5 + 9) % 24} } });`,
  ).join("\n");

function judged(plan: string) {
  const { records, problems } = runExample(plan);
  expect(problems).toEqual([]);
  return judge(records as readonly PlanRecord[], problems, undefined, testWorld);
}

/** For each bank the months and the worst week. */
function chartsOf(plan: string): readonly ChartOf[] {
  return judged(plan).energy.flatMap((energy) =>
    energy.banks.flatMap((one): ChartOf[] => {
      const week = worstWeek(energy.period, one, worstMonth(one)!)!;
      return [
        { kind: "months", energy, bank: one },
        { kind: "week", energy, bank: one, week },
      ];
    }),
  );
}

const year = 'period({ name: "All year", place: "Tarifa, ES" });';
const plans = {
  "one load": bank + solar + loads(1) + year,
  "20 loads": `${bank + solar + shore + loads(20)} period({ name: "All year", place: "Tarifa, ES", shore: { hoursPerDay: 3 } });`,
  "polar night": `${bank + solar + loads(3)} period({ name: "Polar", latitudeDeg: 78, longitudeDeg: 15, bankHeated: true });`,
  "only shore": `${bank + shore + loads(2)} period({ name: "Quay", place: "Bergen, NO", shore: { hoursPerDay: 2, everyDays: 3 } });`,
  "two banks": bank + spare + solar + loads(2) + year,
  "three months": `${bank + solar + loads(2)} period({ name: "Summer", place: "Bergen, NO", months: ["Jun", "Jul", "Aug"] });`,
  "three days, no hours": `${bank + solar} circuit({ ...on, name: "radio", loadW: 5 }); period({ name: "Silent", place: "Bergen, NO", fromDay: "3 Mar", untilDay: "5 Mar" });`,
  "a great use": `${bank + solar + shore} circuit({ ...on, name: "oven ${"W".repeat(90)}", loadW: 4_000, gauge: 1, oneWayM: 1, protect: 400, use: { hoursPerDay: 24 } }); circuit({ ...on, name: "radio", loadW: 5 }); ${year}`,
};
const measure: Measure = (text, bold) => textWidth(text, 1, bold ? "bold" : "regular");

describe.each(Object.entries(plans))("charts of %s", (_, plan) => {
  const charts = chartsOf(plan);
  const whole = energyChart(charts, "paper");

  test("have no text on another, on a line or off the sheet", () => {
    const pieces = piecesOf(whole.svg.replace(/<defs>.*?<\/defs>/s, ""), measure);
    expect(pieces.texts.length).toBeGreaterThan(20);
    expect(blots(pieces)).toEqual([]);
  });

  test("are XML with a title and a description, without a number that is none", () => {
    const open: string[] = [];
    const parser = new SaxesParser();
    parser.on("opentag", ({ name }) => open.push(name));
    parser.write(whole.svg).close();
    expect(open.slice(0, 3)).toEqual(["svg", "title", "desc"]);
    expect(whole.svg).not.toMatch(/NaN|Infinity|undefined/);
    for (const { energy } of charts) expect(whole.description).toContain(energy.period.name);
  });

  test("say a word for each month and the kind of hours", () => {
    for (const chart of charts) {
      const { svg, description } = energyChart([chart], "paper");
      if (chart.kind === "week") expect(svg).toContain("Solar hours: the sun is highest at 12");
      else expect(description.match(/lowest charge about/g)).toHaveLength(chart.bank.months.length);
    }
  });

  test("have the same bytes again, from a new reading of the plan", () => {
    expect(energyChart(chartsOf(plan), "paper").svg).toBe(whole.svg);
  });
});

test("a source has one pattern in the charts of its bank", () => {
  const { svg } = energyChart(chartsOf(plans["20 loads"]), "paper");
  const patternBefore = (name: string) =>
    [...svg.matchAll(new RegExp(`fill="(url[^"]+)"[^>]*/><text[^>]*>${name}`, "g"))].map(([, fill]) => fill);
  expect(new Set(patternBefore("quay")).size).toBe(1);
  expect(patternBefore("quay")).toHaveLength(2);
  expect(patternBefore("roof")[0]).not.toBe(patternBefore("quay")[0]);
});

test("the picture for the screen states no colour of its own", () => {
  const { svg } = energyChart(chartsOf(plans["one load"]), "screen");
  expect(svg).not.toMatch(/#[0-9a-f]{3}/i);
  expect(svg).toContain("var(--loomwright-ink, currentColor)");
});
