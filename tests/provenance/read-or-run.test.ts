import { afterAll, describe, expect, it } from "vitest";
import { checkFiles, closeCheckers, filesOf } from "./marked-plan.ts";

afterAll(closeCheckers);

/**
 * A circuit whose argument is written out is read from the text; any other is recorded while the plan runs. Wrapped in `[…]`, the
 * same call is no longer a separate statement, and is recorded. Both methods must give the same records.
 */
const plans: readonly string[] = [
  'circuit({ name: "a", load: 4, oneWayFt: 3, gauge: 12, protect: 5 });',
  'circuit({ load: -4, oneWayFt: 0x10, gauge: "1/0", protect: { ratingA: 1e2, family: "UL 248-15 Class T" }, accept: {} });',
  'circuit({ load: 4, oneWayFt: 3, gauge: 12, protect: { ratingA: 5, price: 2.5 }, colour: "red", returnColour: "yellow", label: "A 1", termination: "M4" });',
  'build({ voltage: 24, endSlackIn: 4, slackPercent: 5, positiveColour: "red", currency: "EUR", spools: [{ gauge: 12, lengthFt: 100, price: 30 }, { mm2: 3, lengthM: 1 }] } as any);\ncircuit({ load: 4, oneWayFt: 3, gauge: 12, protect: 5 });',
  "for (const side of [1, 2]) circuit({ load: 4, oneWayFt: 3, gauge: 12, protect: 5 });",
  "if (1 < 2) circuit({ load: 1, oneWayFt: 3, gauge: 12 }); else circuit({ load: 2, oneWayFt: 3, gauge: 12 });",
  "function lamp() { circuit({ load: 4, oneWayFt: 3, gauge: 18 }); }\nlamp();\nlamp();",
  "const lamps = () => { circuit({ load: 4, oneWayFt: 3, gauge: 18 }); build({ voltage: 24 }); };\nlamps();",
  'circuit({ load: 4, load: 5, oneWayFt: 3, gauge: 12, "protect": 5 } as any);',
  'circuit({ load: null, oneWayFt: `3`, gauge: true, surprise: { deep: { down: "x" } } } as any);',
  'circuit({ name: "\\u202e\\n", load: -0, oneWayFt: 1_0.5, gauge: (12), protect: +5 });',
  "class Fleet { static { circuit({ load: 4, oneWayFt: 3, gauge: 12 }); } }",
  "try { circuit({ load: 4, oneWayFt: 3, gauge: 12 }); } finally { circuit({ load: 5, oneWayFt: 3, gauge: 12 }); }",
];

const parts = `const house = battery({ chemistry: "AGM", capacityAh: 100 });
const bus = busBar({ ratedA: 200 });
const fan = load({ powerW: 40 });
const board = surface({ size: { widthMm: 1200, heightMm: 800 } });
`;

/** For a network, read and run alike: each names terminals and parts of {@link parts}, or other values in their place. */
const networks: readonly string[] = [
  "cable({ from: house.positive, to: bus.stud, lengthM: 1, gauge: 4, protect: 100 });",
  "cable({ from: bus.stud, to: house.positive, lengthM: 1, mm2: 16, protect: { ratingA: 60, distanceIn: 4 } });",
  "circuit({ from: bus.stud, returnTo: house.negative, load: 4, oneWayFt: 3, gauge: 12, protect: 5 });",
  "circuit({ from: house.positive, to: fan, oneWayFt: 3, gauge: 12, protect: 5 });",
  "const feeder = cable({ from: house.positive, to: bus.stud, lengthM: 1, gauge: 4 });",
  "function run() { const unused = cable({ from: house.positive, to: bus.stud, lengthM: 1, gauge: 4 }); }\nrun();\nrun();",
  "for (const end of [bus.stud, fan.positive]) cable({ from: house.positive, to: end, lengthM: 1, gauge: 4 });",
  'cable({ from: bus.stud, to: house.positive, lengthM: 1, mm2: 16, protect: { ratingA: 60, price: 4 }, colour: "orange", label: "FEED" });',
  "circuit({ from: bus.stud, returnTo: house.negative, load: 4, oneWayFt: 3, gauge: 12, at: { on: board, leftMm: 10, topMm: 20 } });",
  "circuit({ from: bus.stud, returnTo: house.negative, load: 4, oneWayFt: 3, gauge: 12, at: { on: house, leftMm: 10, topMm: 20 } } as any);",
  "circuit({ from: bus.stud, returnTo: house.negative, load: 4, oneWayFt: 3, gauge: 12, at: { on: board, on: house, leftMm: 10 } } as any);",
  "cable({ from: house, to: bus.stud, lengthM: 1, gauge: 4 } as any);",
  "cable({ from: house.plus, to: bus.missing, lengthM: 1, gauge: 4 } as any);",
  "cable({ from: house.capacityAh, to: house.chemistry, lengthM: 1, gauge: 4 } as any);",
  "const odd = { deep: [NaN] };\ncable({ from: odd, to: odd.deep, lengthM: 1, gauge: 4 } as any);",
  "const f = () => 1;\ncable({ from: f, to: house.toString, lengthM: 1, gauge: 4 } as any);",
  "const forged = { $absent: true };\ncable({ from: forged.$absent, to: bus.stud, lengthM: 1, gauge: 4 } as any);",
  'const text = "x".repeat(5000);\ncable({ from: text, to: bus.stud, lengthM: 1, gauge: 4 } as any);',
];

const head = 'import { battery, build, busBar, cable, circuit, load, surface } from "loomwright";\n';

describe("a circuit that is read is the one that would be recorded", () => {
  for (const plan of plans) {
    it(plan, async () => {
      const recorded = plan.replaceAll(/\b(circuit|build)\((\{.*?\}(?: as any)?)\);/g, "[$1($2)];");
      expect(recorded).not.toBe(plan);
      const [read, run] = await Promise.all([judged(head + plan), judged(head + recorded)]);
      expect(read).toEqual(run);
      expect(read.circuits.length + read.invalid.length).toBeGreaterThan(0);
    });
  }

  for (const network of networks) {
    it(network, async () => {
      const recorded = network.replaceAll(/\b(circuit|cable)\(\{/g, "$1({ ...{},");
      expect(recorded).not.toBe(network);
      const [read, run] = await Promise.all([
        judged(head + parts + network),
        judged(head + parts + recorded),
      ]);
      expect(read).toEqual(run);
      expect(read.conductors + read.invalid.length).toBeGreaterThan(0);
    });
  }
});

it("a name that means something else there is called as ever", async () => {
  const { circuits } = await judged(`${head}
    const each = (circuit: (given: object) => void) => { circuit({ load: 9, oneWayFt: 3, gauge: 12 }); };
    each(({ load }: any) => circuit({ name: "made by hand", load: load + 1, oneWayFt: 3, gauge: 12 }));`);
  expect(circuits.map(({ name, loadA }) => ({ name, loadA }))).toEqual([{ name: "made by hand", loadA: 10 }]);
});

it("a word under another name is read too", async () => {
  const { circuits } = await judged(
    'import { circuit as run } from "loomwright";\nrun({ load: 9, oneWayFt: 3, gauge: 12 });',
  );
  expect(circuits.map(({ loadA }) => loadA)).toEqual([9]);
});

it("an argument is not read where the call is never reached", async () => {
  const { circuits } = await judged(`${head}if (1 > 2) circuit({ load: 9, oneWayFt: 3, gauge: 12 });`);
  expect(circuits).toEqual([]);
});

/** Places differ by the brackets; everything else must not. */
async function judged(text: string) {
  const { plan } = await checkFiles(filesOf(text));
  const { model, findings, problems } = plan.judgement;
  return {
    problems,
    circuits: model.circuits,
    build: model.build,
    layout: model.layout,
    network: model.network,
    conductors: model.network?.conductors.length ?? 0,
    invalid: model.invalid,
    findings: findings.map(({ rule, severity, subject, values }) => ({ rule, severity, subject, values })),
  };
}
