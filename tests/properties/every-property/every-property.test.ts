import { describe, expect, test } from "vitest";
import type { Judgement } from "../../../library/judge.ts";
import { sampled } from "../../setup/sampled.ts";
import { type Case, cases, kindsOfCircuit } from "./cases.ts";
import { judgedWith } from "./plans.ts";
import { propertyPaths } from "./property-paths.ts";
import { figuresOf, findingsOf, looksDifferent } from "./shown.ts";

/*
 * No property is accepted and does nothing: each one, changed in a plan in which it matters, changes something that the builder
 * sees. The list of properties comes from the tables by which plans are read, so a new one fails until it has a case.
 */

test("every property of every function has a case, and every case a property", () => {
  const known = new Set(cases.map(({ property }) => property));
  expect(propertyPaths.filter((path) => !known.has(path))).toEqual([]);
  const isOf = (path: string, property: string) => path === property || path.startsWith(`${property}.`);
  const unknown = [...known].filter((path) => !propertyPaths.some((property) => isOf(path, property)));
  expect(unknown).toEqual([]);
});

test.each(Object.entries(kindsOfCircuit))("every property of a circuit has a case %s", (_, of) => {
  const known = new Set(of.map(({ property }) => property));
  expect(propertyPaths.filter((path) => path.startsWith("circuit.") && !known.has(path))).toEqual([]);
});

const ofThisRun = sampled("changes of a property", cases);

describe("a change of", () => {
  test.each(ofThisRun.map((one) => [labelOf(one), one] as const))("%s", (_, one) => {
    const { effect, plan, at, values, given } = one;
    const [before, after] = [values[0], values[1]].map((value) =>
      judgedWith(plan, given, { [at]: value }),
    ) as [Judgement, Judgement];
    const isRefused = ({ model }: Judgement) => model.invalid.length > 0;
    expect([before, after].map(isRefused)).toEqual([false, effect === "refused"]);
    if (effect === "refused") return;
    if (typeof effect === "object") {
      expect(findingsOf(before, effect.finding)).not.toEqual(findingsOf(after, effect.finding));
      return;
    }
    expect({ isShown: looksDifferent(before, after) }).toEqual({ isShown: true });
    if (effect === "figures") expect(figuresOf(before)).not.toEqual(figuresOf(after));
  });
});

function labelOf({ property, at, effect }: Case): string {
  const by = typeof effect === "object" ? effect.finding : effect;
  return `${property} at ${at.split(".")[0]}: ${by}`;
}
