import fc from "fast-check";
import { expect, test } from "vitest";
import { sampledRuns } from "../../tests/setup/sampled.ts";
import { judge } from "../judge.ts";
import type { Side } from "../model/parts/define-part.ts";
import { descriptorOfWord } from "../model/parts/index.ts";
import { type PlanRecord, type Word, words } from "../model/record.ts";
import { sampleParts } from "../model/sample-parts.tester.ts";
import { isPartWord } from "../model/terminals.ts";
import { ruleById } from "./registry.ts";

/** Each kind of part with its terminals on the positive, on the negative, and on either side. */
const kinds = words.filter(isPartWord).flatMap((word) =>
  sampleParts[word].map((input): PartKind => {
    const { terminals, sides: statedSides } = descriptorOfWord(word);
    const sides =
      statedSides?.(input as object) ??
      Object.entries(terminals).map(([name, { side }]) => [name, side] as const);
    const on = (side: Side) => sides.flatMap(([name, own]) => (own === side ? [name] : []));
    return { word, input, plus: on("positive"), minus: on("negative"), either: on("either") };
  }),
);

/** Rules about the topology of a network, and about the ratings of its parts. */
const aboutParts = /^(network|bus|panel|part|disconnect|shunt|battery)\//;
/**
 * Those of them that need no current and no bank, only the connections. The wires do not always determine which batteries form a
 * string, if several are connected in no sensible way; then the first in the plan is taken.
 */
const aboutJoints = /^(network\/(no-return|two-grounds|unconnected)|bus\/studs)$/;

interface PartKind {
  readonly word: Word;
  readonly input: object;
  readonly plus: readonly string[];
  readonly minus: readonly string[];
  readonly either: readonly string[];
}

/** Parts of any kind, and cables between any terminals that the DSL lets connect, sensible or not. */
const anyNetwork = fc
  .record({
    parts: fc.array(fc.constantFrom(...kinds), { minLength: 1, maxLength: 12 }),
    cables: fc.array(
      fc.record({
        side: fc.constantFrom("plus" as const, "minus" as const),
        from: fc.nat(),
        to: fc.nat(),
        lengthFt: fc.integer({ min: 1, max: 20 }),
        gauge: fc.constantFrom(14, 6, "2/0"),
        protect: fc.constantFrom(undefined, 15, { ratingA: 40, family: "circuit breaker" }),
      }),
      { maxLength: 30 },
    ),
  })
  .map(({ parts, cables }): readonly PlanRecord[] => {
    const terminalsOn = (side: "plus" | "minus") =>
      parts.flatMap(({ word, [side]: own, either }, part) =>
        [...own, ...either].map((terminal) => ({ kind: "terminal", part, of: word, terminal })),
      );
    const record = (word: Word, input: object, index: number) => ({
      word,
      input,
      fallbackName: `${word} ${index}`,
    });
    return [
      ...parts.map(({ word, input }, index) => record(word, input, index)),
      ...cables.flatMap(({ side, from, to, protect, ...size }, index) => {
        const terminals = terminalsOn(side);
        const ends = { from: terminals[from % terminals.length], to: terminals[to % terminals.length] };
        return terminals.length === 0 || ends.from === ends.to
          ? []
          : [record("cable", { ...ends, ...size, ...(protect === undefined ? {} : { protect }) }, index)];
      }),
    ];
  });

test("every message, on any network, is one plain sentence or two of numbers that mean something", () => {
  const spoken = new Set<string>();
  fc.assert(
    fc.property(anyNetwork, (records) => {
      const findings = judge(records, []).findings.filter(({ rule }) => aboutParts.test(rule));
      for (const finding of findings) {
        spoken.add(finding.rule);
        const message = ruleById(finding.rule)!.message(finding.values);
        expect(message).not.toMatch(/undefined|NaN|Infinity|∞|\[object|\d\.\d{10,}/);
        expect(message).toMatch(/^[A-Za-z0-9].*[.?]$/);
        expect(message.length).toBeLessThan(300);
        for (const { text } of finding.related) expect(text).not.toMatch(/undefined|NaN|\[object/);
      }
    }),
    { numRuns: sampledRuns(600), seed: 8 },
  );
  // The seed is fixed, so the number of rules with findings is not a matter of luck.
  expect(spoken.size).toBeGreaterThan(8);
});

test("the order of the statements changes nothing of how a network is found to hang together", () => {
  fc.assert(
    fc.property(anyNetwork, (records) => {
      expect(complaints(turnedRound(records))).toEqual(complaints(records));
    }),
    { numRuns: sampledRuns(300) },
  );
});

/** The same plan with its statements in reverse order; terminals follow their parts. */
function turnedRound(records: readonly PlanRecord[]): readonly PlanRecord[] {
  const last = records.length - 1;
  const moved = ({ part, ...terminal }: { readonly part: number }) => ({ ...terminal, part: last - part });
  return [...records].reverse().map((record) => {
    const input = record.input as {
      readonly from: { readonly part: number };
      readonly to: { readonly part: number };
    };
    return record.word === "cable"
      ? { ...record, input: { ...input, from: moved(input.from), to: moved(input.to) } }
      : record;
  });
}

/** The rules with findings, and their severities. The choice among equal places, and so the number of findings, may differ. */
function complaints(records: readonly PlanRecord[]): readonly string[] {
  const findings = judge(records, []).findings.filter(({ rule }) => aboutJoints.test(rule));
  return [...new Set(findings.map(({ rule, severity }) => `${rule} ${severity}`))].sort();
}
