import { expect, test } from "vitest";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import { wiresOf } from "./wires.ts";

test("at a panel's bus for the returns, those of its branches end like a branch and the feeder's like the feed", () => {
  const { records, problems } = runExample(`
    const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, termination: "M8" });
    const panel = fusePanel({ name: "panel", positions: 6, termination: "M6", torqueNm: 4, branchTermination: "#8" });
    const other = fusePanel({ name: "other", positions: 6, termination: "M6" });
    cable({ name: "feed", from: bank.positive, to: panel.feed, lengthM: 1, mm2: 16, protect: 60 });
    cable({ name: "return of all", from: panel.negative, to: bank.negative, lengthM: 1, mm2: 16 });
    circuit({ name: "lamp", from: panel.branch, load: 2, oneWayM: 3, mm2: 2.5, protect: 5 });
    circuit({ name: "next panel", from: panel.branch, to: other, oneWayM: 2, mm2: 6, protect: 20 });
  `);
  const ends = wiresOf(judge(records, problems)).map(({ name, role, from, to }) => [
    `${name}, ${role}`,
    `${from.terminal} ${from.termination} ${from.torqueNm}`,
    `${to.terminal} ${to.termination} ${to.torqueNm}`,
  ]);
  expect(ends).toEqual([
    ["feed, cable", "positive M8 undefined", "feed M6 4"],
    ["return of all, cable", "negative M6 4", "negative M8 undefined"],
    ["lamp, positive", "branch #8 undefined", "positive undefined undefined"],
    ["lamp, return", "negative undefined undefined", "negative #8 undefined"],
    ["next panel, positive", "branch #8 undefined", "feed M6 undefined"],
    ["next panel, return", "negative M6 undefined", "negative #8 undefined"],
  ]);
});
