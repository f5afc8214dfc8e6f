import { expect, test } from "vitest";
import { type PairedPlan, pairPlans } from "./pair-plans.ts";

const plan = (path: string, buildName = "", ...names: string[]): PairedPlan => ({
  path,
  buildName,
  names: new Set(names),
});

test.each<[string, PairedPlan[], PairedPlan[], { pairs: string[]; removed: string[]; added: string[] }]>([
  [
    "by path, whatever they are called",
    [plan("a.ts", "boat"), plan("b.ts", "hut")],
    [plan("b.ts", "boat"), plan("a.ts", "hut")],
    { pairs: ["b.ts → b.ts", "a.ts → a.ts"], removed: [], added: [] },
  ],
  [
    "by the build's name",
    [plan("a.ts", "boat")],
    [plan("c/d.ts", "boat")],
    { pairs: ["a.ts → c/d.ts"], removed: [], added: [] },
  ],
  [
    "not by a name that several have",
    [plan("a.ts", "boat"), plan("b.ts", "boat")],
    [plan("c.ts", "boat")],
    { pairs: [], removed: ["a.ts", "b.ts"], added: ["c.ts"] },
  ],
  [
    "by what they are made of, at half and more",
    [plan("a.ts", "", "lamp", "pump")],
    [plan("c.ts", "", "lamp", "pump", "fan", "horn")],
    { pairs: ["a.ts → c.ts"], removed: [], added: [] },
  ],
  [
    "not by less than half",
    [plan("a.ts", "", "lamp", "pump")],
    [plan("c.ts", "", "lamp", "fan", "horn")],
    { pairs: [], removed: ["a.ts"], added: ["c.ts"] },
  ],
  [
    "the most alike of several",
    [plan("a.ts", "", "lamp", "pump"), plan("b.ts", "", "lamp", "fan")],
    [plan("c.ts", "", "lamp", "fan")],
    { pairs: ["b.ts → c.ts"], removed: ["a.ts"], added: [] },
  ],
  ["nothing in common", [plan("a.ts")], [plan("c.ts")], { pairs: [], removed: ["a.ts"], added: ["c.ts"] }],
])("%s", (_, before, after, expected) => {
  const { pairs, removed, added } = pairPlans(before, after);
  expect({
    pairs: pairs.map((pair) => `${pair.before.path} → ${pair.after.path}`),
    removed: removed.map(({ path }) => path),
    added: added.map(({ path }) => path),
  }).toEqual(expected);
});
