import { afterAll, describe, expect, it } from "vitest";
import * as library from "../../library/plan/index.ts";
import { continueNumberingAt } from "../../library/plan/numbering.ts";
import { checkFiles, closeCheckers, filesOf } from "./marked-plan.ts";

afterAll(closeCheckers);

/*
 * A part's number is the index of its record, independent of the origin of the records: plain Node, recorded in the sandbox, or
 * read from the text. Each plan ends with a circuit whose name lists the numbers under test.
 */

const head = 'import { battery, build, busBar, cable, circuit, part, scenario } from "loomwright";\n';
const rest = "load: 4, oneWayFt: 3, gauge: 12, protect: 5";
const house = 'const house = battery({ chemistry: "AGM", capacityAh: 100 });';
const tell = (told: string) => `circuit({ name: JSON.stringify(${told}), ${rest} });`;

const plans: readonly (readonly [what: string, plan: string, told: unknown])[] = [
  [
    "circuits that are read come before a part",
    `circuit({ ${rest} });\ncircuit({ ${rest} });\n${house}\n${tell("[house.id, house.positive.part]")}`,
    [2, 2],
  ],
  [
    "circuits and settings that are read, in loops and functions",
    `for (const side of [1, 2]) circuit({ ${rest} });
     const lamps = () => { build({ voltage: 12 }); const unused = circuit({ ${rest} }); };
     lamps();
     lamps();
     ${house}
     ${tell("house.id")}`,
    6,
  ],
  [
    "cables that are read, before parts and between them",
    `${house}
     cable({ from: house.positive, to: house.positive, lengthM: 1, gauge: 4 });
     const bus = busBar({});
     cable({ from: bus.stud, to: house.positive, lengthM: 1, gauge: 4 });
     const feeder = cable({ from: bus.stud, to: house.positive, lengthM: 1, gauge: 4 });
     const kept = cable({ from: bus.stud, to: house.negative, lengthM: 1, gauge: 4 });
     const last = part({ terminals: ["a"] });
     ${tell("[house, bus, kept, last, last.a.part].map((made) => made.id ?? made)")}`,
    [0, 2, 5, 6, 6],
  ],
  [
    "a word that is called within the argument of another comes first",
    `const feeder = cable({ from: battery({}).positive, to: busBar({}).stud, lengthM: 1, gauge: 4 });
     ${tell("[feeder.from.part, feeder.to.part, feeder.id]")}`,
    [0, 1, 2],
  ],
  [
    "a getter that calls a word comes first",
    `const odd = battery({ get capacityAh() { circuit({ ${rest} }); return 5; } });
     ${tell("odd.id")}`,
    1,
  ],
  [
    "parts made by functions, callbacks and spreads",
    `const made = [1, 2].map((capacityAh) => battery({ chemistry: "gel", capacityAh }));
     const twin = battery({ ...made[0], name: "twin" });
     circuit({ ${rest} });
     const off = scenario({ name: "x", off: [twin] });
     ${tell("[...made, twin, off, off.off[0]].map(({ id }) => id)")}`,
    [0, 1, 2, 4, 2],
  ],
  [
    "calls that a plan gives up",
    `try { battery({ get capacityAh() { throw 1; } }); } catch {}
     ${house}
     ${tell("house.id")}`,
    0,
  ],
];

describe("numbers of calls are the same in plain Node, recorded and read", () => {
  it.each(plans)("%s", async (_, plan, told) => {
    const recorded = plan.replaceAll(/\b(circuit|build|cable)\(\{/g, "$1({ ...{},");
    expect(recorded).not.toBe(plan);
    expect(toldInNode(plan)).toEqual(told);
    expect(await toldInSandbox(plan)).toEqual(told);
    expect(await toldInSandbox(recorded)).toEqual(told);
  });
});

function toldInNode(plan: string): unknown {
  let name = "";
  const circuit = (input: library.CircuitInput) => {
    name = input.name ?? "";
    return library.circuit(input);
  };
  continueNumberingAt(0);
  new Function(
    "library",
    "circuit",
    `const { battery, build, busBar, cable, part, scenario } = library; ${plan}`,
  )(library, circuit);
  return JSON.parse(name);
}

async function toldInSandbox(text: string): Promise<unknown> {
  const { plan } = await checkFiles(filesOf(head + text));
  expect(plan.judgement.problems).toEqual([]);
  const last = plan.judgement.model.circuits.findLast(({ word }) => word === "circuit");
  return JSON.parse(last?.name ?? "");
}
