import { describe, expect, test } from "vitest";
import { planUnderCursor } from "./feature.tester.ts";
import { hover } from "./hover.ts";

const hut = `import { battery, build, busBar, cable, circuit, inverter, period, solarArray, solarController } from "loomwright";
build({ insulationC: 105 });
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 100, reservePercent: 20 });
const plus = busBar({ side: "positive" });
const minus = busBar({ side: "negative" });
cable({ from: house.positive, to: plus.stud, lengthM: 2, gauge: 4, protect: 100 });
cable({ from: house.negative, to: minus.stud, lengthM: 2, gauge: 4 });
const on = { from: plus.stud, returnTo: minus.stud, oneWayM: 3, gauge: 12, protect: 15 } as const;
circuit({ ...on, name: "lamp", loadW: 40, use: { hoursPerDay: 6 } });
circuit({ ...on, name: "fan", loadW: 20, use: { hoursPerDay: 12 } });
circuit({ ...on, name: "radio", loadW: 5 });
const ac = inverter({ name: "inverter", continuousW: 500, idleW: 10, devices: [{ name: "laptop", powerW: 60, use: { hoursPerDay: 2 } }] });
circuit({ from: plus.stud, returnTo: minus.stud, to: ac, oneWayM: 1, gauge: 6, protect: 80 });
const roof = solarArray({ name: "roof", openCircuitV: 45, shortCircuitA: 6, maxPowerV: 37, maxPowerA: 5.4 });
const mppt = solarController({ maxInputV: 100, outputA: 30 });
cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 5, gauge: 10 });
cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 5, gauge: 10 });
cable({ from: mppt.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
cable({ from: mppt.negative, to: minus.stud, lengthM: 1, gauge: 6 });
period({ name: "stay [x](command:y)", place: "Tarifa, ES", months: ["Jan", "Jul"] });
`;

async function hoverAt(marked: string, text = hut): Promise<string> {
  const found = text.replace(marked.replace("‸", ""), marked);
  const { view, uri, position } = await planUnderCursor(found);
  const contents = hover(view, uri, position)?.contents;
  return contents && typeof contents === "object" && "value" in contents ? contents.value : "";
}

describe("energy in a hover", () => {
  test("a load: its use a day, its share, the autonomy that it costs", async () => {
    const text = await hoverAt('name: "la‸mp"');
    // 40 W for 6 h, and a little in the wires; of 240 + 240 + 10 × 24 + 120 / 0.9.
    expect(text).toMatch(
      /about \*\*240 Wh a day\*\*, 28 % of the use of house; it costs about \d[\d.]* h of autonomy/,
    );
    expect(text).toContain("Energy in stay \\[x\\]\\(command\\:y\\)");
  });

  test("a load without hours is not in the balance, and says so", async () => {
    expect(await hoverAt('name: "ra‸dio"')).toContain(
      "not in the balance, because the plan does not state how long",
    );
  });

  test("a run of unknown length: its loss is in no figure, and the hovers name it", async () => {
    const without = hut
      .replace("to: plus.stud, lengthM: 2,", 'to: plus.stud, name: "feed",')
      .replace(/circuit\(\{ \.\.\.on, name: "radio".*\n/, "")
      .replace("period({", "period({ notUsed: [],");
    // Commas of a plan's words are escaped.
    const at = async (marked: string) => (await hoverAt(marked, without)).replaceAll("\\", "");
    expect(await at('name: "la‸mp"')).toContain(
      "the loss in its wiring included, without that in feed, whose length is not known",
    );
    expect(await at('solarArray({ name: "ro‸of"')).toContain(
      "the loss in its wiring included, without that in feed, whose length is not known",
    );
    const bank = await at('battery({ name: "ho‸use"');
    expect(bank).toMatch(/\| Jan \| . at best [a-z ]+ \|/);
    expect(bank).toContain("The length of feed is not known: the loss in it is not in these figures");
    expect(await at('period({ notUsed: [], name: "st‸ay')).toContain("The length of feed is not known");
  });

  test("an inverter: its devices and its idle draw, and their sum", async () => {
    const text = await hoverAt('inverter({ name: "inv‸erter"');
    expect(text).toMatch(/- inverter\\, idle: about 240 Wh a day/);
    expect(text).toMatch(/- laptop: about 1[34]0 Wh a day/);
  });

  test("a battery: each month's verdict, lowest charge and autonomy", async () => {
    const text = await hoverAt('battery({ name: "ho‸use"');
    expect(text).toContain("| Month | Verdict | Lowest charge | Autonomy, days |");
    expect(text).toMatch(/\| Jan \| . at best [a-z ]+ \| \d+(\.\d)? % \| 1(\.\d)? \|/);
    expect(text).not.toContain("| Feb |");
  });

  test("an array: its yield by month, and that at the best tilt, which is never less in sum", async () => {
    const text = await hoverAt('solarArray({ name: "ro‸of"');
    const [, tilt] = /best tilt there is about (\d+)°, towards the equator/.exec(text) ?? [];
    expect(Number(tilt)).toBeGreaterThanOrEqual(10);
    expect(Number(tilt)).toBeLessThanOrEqual(40);
    const [january] = [...text.matchAll(/\| Jan \| (\S+) \| (\S+) \|/g)];
    const [, flat, best] = january!.map((figure) => Number(figure.replaceAll(",", "")));
    expect(best!).toBeGreaterThan(1.2 * flat!);
  });

  test("the place: twelve months of sun and air, with their source", async () => {
    const text = await hoverAt('place: "Tar‸ifa, ES"');
    expect(text.match(/^\| [A-Z][a-z]{2} \| /gm)).toHaveLength(12);
    expect(text).toContain("Sun on level ground, kWh/m² a day");
    expect(text).toContain("Satellite-based surface radiation");
    expect(text).toContain("CC BY 4.0");
    // From memory: the south of Spain has about 7.5 kWh/m² a day in July.
    expect(text).toMatch(/\| Jul \| 7(\.\d)? \|/);
  });

  test("own irradiation is said to be the plan's", async () => {
    const own = hut.replace(
      '"Tarifa, ES"',
      '"Tarifa, ES", irradiation: [2, 3, 4, 5, 6, 7, 7, 6, 5, 4, 3, 2]',
    );
    const text = await hoverAt('place: "Tar‸ifa, ES"', own);
    expect(text).toContain("Sun: stated in the plan.");
    expect(text).toContain("| Mar | 4 |");
  });

  test("a period: its verdicts in sentences", async () => {
    expect(await hoverAt("per‸iod({ name")).toContain("The plan states no hours for radio");
  });

  test("a plan without a period says nothing of energy", async () => {
    expect(await hoverAt('name: "la‸mp"', hut.replace(/period\(\{.*\n/, ""))).not.toContain("Energy");
  });
});
