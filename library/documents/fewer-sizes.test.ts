import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sampledRuns } from "../../tests/setup/sampled.ts";
import { crossSectionMm2 } from "../analysis/copper-area.ts";
import { sizesAbove } from "../analysis/made-sizes.ts";
import { type Judgement, judge } from "../judge.ts";
import type { PlanRecord } from "../model/record.ts";
import { sizeInWords } from "../rules/fixes/sized-fix.ts";
import { runExample } from "../rules/page.tester.ts";
import { type FewerSizes, fewerSizes, fewerSizesTable } from "./fewer-sizes.ts";

const records = (code: string) => {
  const { records, problems } = runExample(code);
  if (problems.length > 0) throw new Error(JSON.stringify(problems));
  return records;
};

const judged = (plan: readonly PlanRecord[]) => judge(plan, []);

/** The suggestion for a plan, and the number of engine runs it took. */
function suggested(plan: readonly PlanRecord[]): {
  readonly found: FewerSizes | undefined;
  readonly asked: number;
} {
  let asked = 0;
  const found = fewerSizes(plan, judged(plan), (changed) => {
    asked++;
    return judged(changed);
  });
  return { found, asked };
}

const inShort = (found: FewerSizes | undefined) =>
  found && {
    keeps: found.keeps.map(sizeInWords),
    changes: found.changes.map(({ name, from, to }) => `${name}: ${sizeInWords(from)} → ${sizeInWords(to)}`),
  };

const lamps = `
circuit({ name: "Lamp", load: 2, oneWayFt: 10, gauge: 16, protect: 5 });
circuit({ name: "Fan", load: 4, oneWayFt: 10, gauge: 14, protect: 7.5 });
circuit({ name: "Heater", load: 15, oneWayFt: 10, gauge: 12, protect: 20 });
circuit({ name: "Stove", load: 45, oneWayFt: 10, gauge: 6, protect: 60 });
`;

describe("the fewest sizes", () => {
  it("serve every circuit with its own size or a thicker one", () => {
    const plan = records(lamps);
    const { found, asked } = suggested(plan);
    expect(inShort(found)).toEqual({
      keeps: ["12 AWG", "6 AWG"],
      changes: ["Lamp: 16 AWG → 12 AWG", "Fan: 14 AWG → 12 AWG"],
    });
    expect(found).toMatchObject({ provedBy: "judged", stoppedEarly: false, triedWays: 2 });
    expect(asked).toBe(2);
    // Two conductors of 10 ft and 10 %, 100 mm at each end, up to the next inch: 3.5528 m become 3.556 m.
    expect(found?.changes.map(({ lengthM }) => lengthM)).toEqual([
      expect.closeTo(7.112, 9),
      expect.closeTo(7.112, 9),
    ]);
    // 12 AWG is 3.309 mm², 14 AWG 2.081 mm², 16 AWG 1.309 mm² (ASTM B258, by its formula); a litre of copper is 8.89 kg.
    expect(found?.extraCopperKg).toBeCloseTo((7.112 * (3.309 - 1.309 + 3.309 - 2.081) * 8.89) / 1000, 3);
    expect(
      found?.extraLengthBySize.map(({ size, lengthM }) => [sizeInWords(size), Math.round(lengthM * 1000)]),
    ).toEqual([
      ["16 AWG", -7112],
      ["14 AWG", -7112],
      ["12 AWG", 14224],
      ["6 AWG", 0],
    ]);
    expect(found?.withMoreSizes.map(({ keeps }) => keeps.map(sizeInWords))).toEqual([
      ["14 AWG", "12 AWG", "6 AWG"],
    ]);
  });

  it.each<[what: string, plan: string, fewest: ReturnType<typeof inShort>]>([
    ["one size", 'circuit({ name: "a", load: 2, oneWayFt: 10, gauge: 16, protect: 5 });', undefined],
    ["no conductor at all", "build({ voltage: 24 });", undefined],
    [
      "sizes too far apart",
      'circuit({ name: "a", load: 2, oneWayFt: 10, gauge: 16, protect: 5 }); circuit({ name: "b", load: 15, oneWayFt: 10, gauge: 10, protect: 20 });',
      undefined,
    ],
    [
      "metric and AWG sizes, each in its own system",
      `circuit({ name: "a", load: 2, oneWayFt: 10, gauge: 16, protect: 5 }); circuit({ name: "b", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
       circuit({ name: "c", load: 2, oneWayM: 3, mm2: 1.5, protect: 5 }); circuit({ name: "d", load: 2, oneWayM: 3, mm2: 2.5, protect: 5 });`,
      { keeps: ["14 AWG", "2.5 mm²"], changes: ["a: 16 AWG → 14 AWG", "c: 1.5 mm² → 2.5 mm²"] },
    ],
    [
      "wires side by side: the size of one of them is what is bought",
      `circuit({ name: "a", load: 80, oneWayFt: 8, gauge: 6, parallel: 2, protect: 100, insulationC: 105 });
       circuit({ name: "b", load: 60, oneWayFt: 8, gauge: 4, protect: 80, insulationC: 105 });`,
      { keeps: ["4 AWG"], changes: ["a: 2 × 6 AWG → 2 × 4 AWG"] },
    ],
    [
      "a lamp in a screw clamp keeps its size",
      'circuit({ name: "a", load: 2, oneWayFt: 10, gauge: 16, protect: 5, termination: "screw clamp" }); circuit({ name: "b", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });',
      undefined,
    ],
    [
      "a lamp on screws may become thicker",
      'circuit({ name: "a", load: 2, oneWayFt: 10, gauge: 16, protect: 5, termination: "M4" }); circuit({ name: "b", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });',
      { keeps: ["14 AWG"], changes: ["a: 16 AWG → 14 AWG"] },
    ],
    ["a network of which a value was refused", `${lamps} busBar({ studs: 0 });`, undefined],
    [
      "a circuit that cannot be judged is left out",
      `${lamps} circuit({ name: "x", load: -1, oneWayFt: 10, gauge: 2, protect: 5 });`,
      { keeps: ["12 AWG", "6 AWG"], changes: ["Lamp: 16 AWG → 12 AWG", "Fan: 14 AWG → 12 AWG"] },
    ],
  ])("of a plan with %s", (_, plan, expected) => {
    expect(inShort(suggested(records(plan)).found)).toEqual(expected);
  });

  it("leave the terminals of a part alone that hold by a clamp, whoever ends there", () => {
    const network = (termination: string) => `
      const house = battery({ chemistry: "LiFePO4", capacityAh: 100 });
      const panel = fusePanel({ positions: 6, termination: "M6", branchTermination: "${termination}" });
      cable({ name: "plus", from: house.positive, to: panel.feed, lengthFt: 3, gauge: 6, protect: 60 });
      cable({ name: "minus", from: panel.negative, to: house.negative, lengthFt: 3, gauge: 6 });
      circuit({ name: "Lamp", from: panel.branch, load: 2, oneWayFt: 10, gauge: 16, protect: 5 });
      circuit({ name: "Fan", from: panel.branch, load: 4, oneWayFt: 10, gauge: 14, protect: 7.5 });`;
    expect(inShort(suggested(records(network("#8"))).found)).toEqual({
      keeps: ["14 AWG", "6 AWG"],
      changes: ["Lamp: 16 AWG → 14 AWG"],
    });
    expect(suggested(records(network("screw clamp"))).found).toBeUndefined();
  });

  it("are not found where a rule speaks against them: a short that a blade fuse could not interrupt any more", () => {
    const boat = (interruptingA: number) => `
      const house = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 4 });
      const panel = fusePanel({ positions: 6 });
      cable({ name: "plus", from: house.positive, to: panel.feed, lengthFt: 12, gauge: 10, protect: 30 });
      cable({ name: "minus", from: panel.negative, to: house.negative, lengthFt: 12, gauge: 10 });
      circuit({ name: "Heater", from: panel.branch, load: 10, oneWayFt: 10, gauge: 6, protect: { ratingA: 15, interruptingA: ${interruptingA} } });`;
    expect(inShort(suggested(records(boat(2_000))).found)).toEqual({
      keeps: ["6 AWG"],
      changes: ["plus: 10 AWG → 6 AWG", "minus: 10 AWG → 6 AWG"],
    });
    expect(suggested(records(boat(1_000)))).toEqual({ found: undefined, asked: 1 });
    // An existing finding does not rule the suggestion out, but is reported as worth another look.
    const { found } = suggested(records(boat(500)));
    expect(found?.keeps.map(sizeInWords)).toEqual(["6 AWG"]);
    expect(found?.notes.join("\n")).toContain(
      "One finding that the plan has already, or that is accepted in it, has other figures with these sizes",
    );
  });

  it("are not looked for where the plan did not run to its end", () => {
    const plan = records(lamps);
    const stopped = judge(plan, [{ rule: "plan/too-slow", limit: "time", allowed: 1000 }]);
    expect(fewerSizes(plan, stopped, judged)).toBeUndefined();
  });
});

it("what a fake engine finds is never let through", () => {
  const plan = records(lamps);
  const before = judged(plan);
  const [template] = judged(records("circuit({ load: 40, oneWayFt: 15, gauge: 16, protect: 50 });")).findings;
  // A circuit may become thicker by only one size: 16 to 14, 14 to 12.
  const picky = (changed: readonly PlanRecord[]): Judgement => {
    const { gauge } = changed[0]!.input as { readonly gauge: number };
    const found = { ...template!, at: { record: 0, path: ["gauge"] } };
    return { ...judged(changed), findings: gauge === 12 ? [...before.findings, found] : before.findings };
  };
  const found = fewerSizes(plan, before, picky);
  expect(inShort(found)).toEqual({
    keeps: ["14 AWG", "12 AWG", "6 AWG"],
    changes: ["Lamp: 16 AWG → 14 AWG"],
  });
  // Fewer results than before prove nothing.
  expect(fewerSizes(plan, before, (changed) => ({ ...judged(changed), circuits: [] }))).toBeUndefined();
});

describe("whatever the plan", () => {
  const gauges = [16, 14, 12, 10, 8] as const;
  const aCircuit = fc.record({
    load: fc.integer({ min: 1, max: 30 }),
    oneWayFt: fc.integer({ min: 3, max: 40 }),
    gauge: fc.constantFrom(...gauges),
    protect: fc.constantFrom(5, 10, 15, 20, 30, 40),
    critical: fc.boolean(),
  });
  const aPlan = fc.array(aCircuit, { minLength: 1, maxLength: 4 }).map((inputs) =>
    inputs.map(
      (input, index): PlanRecord => ({
        word: "circuit",
        input: { ...input, name: `c${index}` },
        fallbackName: "",
      }),
    ),
  );
  const sizes = (plan: readonly PlanRecord[]) =>
    new Set(plan.map(({ input }) => (input as { gauge: number }).gauge)).size;
  const keys = ({ findings }: Judgement) =>
    findings.map(({ rule, severity, subject, at }) => JSON.stringify([rule, severity, subject, at])).sort();

  it("nothing becomes thinner, no size is added, nothing else changes, and nothing new is found", () => {
    let spared = 0;
    fc.assert(
      fc.property(aPlan, (plan) => {
        let last: readonly PlanRecord[] = plan;
        const before = judged(plan);
        const seen = new Map<string, readonly PlanRecord[]>();
        const found = fewerSizes(plan, before, (changed) => {
          last = changed;
          seen.set(JSON.stringify(changed.map(({ input }) => (input as { gauge: number }).gauge)), changed);
          return judged(changed);
        });
        if (!found) return;
        spared++;
        const gauges = plan.map(({ input }) => (input as { gauge: number }).gauge);
        for (const { record, to } of found.changes)
          if (to.system === "awg") gauges[record] = to.awg as number;
        const changed = seen.get(JSON.stringify(gauges)) ?? last;
        expect(found.keeps.length).toBeLessThan(found.uses.length);
        expect(sizes(changed)).toBe(found.keeps.length);
        for (const { from, to } of found.changes) expect(sizesAbove(to, from)).toBeGreaterThan(0);
        const withoutSize = (records: readonly PlanRecord[]) =>
          records.map((record) => ({ ...record, input: { ...(record.input as object), gauge: 0 } }));
        expect(withoutSize(changed)).toEqual(withoutSize(plan));
        const known = new Set(keys(before));
        expect(keys(judged(changed)).filter((key) => !known.has(key))).toEqual([]);
      }),
      { numRuns: sampledRuns(150) },
    );
    expect(spared, "plans that can do with fewer sizes").toBeGreaterThan(sampledRuns(30));
  });

  it("no smaller number of sizes would do, and none as small would do with less copper", () => {
    let spared = 0;
    fc.assert(
      fc.property(aPlan, (plan) => {
        const before = judged(plan);
        const known = new Set(keys(before));
        const inUse = [
          ...new Set(plan.map(({ input }) => (input as { gauge: (typeof gauges)[number] }).gauge)),
        ];
        const copperOf = (records: readonly PlanRecord[]) =>
          judged(records).circuits.reduce(
            (sum, { circuit }) => sum + crossSectionMm2(circuit.conductor) * circuit.positiveM!,
            0,
          );
        // Every combination, by hand: each circuit in each size in use that is at most two thicker.
        let ways: PlanRecord[][] = [[]];
        for (const record of plan) {
          const own = gauges.indexOf((record.input as { gauge: (typeof gauges)[number] }).gauge);
          const might = inUse.filter(
            (gauge) => gauges.indexOf(gauge) >= own && gauges.indexOf(gauge) <= own + 2,
          );
          ways = ways.flatMap((way) =>
            might.map((gauge) => [...way, { ...record, input: { ...(record.input as object), gauge } }]),
          );
        }
        const good = ways.filter((way) => keys(judged(way)).every((key) => known.has(key)));
        const fewest = Math.min(...good.map(sizes));
        const { found } = suggested(plan);
        expect(found?.stoppedEarly ?? false).toBe(false);
        expect(found?.keeps.length ?? inUse.length).toBe(fewest);
        if (!found) return;
        spared++;
        const least = Math.min(...good.filter((way) => sizes(way) === fewest).map(copperOf));
        const taken = plan.map((record, index): PlanRecord => {
          const to = found.changes.find((change) => change.record === index)?.to;
          return to?.system === "awg"
            ? { ...record, input: { ...(record.input as object), gauge: to.awg } }
            : record;
        });
        // The suggestion minimises cut lengths, which differ from the planned ones by the slack.
        expect(copperOf(taken)).toBeLessThanOrEqual(least * 1.05);
      }),
      { numRuns: sampledRuns(60) },
    );
    expect(spared).toBeGreaterThan(sampledRuns(10));
  });
});

it("is a table with a row for each change, and says what was not looked at", () => {
  const plan = records(`${lamps}
    circuit({ name: "Bell", load: 1, oneWayFt: 10, gauge: 16, protect: 5, termination: "6.3 mm tab" });`);
  const table = fewerSizesTable(suggested(plan).found!);
  expect(table.columns.map(({ id, title }) => `${id}: ${title}`)).toEqual([
    "name: Circuit or cable",
    "planned: Planned",
    "instead: Instead",
    "lengthM: Wire together, m",
    "lengthFtIn: Wire together, ft and in",
    "extraCopperKg: More copper, kg",
  ]);
  expect(table.rows.map((row) => row.map((cell) => (typeof cell === "object" ? cell?.text : cell)))).toEqual([
    ["Fan", "14 AWG", "12 AWG", "7.12", "23 ft 4 in", "0.0776"],
  ]);
  expect(table.notes.join("\n")).toMatchInlineSnapshot(`
    "The fewest sizes are 3 instead of 4: 16 AWG, 12 AWG and 6 AWG. That takes 0.0776 kg more copper (8.89 kg/dm³, unconfirmed figure): 23.3 ft of 12 AWG in place of thinner wire.
    The plan with these sizes was checked by the same rules as the plan itself, without a new finding. No conductor becomes thinner, and no fuse or breaker changes.
    No conductor becomes more than 2 standard sizes thicker (common practice, no source). Whether a thicker one fits its terminals, holes and ducts was not checked: look before you buy.
    One circuit or cable keeps its size: the plan does not state the thickest conductor for the screw clamps and tabs.
    This list does not change the plan. If several circuits take their size from one value in the plan, that value may have to be split to follow it."
  `);
});
