import { expect, test } from "vitest";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
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
  const noticesWith = (number: string) => wiringSchematic(plan, undefined, () => number).notices;
  expect(noticesWith("7*")).toEqual([expect.stringContaining("loomwright number keeps it")]);
  expect(noticesWith("7")).toEqual([]);
});
