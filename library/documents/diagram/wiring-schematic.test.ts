import { describe, expect, test } from "vitest";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import { drawDiagram } from "./draw-diagram.ts";
import { layOut } from "./lay-out.ts";
import { oneLineSchematic } from "./one-line-schematic.ts";
import { readingOrder } from "./reading-order.ts";
import type { Schematic } from "./schematic.ts";
import { wiringSchematic } from "./wiring-schematic.ts";

test("a link has the polarity of the poles that it joins, and one in series has none of its own", () => {
  const { records, problems } = runExample(`
    build({ voltage: 24 });
    const [one, two, three, four] = ["one", "two", "three", "four"].map((name) =>
      battery({ name, chemistry: "AGM", nominalV: 12, capacityAh: 100 }));
    const bus = busBar({ name: "bus", side: "positive" });
    cable({ name: "first link", from: one.positive, to: two.negative, lengthM: 0.3, mm2: 35 });
    cable({ name: "second link", from: three.positive, to: four.negative, lengthM: 0.3, mm2: 35 });
    cable({ name: "across the top", from: two.positive, to: four.positive, lengthM: 0.3, mm2: 35 });
    cable({ name: "across the bottom", from: one.negative, to: three.negative, lengthM: 0.3, mm2: 35 });
    cable({ name: "to the bus", from: two.positive, to: bus.stud, lengthM: 1, mm2: 35, protect: 100 });
    circuit({ name: "lamp", from: bus.stud, returnTo: one.negative, load: 2, oneWayM: 3, mm2: 2.5, protect: 5 });
  `);
  const { lines } = wiringSchematic(judge(records, problems), undefined);
  expect(Object.fromEntries(lines.map(({ name, polarity }) => [name, polarity]))).toEqual({
    "first link": "link",
    "second link": "link",
    "across the top": "positive",
    "across the bottom": "negative",
    "to the bus": "positive",
    lamp: "positive",
    "lamp, return": "negative",
  });
});

test("a number that may still change is explained in the picture, and only then", () => {
  const { records, problems } = runExample(
    `circuit({ name: "lamp", load: 2, oneWayM: 3, mm2: 2.5, protect: 5 });`,
  );
  const plan = judge(records, problems);
  const noticesWith = (number: string) => wiringSchematic(plan, undefined, { numbers: () => number }).notices;
  expect(noticesWith("7*")).toEqual([expect.stringContaining("loomwright number keeps it")]);
  expect(noticesWith("7")).toEqual([]);
});

describe("figures that need a length that is not known", () => {
  const schematicOf = (feed: string, second = "") => {
    const { records, problems } = runExample(`
      build({ voltage: 12, insulationC: 105 });
      const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
      const bus = busBar({ name: "bus", side: "positive" });
      const minus = busBar({ name: "minus", side: "negative" });
      cable({ name: "feed", from: house.positive, to: bus.stud, ${feed} mm2: 35, protect: 100 });
      ${second}
      cable({ name: "back", from: house.negative, to: minus.stud, lengthM: 1, mm2: 35 });
      circuit({ name: "lamp", from: bus.stud, returnTo: minus.stud, load: 5, oneWayM: 3, mm2: 2.5, protect: 10 });
      scenario({ name: "evening" });
    `);
    const { parts, lines } = wiringSchematic(judge(records, problems), 0);
    const wordsOf = (name: string) => parts.find((part) => part.name === name)?.words.at(-1);
    const dataOf = (name: string) => lines.find((line) => line.name === name)?.data;
    return { wordsOf, dataOf };
  };

  test("are shown with every length", () => {
    const { wordsOf, dataOf } = schematicOf("lengthM: 1,");
    expect(wordsOf("lamp")).toMatch(/^1[23]\.\d+ V$/);
    expect(wordsOf("house")).toMatch(/^1[23]\.\d+ V · gives 5 A$/);
    expect(dataOf("feed")).toMatch(/ · 5 A$/);
  });

  test("a voltage is not known behind the length that is left out, and is before it", () => {
    const { wordsOf, dataOf } = schematicOf("");
    expect(wordsOf("lamp")).toBe("voltage not known: no length of feed");
    expect(wordsOf("house")).toMatch(/^1[23]\.\d+ V · gives 5 A$/);
    expect(dataOf("feed")).toMatch(/length not known · 5 A$/);
  });

  test("currents of two cables side by side are not known without the length of one", () => {
    const second = `cable({ name: "second feed", from: house.positive, to: bus.stud, lengthM: 1, mm2: 35, protect: 100 });`;
    const { wordsOf, dataOf } = schematicOf("", second);
    expect(dataOf("feed")).toMatch(/length not known · current not known$/);
    expect(dataOf("second feed")).toMatch(/1 m · current not known$/);
    expect(dataOf("back")).toMatch(/ · 5 A$/);
    expect(wordsOf("lamp")).toBe("voltage not known: no length of feed");
    expect(wordsOf("house")).toMatch(/ V · gives 5 A$/);
  });

  test("the currents of two batteries are not known without the length of one lead", () => {
    const second = `
      const other = battery({ name: "other", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
      cable({ name: "other feed", from: other.positive, to: bus.stud, lengthM: 1, mm2: 35, protect: 100 });
      cable({ name: "other back", from: other.negative, to: minus.stud, lengthM: 1, mm2: 35 });`;
    const { wordsOf, dataOf } = schematicOf("", second);
    expect(wordsOf("house")).toBe("voltage and current not known: no length of feed");
    expect(wordsOf("other")).toBe("voltage and current not known: no length of feed");
    expect(dataOf("other feed")).toMatch(/ · current not known$/);
  });
});

describe("a fuse or breaker that is mounted on a terminal", () => {
  const { records, problems } = runExample(`
    build({ voltage: 12 });
    const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
    const main = fuseHolder({ name: "main", ratingA: 200, on: house.positive });
    const back = breaker({ name: "back", ratingA: 200, interruptingA: 10_000, on: house.negative });
    const panel = fusePanel({ name: "panel", positions: 6 });
    const pumpBreaker = breaker({ name: "pump breaker", ratingA: 5, on: panel.branch });
    cable({ name: "feed", from: main.load, to: panel.feed, lengthM: 1, mm2: 70 });
    cable({ name: "panel return", from: panel.negative, to: back.load, lengthM: 1, mm2: 70 });
    circuit({ name: "pump", from: pumpBreaker.load, returnTo: panel.negative, load: 10, oneWayM: 2, mm2: 2.5 });
  `);
  const plan = judge(records, problems);
  const wiring = wiringSchematic(plan, undefined, { numbers: () => "7" });
  const mountingsOf = ({ parts, lines }: Schematic) =>
    lines
      .filter(({ isMounting }) => isMounting)
      .map(
        ({ from, to, polarity, number, data }) =>
          `${parts[from.part]!.name} ${from.terminal}, ${parts[to.part]!.name} ${to.terminal}: ${polarity}${number}${data}`,
      );

  test("a line without number and data connects it, in both views", () => {
    expect(mountingsOf(wiring)).toEqual([
      "house positive, main line: positive",
      "house negative, back line: negative",
      "panel branch, pump breaker line: positive",
    ]);
    const oneLine = oneLineSchematic(wiring);
    expect(mountingsOf(oneLine)).toEqual([
      "house positive, main line: positive",
      "panel branch, pump breaker line: positive",
    ]);
    expect(oneLine.parts.map(({ name }) => name)).not.toContain("back");
  });

  test("it is read behind the part that it is on", () => {
    for (const { isMounting, forward } of wiring.lines) if (isMounting) expect(forward).toBe(true);
    const order = readingOrder(wiring).map((part) => wiring.parts[part]!.name);
    expect(order.indexOf("main")).toBe(order.indexOf("house") + 1);
    expect(order.indexOf("pump breaker")).toBeGreaterThan(order.indexOf("panel"));
  });

  test("its findings and its terminal are in its description", () => {
    const breaker = wiring.parts.find(({ name }) => name === "pump breaker")!;
    expect(breaker.symbol).toBe("breaker");
    expect(breaker.found.length).toBeGreaterThan(0);
    expect(breaker.description).toMatch(/^pump breaker: breaker, 5 A, mounted on panel \(branch\)\. /);
    for (const { message } of breaker.found) expect(breaker.description).toContain(message);
  });

  test.each(["wiring", "one-line"] as const)("%s: the drawn line touches both parts", async (view) => {
    const outcome = await drawDiagram(plan, { view, medium: "screen" }, layOut);
    if (!outcome.drawn) throw new Error(outcome.why);
    const { svg, elements, description } = outcome.drawing;
    const boxOf = (called: string) =>
      elements.find(({ kind, name }) => kind === "part" && name === called)!.box;
    const drawn = [...svg.matchAll(/<g class="loomwright-mounting [^>]*>.*<\/g>/g)].map(([group]) =>
      [...group.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const),
    );
    const joined = [
      ["house", "main"],
      ...(view === "wiring" ? [["house", "back"]] : []),
      ["panel", "pump breaker"],
    ] as const;
    expect(drawn).toHaveLength(joined.length);
    for (const [index, names] of joined.entries())
      for (const name of names) {
        const { x, y, width, height } = boxOf(name!);
        const touches = drawn[index]!.some(
          ([atX, atY]) => atX >= x - 1 && atX <= x + width + 1 && atY >= y - 1 && atY <= y + height + 1,
        );
        expect([name, touches]).toEqual([name, true]);
      }
    expect(description).toContain(view === "wiring" ? "4 conductors" : "2 lines");
    expect(elements.filter(({ kind }) => kind === "conductor")).toHaveLength(view === "wiring" ? 4 : 2);
  });
});
