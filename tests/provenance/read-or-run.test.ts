import { afterAll, describe, expect, it } from "vitest";
import { checkFiles, closeCheckers, filesOf } from "./marked-plan.ts";

afterAll(closeCheckers);

/**
 * A circuit whose argument is written out is read in the text; any other is recorded while the plan runs. Wrapped in `[…]`
 * the same call is no statement of its own any more, and is recorded. Both ways must lead to the same records.
 */
const plans: readonly string[] = [
  'circuit({ name: "a", load: 4, oneWayFt: 3, gauge: 12, protect: 5 });',
  'circuit({ load: -4, oneWayFt: 0x10, gauge: "1/0", protect: { ratingA: 1e2, family: "UL 248-15 Class T" }, accept: {} });',
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

const head = 'import { circuit, build } from "loomwright";\n';

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
    invalid: model.invalid,
    findings: findings.map(({ rule, severity, subject, values }) => ({ rule, severity, subject, values })),
  };
}
