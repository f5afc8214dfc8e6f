import { afterAll, describe, expect, it } from "vitest";
import type { CheckedPlan, CheckOutcome } from "../../server/evaluate/checked-plan.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { Workspace } from "../../server/evaluate/workspace.ts";
import { closeCheckers, expectMarks, filesOf, folder, workspaceOf } from "./marked-plan.ts";

afterAll(closeCheckers);

const problems: Readonly<Record<string, string>> = {
  "an import of Node's": `
import { readFileSync } from "node:fs";
//                           ^^^^^^^^^ error plan/cannot-run "node:fs" cannot be imported
readFileSync("/etc/passwd");
`,
  "an import of a package, of an address, of data": `
import lodash from "lodash";
//                 ^^^^^^^^ error plan/cannot-run "lodash" cannot be imported
import far from "https://example.org/far.js";
//              ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error plan/cannot-run "https://example.org/far.js" cannot be imported
import data from "./data.json";
//               ^^^^^^^^^^^^^ error plan/cannot-run
console.log(lodash, far, data);
`,
  "types from a package are nobody's business": `
import type { Volt } from "units";
import { Ampere } from "more-units";
import { circuit, CircuitInput } from "loomwright";
const lamp: CircuitInput & { volt?: Volt; ampere?: Ampere } = { load: 4, oneWayFt: 3, gauge: 12, protect: 5 };
circuit(lamp);
`,
  "a file that is not there": `
import { fuseA } from "./fuses";
//                    ^^^^^^^^^ error plan/cannot-run The file "./fuses" does not exist
console.log(fuseA);
`,
  "a file outside": `
import { fuseA } from "../outside.ts";
//                    ^^^^^^^^^^^^^^^ error plan/cannot-run "../outside.ts" is outside
console.log(fuseA);
`,
  "a name that the library does not have": `
import { circut } from "loomwright";
//       ^^^^^^ error plan/cannot-run "circut" is not exported there
circut({});
`,
  "a name that another file does not have": `
import { fuseA, fuseB as b } from "./fuses.ts";
//              ^^^^^^^^^^ error plan/cannot-run "fuseB" is not exported there
console.log(fuseA, b);
// file: fuses.ts
export const fuseA = 5;
`,
  "an import inside the plan": `
const { circuit } = await import("loomwright");
//                        ^^^^^^^^^^^^^^^^^^^^ error plan/cannot-run
circuit({});
`,
  "syntax that is more than types": `
import { circuit } from "loomwright";
  enum Size { thin = 16 }
//^^^^^^^^^^^^^^^^^^^^^^^ error plan/cannot-run An enum cannot be used
  namespace Sizes { export const thick = 2 }
//^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error plan/cannot-run A namespace cannot be used
class Lamp { constructor(private load: number) {} }
//                       ^^^^^^^ error plan/cannot-run A property declared among
const load = <number>4;
//           ^^^^^^^^^ error plan/cannot-run A type written before a value
  @sealed class Panel {}
//^^^^^^^ error plan/cannot-run A decorator
circuit({ load, gauge: Size.thin, panel: [Lamp, Panel, Sizes] } as any);
`,
  "an error, at its place": `
import { circuit } from "loomwright";
circuit({ name: "a", load: 4, oneWayFt: 3, gauge: 12, protect: 5 });
const sizes = {} as any;
  circuit({ load: sizes.cabin.load, oneWayFt: 3, gauge: 12, protect: 5 });
//                            ^^^^ error plan/cannot-run The plan stopped here: TypeError
`,
  "an error in a factory of another file": `
import { lamp } from "./lamp.ts";
lamp("galley");
// file: lamp.ts
export function lamp(name: string) {
  throw new Error("no lamp " + name);
//          ^^^^^ error plan/cannot-run The plan stopped here: Error: no lamp galley
}
`,
  "imports in a circle": `
import { circuit } from "loomwright";
import { fuseA } from "./fuses.ts";
export const load = 4;
circuit({ name: "a", load, oneWayFt: 3, gauge: 12, protect: fuseA() });
// file: fuses.ts
import { load } from "./plan.ts";
export const fuseA = () => load + 1;
`,
  "a property that circuit does not have": `
import { circuit } from "loomwright";
circuit({ name: "a", load: 4, oneWayFt: 3, guage: 12, gauge: 12, protect: 5 } as any);
//                                         ^^^^^ error plan/invalid-value
`,
};

describe("what stops a plan is said at its place", () => {
  for (const [name, plan] of Object.entries(problems)) {
    it(name, async () => {
      await expectMarks(plan);
    });
  }
});

const busy = `
import { circuit, build } from "loomwright";
import { base } from "./base.ts";
build({ name: "van", voltage: 12 });
const runs = [{ name: "fridge", load: 6 }, { name: "pump", load: 2 }] as const;
function lamp({ name, load = 2 }: { name: string; load?: number }) {
  try { return circuit({ ...base, name, load }); } catch (error) { throw error; }
}
for (const { name, load } of runs) lamp({ name, load });
runs.map((run, i) => circuit({ ...run, name: \`\${run.name} \${i}\`, oneWayFt: 10, gauge: 12, protect: { ratingA: 10 } }));
const { galley: [first] } = { galley: [{ gauge: 14 }] } as const;
export default circuit({ name: "last", load: 12 / 2, oneWayFt: 3, gauge: first.gauge, protect: runs?.[0]?.load ?? 5 });
// file: base.ts
export const base = { oneWayFt: 4, gauge: "1/0", protect: 5 } as const;
`;

it("every prefix of a plan is checked or held, and ends as a fresh check does", async () => {
  const files = filesOf(busy);
  const uri = `${folder}/plan.ts`;
  const whole = files.get(uri) ?? "";
  const typed = new Map(files);
  const checker = createChecker(workspaceOf(typed), { sandbox: sharedSandbox });
  const fresh = createChecker(workspaceOf(files), { sandbox: sharedSandbox });
  try {
    let held = 0;
    for (let length = 0; length <= whole.length; length++) {
      typed.set(uri, whole.slice(0, length));
      const outcome = await checker.check(uri);
      if (outcome.state === "incomplete") held++;
      else {
        for (const { place } of outcome.findings) expect(place.end).toBeGreaterThanOrEqual(place.start);
        outcome.at(uri, length);
      }
    }
    expect(held).toBeGreaterThan(whole.length / 3);
    expect(summary(await checker.check(uri))).toEqual(summary(await fresh.check(uri)));
  } finally {
    await checker.dispose();
    await fresh.dispose();
  }
});

it("an old plan still knows its places when newer text has been read", async () => {
  const files = filesOf(busy);
  const uri = `${folder}/plan.ts`;
  const whole = files.get(uri) ?? "";
  const checker = createChecker(workspaceOf(files), { sandbox: sharedSandbox });
  try {
    const old = await checker.check(uri);
    if (old.state !== "checked") throw new Error("incomplete");
    const before = places(old);
    files.set(uri, `// one line more\n${whole}`);
    await checker.check(uri);
    files.set(uri, whole.slice(0, 300));
    await checker.check(uri);
    expect(places(old)).toEqual(before);
  } finally {
    await checker.dispose();
  }

  function places(plan: CheckedPlan) {
    return plan.judgement.circuits.map(({ circuit }) => [
      plan.placeOf(circuit.record, ["load"]),
      plan.placeOf(circuit.record, ["protect"]),
      plan.callOf(circuit.record),
    ]);
  }
});

it("the snapshot names files that were looked for and are not there", async () => {
  const files = filesOf('import { fuseA } from "./fuses";\nconsole.log(fuseA);');
  const checker = createChecker(workspaceOf(files), { sandbox: sharedSandbox });
  try {
    const plan = await checker.check(`${folder}/plan.ts`);
    expect(plan.snapshot.has(`${folder}/fuses.ts`)).toBe(true);
    expect(plan.snapshot.get(`${folder}/fuses.ts`)).toBeUndefined();
    files.set(`${folder}/fuses.ts`, "export const fuseA = 5;");
    const again = await checker.check(`${folder}/plan.ts`);
    expect(again.state === "checked" && again.judgement.problems).toEqual([]);
  } finally {
    await checker.dispose();
  }
});

it("unnamed circuits go by their variable, their property, or their line", async () => {
  const plan = await expectMarks(`
import { circuit } from "loomwright";
const all = { load: 4, oneWayFt: 3, gauge: 12, protect: 5 } as const;
const pump = circuit(all);
export const lights = { bow: circuit({ ...all }) as unknown, stern: (circuit({ ...all })) };
circuit({ ...all });
const lamp = () => circuit({ ...all });
const galley = lamp();
lamp();
for (let i = 0; i < 2; i++) lamp();
`);
  expect(plan.judgement.circuits.map(({ circuit }) => circuit.name)).toEqual([
    "pump",
    "bow",
    "stern",
    "plan.ts line 6",
    "galley",
    "plan.ts line 9",
    "plan.ts line 10",
    "plan.ts line 10 no. 2",
  ]);
});

describe("roots", () => {
  const files = new Map([
    [`${folder}/van.ts`, 'import { circuit } from "loomwright";\nimport "./galley";'],
    [
      `${folder}/galley.ts`,
      'import { circuit } from "loomwright";\nimport { a } from "./sizes";\nconsole.log(a);',
    ],
    [`${folder}/sizes.ts`, "export const a = 1;"],
    [`${folder}/one.ts`, 'import { circuit } from "loomwright";\nimport "./two";'],
    [`${folder}/two.ts`, 'import { circuit } from "loomwright";\nimport "./one";'],
    [`${folder}/typed.ts`, 'import { circuit } from "loomwright";\nimport type { Van } from "./van.ts";'],
    [`${folder}/about.ts`, "// says loomwright, and does not import it"],
  ]);
  const opened: string[] = [];
  const workspace: Workspace = {
    ...workspaceOf(files),
    read(uri) {
      opened.push(uri);
      return workspaceOf(files).read(uri);
    },
  };

  it("are plan files that no other imports; of a circle, the first", async () => {
    const checker = createChecker(workspace);
    expect(checker.roots()).toEqual(["one.ts", "typed.ts", "van.ts"].map((name) => `${folder}/${name}`));
    expect(checker.rootsOf(`${folder}/sizes.ts`)).toEqual([`${folder}/van.ts`]);
    expect(checker.rootsOf(`${folder}/two.ts`)).toEqual([`${folder}/one.ts`]);
    expect(checker.rootsOf(`${folder}/about.ts`)).toEqual([]);
    files.set(`${folder}/galley.ts`, 'import { circuit } from "loomwright";');
    expect(checker.rootsOf(`${folder}/sizes.ts`)).toEqual([]);
    files.set(`${folder}/van.ts`, 'import { circuit } from "loomwright";');
    expect(checker.rootsOf(`${folder}/galley.ts`)).toEqual([`${folder}/galley.ts`]);
    await checker.dispose();
  });
});

function summary(plan: CheckOutcome) {
  if (plan.state !== "checked") return plan.state;
  return plan.findings.map(({ place, message, subjects, related }) => ({
    place,
    message,
    subjects,
    related,
  }));
}
