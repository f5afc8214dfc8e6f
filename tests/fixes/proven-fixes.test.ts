import { afterAll, describe, expect, it } from "vitest";
import type { Change } from "../../library/rules/finding.ts";
import type { CheckedPlan } from "../../server/evaluate/checked-plan.ts";
import { checkFiles, closeCheckers, filesOf } from "../provenance/marked-plan.ts";
import { applyEdits } from "./apply-edits.ts";

afterAll(closeCheckers);

/**
 * Plans with faults of many kinds, written in many ways. The number of fixable findings ensures that the test proves something.
 */
const plans: Readonly<
  Record<string, { readonly plan: string; readonly fixable: number; readonly left: number }>
> = {
  "one run, too thin and too strongly fused": {
    plan: `circuit({ load: 40, oneWayFt: 15, gauge: 12, protect: 50 });`,
    fixable: 3,
    left: 0,
  },
  "no protection": {
    plan: `circuit({ name: "a", load: 4, oneWayFt: 3, gauge: 12 });`,
    fixable: 1,
    left: 0,
  },
  "no protection, over several lines": {
    plan: `circuit({\n  name: "a",\n  load: 4, // the pump\n  oneWayFt: 3,\n  gauge: 12, // left over\n});`,
    fixable: 1,
    left: 0,
  },
  "metric, with an object of protection": {
    plan: `circuit({ name: "a", load: 30, oneWayM: 6, mm2: 2.5, protect: { ratingA: 25, family: "ISO 8820-3 Type C" } });`,
    fixable: 2,
    left: 0,
  },
  "constants, spreads and a factory": {
    plan: `
const thin = 16 as const;
const base = { oneWayFt: 20, gauge: thin } as const;
circuit({ ...base, name: "fridge", load: 9, protect: 15 });
const lamp = (name: string, protect: number) => circuit({ name, load: 2, oneWayFt: 10, gauge: 14, protect });
lamp("galley", 5);
lamp("saloon", 60);`,
    fixable: 2,
    left: 0,
  },
  "a factory whose every circuit is wrong": {
    plan: `
const lamp = (name: string) => circuit({ name, load: 12, oneWayFt: 20, gauge: 18, protect: 20 });
lamp("galley");
lamp("saloon");`,
    fixable: 6,
    left: 8,
  },
  "a loop": {
    plan: `for (let i = 1; i < 4; i++) circuit({ name: "lamp " + i, load: 12, oneWayFt: 20, gauge: 16, protect: 20 });`,
    fixable: 2,
    left: 6,
  },
  "a table": {
    plan: `
const runs = [
  { name: "fridge", load: 6, oneWayFt: 25, gauge: 16, protect: 10 },
  { name: "inverter", load: 100, oneWayFt: 4, gauge: 6, protect: 150 },
] as const;
for (const run of runs) circuit(run);`,
    fixable: 2,
    left: 0,
  },
  "a fuse that is not made, and one that is below the load": {
    plan: `
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: 17 });
circuit({ name: "b", load: 20, oneWayFt: 3, gauge: 8, protect: 15 });`,
    fixable: 2,
    left: 0,
  },
  "several files": {
    plan: `
import { fuseA, sizes } from "./sizes.ts";
circuit({ name: "a", load: 20, oneWayFt: 3, gauge: sizes.cabin, protect: fuseA });
// file: sizes.ts
export const sizes = { cabin: 18 } as const;
export const fuseA = 15;`,
    fixable: 3,
    left: 0,
  },
};

describe("every proven fix, checked once more from its edited text", () => {
  for (const [name, { plan: text, fixable, left }] of Object.entries(plans)) {
    it(`${name}: each by itself`, async () => {
      const files = filesOf(`import { circuit } from "loomwright";\n${text}`);
      const { plan, checker } = await checkFiles(files);
      let fixed = 0;
      for (const placed of plan.findings) {
        const fixes = await checker.provenFixes(plan, placed);
        if (fixes.length > 0 && placed.finding.severity !== "hint") fixed++;
        for (const fix of fixes) {
          const after = await checkFiles(applyEdits(files, fix.edits));
          expect(open(after.plan)).not.toContain(keyOf(placed.finding));
          for (const key of open(after.plan)) expect(open(plan)).toContain(key);
        }
      }
      expect(fixed).toBeGreaterThanOrEqual(fixable);
    });

    it(`${name}: all at once`, async () => {
      const files = filesOf(`import { circuit } from "loomwright";\n${text}`);
      const { plan, checker } = await checkFiles(files);
      const all = await checker.fixAll(plan);
      if (left > 0 && !all) {
        expect(open(plan)).toHaveLength(left);
        return;
      }
      expect(all?.kind).toBe("repair");
      const after = await checkFiles(applyEdits(files, all?.edits ?? []));
      expect(open(after.plan)).toHaveLength(left);
      expect(await after.checker.fixAll(after.plan)).toBeUndefined();
    });
  }
});

it("a fix is made against the version that was checked", async () => {
  const files = filesOf(
    'import { circuit } from "loomwright";\ncircuit({ load: 20, oneWayFt: 3, gauge: 8, protect: 15 });',
  );
  const { plan, checker } = await checkFiles(files);
  const [placed] = plan.findings;
  const fixes = placed ? await checker.provenFixes(plan, placed) : [];
  expect(fixes.length).toBeGreaterThan(0);
  for (const { edits } of fixes) {
    for (const { uri, version } of edits) expect(version).toBe(plan.snapshot.get(uri));
  }
});

it("a save takes only repairs that change one record", async () => {
  const files = filesOf(`import { battery, cable, circuit, load } from "loomwright";
const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 4 });
const radio = load({ currentA: 10, critical: true });
cable({ name: "there", from: house.positive, to: radio.positive, lengthFt: 20, gauge: 14, protect: 15 });
cable({ name: "back", from: radio.negative, to: house.negative, lengthFt: 20, gauge: 14 });
circuit({ name: "lamp", load: 10, oneWayFt: 3, gauge: 8, protect: 17 });`);
  const { plan, checker } = await checkFiles(files);
  const drop = plan.findings.find(({ finding }) => finding.rule === "conductor/voltage-drop")!;
  const [both] = await checker.provenFixes(plan, drop);
  expect(both?.kind).toBe("repair");
  expect(both?.edits.map(({ expected }) => expected)).toEqual(["14", "14"]);
  const expectedOf = async (oneRecordEach: boolean) =>
    (await checker.fixAll(plan, { oneRecordEach }))?.edits.map(({ expected }) => expected);
  expect(await expectedOf(false)).toEqual(["14", "14", "17"]);
  expect(await expectedOf(true)).toEqual(["17"]);
}, 30_000);

it("an accepted finding is not fixed with the rest", async () => {
  const files = filesOf(`import { circuit } from "loomwright";
circuit({ load: 10, oneWayFt: 3, gauge: 8, protect: 17, accept: { "protection/standard-rating": "it was in the box" } });`);
  const { plan, checker } = await checkFiles(files);
  expect(plan.findings.map(({ finding }) => finding.accepted)).toContain("it was in the box");
  expect(await checker.fixAll(plan)).toBeUndefined();
});

describe("a value that stands for something else as well is not changed", () => {
  const plans: Readonly<Record<string, string>> = {
    "the length of the same circuit": `
const twelve = 12;
circuit({ load: 40, oneWayFt: twelve, gauge: twelve, protect: 50, insulationC: 75 });`,
    "the load of the same circuit, worked out": `
const size = 14;
circuit({ load: size * 2, oneWayFt: 5, gauge: size, protect: 35, insulationC: 75 });`,
    "the load of another circuit, worked out": `
const size = 12;
circuit({ load: 40, oneWayFt: 5, gauge: size, protect: 50, insulationC: 75 });
circuit({ load: size / 2, oneWayFt: 5, gauge: 8, protect: 10, insulationC: 75 });`,
    "which circuit is made": `
const size = 14;
circuit({ load: 30, oneWayFt: 5, gauge: size, protect: 40, insulationC: 75 });
circuit({ name: size === 14 ? "lamp" : "fan", load: 2, oneWayFt: 5, gauge: 8, protect: 10, insulationC: 75 });`,
  };
  for (const [what, text] of Object.entries(plans)) {
    it(what, async () => {
      const { plan, checker } = await checkFiles(filesOf(`import { circuit } from "loomwright";\n${text}`));
      expect(open(plan)).toContain("conductor/ampacity 0 gauge");
      for (const placed of plan.findings) expect(await checker.provenFixes(plan, placed)).toEqual([]);
      expect(await checker.fixAll(plan)).toBeUndefined();
    });
  }

  it("a size that the text does not show to set another circuit too is a suggestion, and says so", async () => {
    const files = filesOf(`import { circuit } from "loomwright";
const size = 12;
const other = [size].at(0) ?? 4;
circuit({ load: 40, oneWayFt: 5, gauge: size, protect: 50, insulationC: 75 });
circuit({ load: 2, oneWayFt: 5, gauge: other, protect: 10, insulationC: 75 });`);
    const { plan, checker } = await checkFiles(files);
    const placed = plan.findings.find(({ finding }) => finding.rule === "conductor/ampacity");
    const fixes = placed ? await checker.provenFixes(plan, placed) : [];
    expect(fixes.map(({ kind, alsoChanges }) => ({ kind, alsoChanges }))).toEqual([
      { kind: "suggestion", alsoChanges: [1] },
    ]);
    expect(await checker.fixAll(plan)).toBeUndefined();
  });
});

describe("in a network", () => {
  const text = `import { battery, cable, circuit, disconnect, fusePanel } from "loomwright";
const house = battery({ chemistry: "LiFePO4", capacityAh: 200 });
const cutOff = disconnect({ ratedA: 100 });
const panel = fusePanel({ positions: 6, ratedA: 100 });
const feeder = cable({ from: house.positive, to: cutOff.line, lengthFt: 2, gauge: 4 });
const toPanel = cable({ from: cutOff.load, to: panel.feed, lengthFt: 30, gauge: 10 });
const back = cable({ from: panel.negative, to: house.negative, lengthFt: 30, gauge: 10 });
const fridge = circuit({ from: panel.branch, loadW: 60, oneWayFt: 20, gauge: 14, protect: { ratingA: 40, distanceIn: 0, interruptingA: 2000 } });
const heater = circuit({ from: panel.branch, load: 20, oneWayFt: 20, gauge: 10, protect: { ratingA: 25, distanceIn: 0, interruptingA: 2000 } });
`;
  const records = { house: 0, toPanel: 4, back: 5 };

  it("the whole way gets thicker in one fix, or not at all", async () => {
    const files = filesOf(text);
    const { plan, checker } = await checkFiles(files);
    const placed = plan.findings.filter(({ finding }) => finding.rule === "conductor/voltage-drop");
    expect(placed.length).toBeGreaterThan(0);
    const fixes = (await Promise.all(placed.map((one) => checker.provenFixes(plan, one)))).flat();
    const whole = fixes.filter(({ edits }) => edits.length > 1);
    expect(whole.length).toBeGreaterThan(0);
    for (const fix of whole) {
      expect(fix.edits.map(({ expected }) => expected).every((size) => /^\d+$/.test(size))).toBe(true);
      const { plan: after } = await checkFiles(applyEdits(files, fix.edits));
      expect(after.judgement.network?.result.scenarios.every(({ state }) => state === "solved")).toBe(true);
      const worse = after.judgement.findings.filter(
        (finding) => ["error", "warning"].includes(finding.severity) && !open(plan).includes(keyOf(finding)),
      );
      expect(worse).toEqual([]);
    }
  });

  it("all repairs together leave nothing worse, and the network whole", async () => {
    const files = filesOf(text);
    const { plan, checker } = await checkFiles(files);
    const all = await checker.fixAll(plan);
    expect(all?.edits.map(({ expected }) => expected)).toContain("40");
    const { plan: after } = await checkFiles(applyEdits(files, all?.edits ?? []));
    for (const key of open(after)) expect(open(plan)).toContain(key);
    expect(after.judgement.network?.network.conductors).toHaveLength(
      plan.judgement.network?.network.conductors.length ?? 0,
    );
  });

  it.each<[string, Change]>([
    ["a size that is none", { do: "set", record: records.toPanel, path: ["gauge"], value: 5 }],
    ["a part that cannot be read", { do: "set", record: records.house, path: ["capacityAh"], value: -200 }],
    ["an end that is taken away", { do: "remove", record: records.back, path: ["to"] }],
    [
      "a cable at which the voltage collapses",
      { do: "set", record: records.toPanel, path: ["lengthFt"], value: 900 },
    ],
  ])("no change is proved that leaves the network unread or unsolved: %s", async (_, change) => {
    const { plan, checker } = await checkFiles(filesOf(text));
    const fix = { title: "Change it", kind: "suggestion", changes: [change] } as const;
    expect(plan.editsOf(fix)).toBeDefined();
    expect(await checker.provenChange(plan, fix)).toBeUndefined();
  });

  it("a change that does no harm is proved", async () => {
    const { plan, checker } = await checkFiles(filesOf(text));
    const change: Change = { do: "set", record: records.toPanel, path: ["lengthFt"], value: 29 };
    const fix = { title: "Change it", kind: "suggestion", changes: [change] } as const;
    expect(await checker.provenChange(plan, fix)).toMatchObject({
      edits: [{ expected: "30", newText: "29" }],
    });
  });
});

/** The open findings, except hints. */
function open(plan: CheckedPlan): readonly string[] {
  return plan.judgement.findings
    .filter(({ severity, accepted }) => severity !== "hint" && accepted === undefined)
    .map(keyOf);
}

function keyOf({ rule, at }: CheckedPlan["judgement"]["findings"][number]): string {
  return "record" in at ? `${rule} ${at.record} ${at.path[0] ?? ""}` : `${rule} ${at.problem}`;
}
