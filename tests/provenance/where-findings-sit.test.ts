import { afterAll, describe, expect, it } from "vitest";
import { closeCheckers, expectMarks } from "./marked-plan.ts";

afterAll(closeCheckers);

/*
 * In these plans one value is wrong: a fuse of 17 A, which is not made. The place of the finding shows the detected origin of the
 * fuse's rating.
 */
const plans: Readonly<Record<string, string>> = {
  "a value in the literal": `
import { circuit } from "loomwright";
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: 17 });
//                                                             ^^ warning protection/standard-rating
`,
  "a constant that one circuit uses": `
import { circuit } from "loomwright";
const fuseA = 17;
//            ^^ warning protection/standard-rating
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: fuseA });
`,
  "a constant that several circuits use: where they differ, and it is related": `
import { circuit } from "loomwright";
const fuseA = 17;
//            ^^ related Set here, for 1 other circuit too
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: fuseA });
//                                                             ^^^^^ warning protection/standard-rating
circuit({ name: "b", load: 10, oneWayFt: 3, gauge: 8, protect: fuseA });
//                                                             ^^^^^ warning protection/standard-rating
`,
  "a shorthand property": `
import { circuit } from "loomwright";
const protect = 17;
//              ^^ warning protection/standard-rating
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect });
`,
  "as const, satisfies, as any, parentheses, and not null": `
import { circuit } from "loomwright";
const fuseA = ((17 as const) satisfies number)!;
//              ^^ warning protection/standard-rating
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: (fuseA as any) });
`,
  "a computed value: the whole expression": `
import { circuit } from "loomwright";
circuit({ name: "a", load: 10 + 1, oneWayFt: 3, gauge: 8, protect: 12 + 5 });
//                                                                 ^^^^^^ warning protection/standard-rating
`,
  "a spread object": `
import { circuit } from "loomwright";
const base = { oneWayFt: 3, gauge: 8, protect: 17 } as const;
//                                             ^^ warning protection/standard-rating
circuit({ ...base, name: "a", load: 10 });
`,
  "a spread object whose property is overridden": `
import { circuit } from "loomwright";
const base = { oneWayFt: 3, gauge: 8, protect: 25 } as const;
circuit({ ...base, name: "a", load: 10, protect: 17 });
//                                               ^^ warning protection/standard-rating
`,
  "spreads of spreads, and one that overrides": `
import { circuit } from "loomwright";
const first = { oneWayFt: 3, gauge: 8, protect: 40 } as const;
const second = { ...first, protect: 17 };
//                                  ^^ warning protection/standard-rating
circuit({ name: "a", load: 10, ...second });
`,
  "the argument is a constant": `
import { circuit } from "loomwright";
const fridge = { name: "fridge", load: 10, oneWayFt: 3, gauge: 8, protect: 17 } as const;
//                                                                         ^^ warning protection/standard-rating
circuit(fridge);
`,
  "a property of a constant object": `
import { circuit } from "loomwright";
const fuses = { cabin: 25, bow: 17 } as const;
//                              ^^ warning protection/standard-rating
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: fuses.bow });
circuit({ name: "b", load: 10, oneWayFt: 3, gauge: 8, protect: fuses["cabin"] });
`,
  "an element of an array": `
import { circuit } from "loomwright";
const fuses = [25, 17] as const;
//                 ^^ warning protection/standard-rating
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: fuses[1] });
`,
  "a destructured constant": `
import { circuit } from "loomwright";
const { bow: fuseA, deep: { loadA } } = { bow: 17, deep: { loadA: 10 } };
//                                             ^^ warning protection/standard-rating
circuit({ name: "a", load: loadA, oneWayFt: 3, gauge: 8, protect: fuseA });
`,
  "a conditional expression: the branch that was taken": `
import { circuit } from "loomwright";
const winter = Math.max(1, 2) > 1;
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: winter ? 17 : 25 });
//                                                                      ^^ warning protection/standard-rating
`,
  "a default operator": `
import { circuit } from "loomwright";
const given: { protect?: number } = {};
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: given.protect ?? 17 });
//                                                                              ^^ warning protection/standard-rating
`,
  "a spread that is there or not": `
import { circuit } from "loomwright";
const inshore = Math.max(1, 2) > 1;
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, ...(inshore ? { protect: 17 } : {}) });
//                                                                             ^^ warning protection/standard-rating
`,
  "an object of protection": `
import { circuit } from "loomwright";
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: { ratingA: 17 } });
//                                                                        ^^ warning protection/standard-rating
`,
  "an object of protection from elsewhere": `
import { circuit } from "loomwright";
const fuse = { ratingA: 17, family: "ISO 8820-3 Type C" } as const;
//                      ^^ warning protection/standard-rating
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: fuse });
`,
  "a factory that one call uses: the caller's argument": `
import { circuit } from "loomwright";
function lamp(name: string, fuseA: number) {
  return circuit({ name, load: 10, oneWayFt: 3, gauge: 8, protect: fuseA });
}
lamp("galley", 17);
//             ^^ warning protection/standard-rating
lamp("saloon", 25);
`,
  "a factory's literal: the call that tells them apart": `
import { circuit } from "loomwright";
const lamp = (name: string, load: number) => circuit({ name, load, oneWayFt: 3, gauge: 8, protect: 17 });
//                                                                                                 ^^ related Set here, for 1 other circuit too
  lamp("galley", 10);
//^^^^^^^^^^^^^^^^^^ warning protection/standard-rating
  lamp("saloon", 2);
//^^^^^^^^^^^^^^^^^ warning protection/standard-rating
`,
  "a factory whose argument is an object": `
import { circuit } from "loomwright";
function lamp(of: { name: string; protect: number }) {
  return circuit({ ...of, load: 10, oneWayFt: 3, gauge: 8 });
}
lamp({ name: "galley", protect: 17 });
//                              ^^ warning protection/standard-rating
lamp({ name: "saloon", protect: 25 });
`,
  "a factory that destructures its argument": `
import { circuit } from "loomwright";
function lamp({ name, fuse: { ratingA } }: { name: string; fuse: { ratingA: number } }) {
  return circuit({ name, load: 10, oneWayFt: 3, gauge: 8, protect: ratingA });
}
lamp({ name: "galley", fuse: { ratingA: 17 } });
//                                      ^^ warning protection/standard-rating
lamp({ name: "saloon", fuse: { ratingA: 25 } });
`,
  "a factory of factories": `
import { circuit } from "loomwright";
const run = (name: string, protect: number) => circuit({ name, load: 10, oneWayFt: 3, gauge: 8, protect });
const lamp = (name: string, extraA: number) => run(name, extraA);
lamp("galley", 17);
//             ^^ warning protection/standard-rating
lamp("saloon", 25);
`,
  "a closure, whose outer call has long ended: the call that tells circuits apart": `
import { circuit } from "loomwright";
function panel(protect: number) {
  return { add: (name: string) => circuit({ name, load: 10, oneWayFt: 3, gauge: 8, protect }) };
//                                                                                 ^^^^^^^ related Set here
}
panel(25).add("galley");
const aft = panel(17);
  aft.add("saloon");
//^^^^^^^^^^^^^^^^^ warning protection/standard-rating
`,
  "a default parameter": `
import { circuit } from "loomwright";
const lamp = (name: string, protect = 17) => circuit({ name, load: 10, oneWayFt: 3, gauge: 8, protect });
//                                    ^^ warning protection/standard-rating
lamp("galley");
lamp("saloon", 25);
`,
  "a class": `
import { circuit } from "loomwright";
class Lamp {
  made: unknown;
  constructor(name: string, protect: number) {
    this.made = circuit({ name, load: 10, oneWayFt: 3, gauge: 8, protect });
  }
}
new Lamp("galley", 17);
//                 ^^ warning protection/standard-rating
new Lamp("saloon", 25);
`,
  "objects that are mapped over": `
import { circuit } from "loomwright";
const runs = [
  { name: "galley", load: 10, protect: 25 },
  { name: "saloon", load: 10, protect: 17 },
//                                     ^^ warning protection/standard-rating
];
runs.map((run) => circuit({ name: run.name, load: run.load, protect: run.protect, oneWayFt: 3, gauge: 8 }));
`,
  "objects that are mapped over and destructured": `
import { circuit } from "loomwright";
const runs = [
  { name: "galley", load: 10, protect: 17 },
//                                     ^^ warning protection/standard-rating
  { name: "saloon", load: 10, protect: 25 },
];
export const made = runs.map(({ name, load, protect }) => circuit({ name, load, protect, oneWayFt: 3, gauge: 8 }));
`,
  "objects that are spread in a loop": `
import { circuit } from "loomwright";
const runs = [
  { name: "galley", load: 10, protect: 17 },
//                                     ^^ warning protection/standard-rating
  { name: "saloon", load: 10, protect: 25 },
];
for (const run of runs) circuit({ ...run, oneWayFt: 3, gauge: 8 });
`,
  "objects that are counted through": `
import { circuit } from "loomwright";
const runs = [
  { name: "galley", load: 10, protect: 17 },
//                                     ^^ warning protection/standard-rating
  { name: "saloon", load: 10, protect: 25 },
];
for (let i = 0; i < runs.length; i++) {
  circuit({ name: runs[i]!.name, load: runs[i]!.load, protect: runs[i]!.protect, oneWayFt: 3, gauge: 8 });
}
`,
  "rows of a table": `
import { circuit } from "loomwright";
const rows = [
  ["galley", 10, 17],
//               ^^ warning protection/standard-rating
  ["saloon", 10, 25],
] as const;
for (const [name, load, protect] of rows) circuit({ name, load, protect, oneWayFt: 3, gauge: 8 });
`,
  "entries of an object": `
import { circuit } from "loomwright";
const runs = { galley: { load: 10, protect: 17 }, saloon: { load: 10, protect: 25 } };
//                                          ^^ warning protection/standard-rating
for (const [name, run] of Object.entries(runs)) circuit({ name, ...run, oneWayFt: 3, gauge: 8 });
`,
  "objects that were sifted": `
import { circuit } from "loomwright";
const runs = [{ name: "galley", load: 10, protect: 17 }, { name: "saloon", load: 2, protect: 25 }];
//                                                 ^^ warning protection/standard-rating
const big = runs.filter((run) => run.load > 5)[0]!;
circuit({ name: big.name, load: big.load, protect: big.protect, oneWayFt: 3, gauge: 8 });
`,
  "in a loop, the element that tells them apart": `
import { circuit } from "loomwright";
const runs = [{ name: "galley", load: 10 }, { name: "saloon", load: 2 }];
//            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning protection/standard-rating
//                                          ^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning protection/standard-rating
for (const run of runs) circuit({ ...run, oneWayFt: 3, gauge: 8, protect: 17 });
//                                                                        ^^ related Set here, for 1 other circuit too
`,
  "in a loop that nothing tells apart: one finding about all": `
import { circuit } from "loomwright";
for (let i = 1; i <= 3; i++) circuit({ name: "lamp " + i, load: 10, oneWayFt: 3, gauge: 8, protect: 17 });
//                                                                                                  ^^ warning protection/standard-rating {lamp 1, lamp 2, lamp 3}
`,
  "a value from another file": `
import { circuit } from "loomwright";
import { fuses, loadA as draw } from "./sizes";
circuit({ name: "a", load: draw, oneWayFt: 3, gauge: 8, protect: fuses.bow });
// file: sizes.ts
export const fuses = { bow: 17 };
//                          ^^ warning protection/standard-rating
export const loadA = 10;
`,
  "a default export, passed on by a third file, under another name": `
import { circuit } from "loomwright";
import { fuseA } from "./all.js";
import * as sizes from "./sizes.ts";
circuit({ name: "a", load: sizes.loadA, oneWayFt: 3, gauge: 8, protect: fuseA });
// file: all.ts
export { default as fuseA } from "./sizes.ts";
export * from "./sizes.ts";
// file: sizes.ts
export const loadA = 10;
export default 17;
//             ^^ warning protection/standard-rating
`,
  "a factory in another file": `
import { lamp } from "./factory";
lamp("galley", 17);
//             ^^ warning protection/standard-rating
lamp("saloon", 25);
// file: factory/index.ts
import { circuit } from "loomwright";
export function lamp(name: string, protect: number) {
  return circuit({ name, load: 10, oneWayFt: 3, gauge: 8, protect });
}
`,
  "a variable that was set again is not believed": `
import { circuit } from "loomwright";
let fuseA = 25;
fuseA = 17;
circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8, protect: fuseA });
//                                                             ^^^^^ warning protection/standard-rating
`,
  "a call stack that an exception cut short": `
import { circuit } from "loomwright";
function lamp(name: string, protect: number) {
  circuit({ name, load: 10, oneWayFt: 3, gauge: 8, protect });
  if (protect > 20) throw new Error("too much");
}
function all() {
  try {
    lamp("galley", 25);
  } catch {}
  lamp("saloon", 17);
//               ^^ warning protection/standard-rating
}
all();
`,
  "an awaited factory": `
import { circuit } from "loomwright";
async function lamp(name: string, protect: number) {
  await Promise.resolve();
  return circuit({ name, load: 10, oneWayFt: 3, gauge: 8, protect });
}
await lamp("galley", 25);
await lamp("saloon", 17);
//                   ^^ warning protection/standard-rating
`,
  "no protection at all: on the word": `
import { circuit } from "loomwright";
  circuit({ name: "a", load: 10, oneWayFt: 3, gauge: 8 });
//^^^^^^^ error protection/missing
`,
};

describe("a finding sits on the value that set it", () => {
  for (const [name, plan] of Object.entries(plans)) {
    it(name, async () => {
      await expectMarks(plan);
    });
  }
});

it("a place in a mapped plan is found again from the text", async () => {
  const plan = await expectMarks(`
import { circuit } from "loomwright";
const runs = [{ name: "galley", load: 2, protect: 5 }];
runs.map((run) => circuit({ ...run, oneWayFt: 3, gauge: 8 }));
`);
  expect(plan.placeOf(0, ["protect"])).toEqual({ uri: "file:///plans/plan.ts", start: 89, end: 90 });
  expect(plan.at("file:///plans/plan.ts", 89)).toMatchObject({ record: 0, path: ["protect"], alsoSets: [] });
});
