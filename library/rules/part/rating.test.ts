import { expect, test } from "vitest";
import { descriptorOfWord, partWords } from "../../model/parts/index.ts";
import { ruleById } from "../registry.ts";
import { testRule } from "../rule.tester.ts";
import { partRating } from "./rating.ts";

/*
 * Expected: a part carries no more than its maker's rating for longer than a moment. No document is needed beside the data sheet
 * that the plan repeats; a relay at 110 % of its rating is no immediate fire, hence a warning.
 */

/** A bank on a relay or shunt, and a load behind it. */
const behind = (part: string, [into, out]: readonly [string, string], load: number, rest = "") => `
  const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
  const tested = ${part};
  cable({ from: house.positive, to: tested.${into}, lengthFt: 2, gauge: "2/0" });
  const oven = circuit({ name: "oven", from: tested.${out}, returnTo: house.negative, load: ${load}, oneWayFt: 5, gauge: 1, protect: 200 });
  ${rest}`;

const cranked = (crankingA: number, through = `shunt({ name: "meter", ratedA: 100 })`) => `
  const start = battery({ chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });
  const starter = starterMotor({ name: "starter", crankingA: ${crankingA} });
  const meter = ${through};
  cable({ from: start.positive, to: starter.positive, lengthFt: 3, gauge: "1/0" });
  cable({ from: starter.negative, to: meter.systemSide, lengthFt: 3, gauge: "1/0" });
  cable({ from: meter.batterySide, to: start.negative, lengthFt: 1, gauge: "1/0" });`;

const plugFor = (ratedA: number) =>
  `part({ name: "plug", terminals: ["batterySide", "systemSide"], joins: [{ between: ["batterySide", "systemSide"] }], ratedA: ${ratedA} })`;

const shuntFor100A = "shunt({ ratedA: 100 })";
const relay = (more: string) =>
  `part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"] }]${more} })`;

testRule(partRating, [
  {
    name: "a shunt exactly at its rating",
    plan: behind(shuntFor100A, ["batterySide", "systemSide"], 100),
    finds: "nothing",
  },
  {
    name: "a shunt just above its rating",
    plan: behind(shuntFor100A, ["batterySide", "systemSide"], 100.1),
    finds: [
      {
        subject: "tested",
        record: "tested",
        on: "ratedA",
        message:
          'This shunt carries 100.1 A in "everything on", and its limit is 100 A (ratedA): use one with a higher limit, or run less at once.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an engine cranked through a shunt with 1.5 times its rating",
    plan: cranked(150),
    finds: "nothing",
  },
  {
    name: "an engine cranked through a shunt with more",
    plan: cranked(151),
    finds: [
      {
        subject: "meter",
        record: "meter",
        on: "ratedA",
        severity: "warning",
        message:
          "This shunt carries 151 A at the start of starter, and its rating is 100 A for hours (ratedA), half as much again for seconds (common practice, no source): use one with a higher rating, or lead the starter past it.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an engine cranked through a shunt with three times its rating",
    plan: cranked(300),
    finds: [{ on: "ratedA", severity: "warning", message: "This shunt carries 300 A", fixes: "no fix" }],
  },
  {
    name: "an engine cranked through a shunt with more than three times its rating",
    plan: cranked(301),
    finds: [{ on: "ratedA", severity: "error", message: "This shunt carries 301 A", fixes: "no fix" }],
  },
  {
    name: "an engine cranked through another part with 1.5 times its rating",
    plan: cranked(150, plugFor(100)),
    finds: "nothing",
  },
  {
    name: "an engine cranked through another part with more",
    plan: cranked(151, plugFor(100)),
    finds: [
      {
        subject: "plug",
        on: "ratedA",
        severity: "warning",
        message:
          "This part carries 151 A at the start of starter, and its rating is 100 A for hours (ratedA), half as much again for seconds",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an engine cranked through another part with more than three times its rating",
    plan: cranked(301, plugFor(100)),
    finds: [{ on: "ratedA", severity: "error", message: "This part carries 301 A", fixes: "no fix" }],
  },
  { name: "a relay at its rating", plan: behind(relay(", ratedA: 80"), ["in", "out"], 80), finds: "nothing" },
  {
    name: "a relay above its rating",
    plan: behind(relay(", ratedA: 80"), ["in", "out"], 120),
    finds: [
      {
        on: "ratedA",
        severity: "error",
        message: 'This part carries 120 A in "everything on", and its limit is 80 A (ratedA)',
        fixes: "no fix",
      },
    ],
  },
  { name: "a relay without a rating", plan: behind(relay(""), ["in", "out"], 120), finds: "nothing" },
  {
    name: "above it at a terminal that is not the first",
    plan: `
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
      const block = part({ terminals: ["lamp", "feed", "oven"], joins: [{ between: ["lamp", "feed"] }, { between: ["feed", "oven"] }], ratedA: 80 });
      cable({ from: house.positive, to: block.feed, lengthFt: 2, gauge: "2/0" });
      circuit({ from: block.lamp, returnTo: house.negative, load: 5, oneWayFt: 5, gauge: 12, protect: 10 });
      circuit({ from: block.oven, returnTo: house.negative, load: 80, oneWayFt: 5, gauge: 1, protect: 100 });`,
    finds: [{ subject: "block", on: "ratedA", message: "This part carries 85 A", fixes: "no fix" }],
  },
  {
    name: "only while a motor starts",
    plan: `
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
      const meter = ${shuntFor100A};
      const windlass = motor({ runningA: 70, startingA: 180 });
      cable({ from: house.negative, to: meter.batterySide, lengthFt: 2, gauge: "2/0" });
      circuit({ from: house.positive, returnTo: meter.systemSide, to: windlass, oneWayFt: 5, gauge: 1, protect: 100 });
      scenario({ name: "start", starting: [windlass] });
      scenario({ name: "run", on: [windlass] });`,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: behind(
      `shunt({ ratedA: 100, accept: { "part/rating": "two minutes a day" } })`,
      ["batterySide", "systemSide"],
      130,
    ),
    finds: [
      {
        on: "ratedA",
        message: "This shunt carries 130 A",
        accepted: "two minutes a day",
        fixes: "no fix",
      },
    ],
  },
]);

test("a limit that another rule judges names a rule that exists", () => {
  const named = partWords.flatMap((word) =>
    Object.values(descriptorOfWord(word).properties).flatMap(({ limitOf }) => limitOf?.judgedBy ?? []),
  );
  expect(named.length).toBeGreaterThan(5);
  expect(named.filter((id) => ruleById(id) === undefined)).toEqual([]);
});
