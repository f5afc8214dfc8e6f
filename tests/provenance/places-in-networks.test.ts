import { afterAll, describe, expect, it } from "vitest";
import { checkFiles, closeCheckers, expectMarks, filesOf, folder } from "./marked-plan.ts";

afterAll(closeCheckers);

/*
 * A finding about a value of a network is at the text of the value: `house.positive`, the name of a part in a list, the
 * resistance of a join. In each plan « and » enclose the place; if one call makes several records, the last is asked unless
 * stated.
 */

const head = `import { battery, build, busBar, cable, circuit, inverter, load, part, scenario } from "loomwright";
import { remote, ends, inRemote } from "./parts.ts";
const house = battery({ chemistry: "LiFePO4", capacityAh: 200 });
const bus = busBar({ ratedA: 200 });
const inv = inverter({ continuousW: 1000 });
const lamp = circuit({ from: bus.stud, returnTo: house.negative, load: 4, oneWayFt: 3, gauge: 12, protect: 5 });
`;
const otherFile = `
// file: parts.ts
import { battery } from "loomwright";
export const remote = battery({ chemistry: "LiFePO4", capacityAh: 200 });
export const ends = { plus: remote.positive, both: [remote.positive, remote.negative] };
export const inRemote = (lengthM: number) => ({ from: remote.positive, lengthM });
`;
const run = "lengthM: 1, gauge: 4";

const places: [what: string, plan: string, path: string, record?: number][] = [
  ["a terminal", `cable({ from: «house.positive», to: bus.stud, ${run} });`, "from"],
  ["a terminal at the other end", `cable({ from: house.positive, to: «bus.stud», ${run} });`, "to"],
  ["a terminal in parentheses", `cable({ from: («house.positive» as any), to: bus.stud, ${run} });`, "from"],
  ["a constant", `const end = «house.positive»;\ncable({ from: end, to: bus.stud, ${run} });`, "from"],
  ["a part of another file", `cable({ from: «remote.positive», to: bus.stud, ${run} });`, "from"],
  [
    "an argument",
    `const feed = (from: any) => { cable({ from, to: bus.stud, ${run} }); };\nfeed(«house.positive»);`,
    "from",
  ],
  [
    "an argument of one call of many",
    `const feed = (from: any) => { cable({ from, to: bus.stud, ${run} }); };\nfeed(remote.positive);\nfeed(«house.positive»);\nfeed(bus.stud);`,
    "from",
    -2,
  ],
  [
    "a part that is an argument",
    `const feed = (source: any) => cable({ from: «source.positive», to: bus.stud, ${run} });\nfeed(house);`,
    "from",
  ],
  [
    "an element of a loop",
    `for (const from of [house.positive, «remote.positive»]) cable({ from, to: bus.stud, ${run} });`,
    "from",
  ],
  [
    "an element of a callback",
    `[«house.positive», remote.positive].map((from) => cable({ from, to: bus.stud, ${run} }));`,
    "from",
    -2,
  ],
  [
    "a property of an element",
    `for (const { end } of [{ end: house.positive }, { end: «remote.positive» }]) cable({ from: end, to: bus.stud, ${run} });`,
    "from",
  ],
  ["a spread", `const base = { from: «house.positive», to: bus.stud };\ncable({ ...base, ${run} });`, "from"],
  [
    "a list",
    `const both = [house.positive, «bus.stud»] as const;\ncable({ from: both[0], to: both[1], ${run} });`,
    "to",
  ],
  [
    "a list that is taken apart",
    `const [a, b] = [house.positive, «bus.stud»];\ncable({ from: a, to: b, ${run} });`,
    "to",
  ],
  [
    "an object of parts",
    `const all = { house };\ncable({ from: «all.house.positive», to: bus.stud, ${run} });`,
    "from",
  ],
  [
    "a part that a function makes",
    `const make = () => ({ spare: battery({ chemistry: "gel", capacityAh: 2 }) });\nconst made = make();\ncable({ from: «made.spare.positive», to: bus.stud, ${run} });`,
    "from",
  ],
  ["a terminal that does not exist", `cable({ from: house.positive, to: «bus.plus», ${run} } as any);`, "to"],
  [
    "a whole part",
    `circuit({ from: bus.stud, returnTo: house.negative, to: «inv», oneWayFt: 3, gauge: 4 });`,
    "to",
  ],
  [
    "a whole part under another name",
    `const target = «inv»;\ncircuit({ from: bus.stud, returnTo: house.negative, to: target, oneWayFt: 3, gauge: 4 });`,
    "to",
  ],
  [
    "a return",
    `circuit({ from: bus.stud, returnTo: «house.negative», load: 3, oneWayFt: 3, gauge: 4 });`,
    "returnTo",
  ],
  ["a list of what is off", `scenario({ name: "x", off: «[lamp]» });`, "off"],
  ["one of what is off", `scenario({ name: "x", off: [lamp, «inv»] });`, "off.1"],
  ["one of a list with a name", `const off = [«lamp», inv];\nscenario({ name: "x", off });`, "off.0"],
  ["one of two lists", `const loads = [lamp];\nscenario({ name: "x", off: [...loads, «inv»] });`, "off.1"],
  ["a list in another order", `scenario({ name: "x", off: «[lamp, inv].reverse()» });`, "off.1"],
  [
    "a resistance of a join",
    `part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"], milliohm: «-2» }] });`,
    "joins.0.milliohm",
  ],
  [
    "an end of a join",
    `part({ terminals: ["in", "out"], joins: [{ between: ["in", «"outt"»] }] } as any);`,
    "joins.0.between.1",
  ],
  ["a terminal's name", `part({ terminals: ["in", «"in"»] });`, "terminals.1"],
  [
    "a rating",
    `cable({ from: house.positive, to: bus.stud, ${run}, protect: { ratingA: «60» } });`,
    "protect.ratingA",
  ],
  [
    "a rating in a constant",
    `const fuse = { ratingA: «60» };\nconst feed = (protect: any) => cable({ from: house.positive, to: bus.stud, ${run}, protect });\nfeed(fuse);`,
    "protect.ratingA",
  ],
  ["a part's own property", `const spare = battery({ chemistry: "gel", capacityAh: «-5» });`, "capacityAh"],
  [
    "a part that is spread into another",
    `const twin = battery({ ...house, capacityAh: «-5» });`,
    "capacityAh",
  ],
];

describe("a value of a network sits where it is written", () => {
  it.each(places)("%s", async (_, marked, path, record = -1) => {
    const text = head + marked;
    const start = text.indexOf("«");
    const end = text.indexOf("»") - 1;
    const files = filesOf(text.replace("«", "").replace("»", "") + otherFile);
    const { plan } = await checkFiles(files);
    expect(plan.judgement.problems).toEqual([]);
    const records = recordCount(plan);
    expect(plan.placeOf(records + record, path.split("."))).toEqual({ uri: `${folder}/plan.ts`, start, end });
  });

  it("in another file", async () => {
    const files = filesOf(
      `${head}cable({ from: ends.plus, to: bus.stud, ${run} });\ncable({ ...inRemote(1), to: ends.both[1], gauge: 4 });${otherFile}`,
    );
    const { plan } = await checkFiles(files);
    const other = `${folder}/parts.ts`;
    const written = (record: number, path: string) => {
      const place = plan.placeOf(record, [path]);
      expect(place?.uri).toBe(other);
      return [place?.start, files.get(other)?.slice(place?.start, place?.end)];
    };
    const text = files.get(other) ?? "";
    expect(written(5, "from")).toEqual([text.indexOf("remote.positive"), "remote.positive"]);
    expect(written(6, "from")).toEqual([text.lastIndexOf("remote.positive"), "remote.positive"]);
    expect(written(6, "to")).toEqual([text.indexOf("remote.negative"), "remote.negative"]);
  });
});

describe("findings in a network", () => {
  it("sit on the terminal, the part and the number that are wrong", async () => {
    await expectMarks(`
import { battery, busBar, cable, circuit, part } from "loomwright";
const house = battery({ chemistry: "LiFePO4", capacityAh: -200 });
//                                                        ^^^^ error plan/invalid-value
const relay = part({ terminals: ["in", "out"], joins: [{ between: ["in", "uot"] }] } as any);
//                                                                       ^^^^^ error plan/invalid-value
const feeder = cable({ from: house.positive, to: relay.uot, lengthM: 1, gauge: 4, protect: 60 } as any);
//                                               ^^^^^^^^^ error plan/invalid-value to is not a terminal of a part: nothing
const other = cable({ from: house.plus, to: relay.uot, lengthM: 1, gauge: 4, protect: 60 } as any);
//                          ^^^^^^^^^^ error plan/invalid-value from is not a terminal of a part: nothing
//                                          ^^^^^^^^^ error plan/invalid-value to is not a terminal of a part: nothing
const lamp = circuit({ from: house.negative, load: 4, oneWayFt: 3, gauge: 12, protect: 5 } as any);
//                           ^^^^^^^^^^^^^^ error plan/invalid-value from is a negative terminal
const fan = circuit({ from: house.positive, to: lamp, oneWayFt: 3, gauge: 12, protect: 5 } as any);
//                                              ^^^^ error plan/invalid-value to is a circuit
const crossed = cable({ from: house.positive, to: house.negative, lengthM: 1, gauge: 4, protect: 60 });
//                                                ^^^^^^^^^^^^^^ error plan/invalid-value to is the other pole
const bare = cable({ from: house.positive, lengthM: 1, gauge: 4, protect: 60 } as any);
//           ^^^^^ error plan/invalid-value to is missing
`);
  });
});

it("findings about a scenario sit on the part in its list", async () => {
  await expectMarks(`
import { battery, load, part, scenario } from "loomwright";
const house = battery({ chemistry: "LiFePO4", capacityAh: 200 });
const relay = part({ terminals: ["in", "out"] });
const heat = load({ powerW: 40 });
const night = [house, relay];
//                    ^^^^^ error plan/invalid-value off.1 is a part, which is never off
scenario({ name: "Night", off: night });
scenario({ name: "Start", starting: [heat] });
//                                   ^^^^ error plan/invalid-value starting.0 is heat, which is not a motor
`);
});

/** All calls of the library's functions in the plan: records are numbered without gaps. */
function recordCount(plan: { callOf(record: number): unknown; readonly judgement: unknown }): number {
  return (plan as unknown as { traced: { outcome: { records: readonly unknown[] } } }).traced.outcome.records
    .length;
}
