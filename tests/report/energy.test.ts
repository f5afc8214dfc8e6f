import { describe, expect, test } from "vitest";
import { chapterOf, reported, rowsOf, tableOf, wordsOf, wordsOfBlock } from "./reported-plan.ts";

const hut = (period: string, use = "use: { hoursPerDay: 6 }") =>
  `import { battery, build, busBar, cable, circuit, period, solarArray, solarController } from "loomwright";
build({ name: "hut", insulationC: 105 });
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 100, reservePercent: 20 });
const plus = busBar({ side: "positive" });
const minus = busBar({ side: "negative" });
cable({ from: house.positive, to: plus.stud, lengthM: 2, gauge: 4, protect: 100 });
cable({ from: house.negative, to: minus.stud, lengthM: 2, gauge: 4 });
circuit({ name: "lamp", from: plus.stud, returnTo: minus.stud, oneWayM: 3, gauge: 12, protect: 15, loadW: 40, ${use} });
const roof = solarArray({ name: "roof", openCircuitV: 45, shortCircuitA: 6, maxPowerV: 37, maxPowerA: 5.4 });
const mppt = solarController({ maxInputV: 100, outputA: 30 });
cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 5, gauge: 10 });
cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 5, gauge: 10 });
cable({ from: mppt.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
cable({ from: mppt.negative, to: minus.stud, lengthM: 1, gauge: 6 });
${period}
`;
const winter = 'period({ name: "Winter", place: "Bergen, NO", months: ["Dec", "Jan"] });';

describe("the chapter on energy", () => {
  test("has the months, both charts, the worksheet, the assumptions with numbered sources, and the attribution", async () => {
    const content = await reported(hut(winter));
    const blocks = chapterOf(content, "energy");
    expect(rowsOf(tableOf(content, "months"))).toEqual([
      expect.stringMatching(/^Dec \| . short on average too \| 240 /),
      expect.stringMatching(/^Jan \| . short on average too \| 240 /),
    ]);
    const captions = blocks.flatMap((block) => (block.kind === "figure" ? [block.caption] : []));
    expect(captions).toEqual([
      "Winter, house: month by month",
      expect.stringMatching(/^Winter, house: the worst week/),
    ]);
    const words = blocks.flatMap(wordsOfBlock).join("\n");
    expect(words).toContain("GeoNames (geonames.org), Creative Commons Attribution 4.0");
    expect(words).toContain("Hours are solar hours");
    expect(words).toContain("A verdict is no promise");
    expect(words).not.toMatch(/\bsafe\b|NaN|undefined/i);
    const assumptions = rowsOf(tableOf(content, "energy-assumptions-1"));
    expect(assumptions).toContainEqual(
      expect.stringMatching(/^Charge efficiency \| 95 % of the energy \| .*common practice/),
    );
    expect(assumptions).toContainEqual(expect.stringMatching(/^Place \| Bergen, NO: .* \[S\d+\] \| read$/));
    expect(assumptions.map((row) => row.split(" | ")[0])).not.toContain("Reserve");
  });

  test("has a worksheet that can be redone by hand, from its own figures", async () => {
    const content = await reported(hut(winter));
    const value = new Map(
      rowsOf(tableOf(content, "worksheet")).map((row) => {
        const [step, , figure] = row.split(" | ");
        return [step!, Number(figure!.replaceAll(",", ""))];
      }),
    );
    const of = (step: string) => value.get(step)!;
    const nearly = (found: number, expected: number) =>
      expect(Math.abs(found / expected - 1)).toBeLessThan(0.02);
    nearly(of("c"), of("a") / of("b"));
    nearly(of("f"), of("c") / of("d") / of("e"));
    nearly(of("h"), of("f") / of("g"));
    nearly(of("l"), ((of("c") / of("d")) * of("i") * of("k")) / of("j"));
    nearly(of("m"), (of("f") * of("i") * of("k")) / of("j"));
  });

  test("is not there for a plan without a period, in either edition", async () => {
    for (const edition of ["inspector", "bench"] as const)
      expect(wordsOf(await reported(hut(""), edition))).not.toContain("Energy");
  });

  test("is not taken to the bench", async () => {
    const content = await reported(hut(winter), "bench");
    expect(() => chapterOf(content, "energy")).toThrow("there is no chapter");
  });
});

describe("energy that was not judged is said before everything else", () => {
  test.each([
    [
      "a place that is not clear",
      hut('period({ name: "stay", place: "San Fernando" });'),
      /^The energy of "stay" was not judged, because its place is not clear\.$/,
    ],
    [
      "loads without hours",
      hut(winter, ""),
      /^Whether the bank keeps up in "Winter" was not judged: no load of a bank states how long it runs\.$/,
    ],
    [
      "a network that cannot be read",
      hut(winter).replace("capacityAh: 100", "capacityAh: -100"),
      /^The energy of "Winter" was not judged, because the network was not read\.$/,
    ],
  ])("%s", async (_, text, expected) => {
    for (const edition of ["inspector", "bench"] as const) {
      const content = await reported(text, edition);
      const [first] = chapterOf(content, edition === "bench" ? "before-work" : "summary");
      expect(first?.kind === "notice" && first.lines).toContainEqual(expect.stringMatching(expected));
    }
  });
});
