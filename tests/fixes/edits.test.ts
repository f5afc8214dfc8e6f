import { afterAll, describe, expect, it } from "vitest";
import type { Change } from "../../library/rules/finding.ts";
import { checkFiles, closeCheckers, filesOf, folder } from "../provenance/marked-plan.ts";
import { applyEdits } from "./apply-edits.ts";

afterAll(closeCheckers);

interface Case {
  readonly before: string;
  readonly changes: readonly Change[];
  /** Undefined: it cannot be edited. */
  readonly after: string | undefined;
  readonly alsoChanges?: readonly number[];
  /** The plan's import line, kept out of the text to shorten the cases. */
  readonly importLine?: string;
}

const gauge = (value: number | string, record = 0): Change => ({ do: "set", record, path: ["gauge"], value });
const protect = (value: number, record = 0): Change => ({ do: "set", record, path: ["protect"], value });

const networkWords = 'import { battery, busBar, cable, load, part } from "loomwright";';
/** Records 0 to 2. */
const house = `const house = battery({ chemistry: "AGM", capacityAh: 100 });
const bus = busBar({});
const fan = load({ powerW: 40 });`;

const cases: Readonly<Record<string, Case>> = {
  "replaces a value": {
    before: "circuit({ load: 4, oneWayFt: 3, gauge: 12 });",
    changes: [gauge(10)],
    after: "circuit({ load: 4, oneWayFt: 3, gauge: 10 });",
  },
  "writes a size that is text in the file's quotes": {
    before: "circuit({ load: 4, oneWayFt: 3, gauge: 12 });",
    changes: [gauge("1/0")],
    after: "circuit({ load: 4, oneWayFt: 3, gauge: '1/0' });",
    importLine: "import { circuit } from 'loomwright';",
  },
  "replaces text by a number": {
    before: 'circuit({ load: 4, oneWayFt: 3, gauge: "1/0" });',
    changes: [gauge(4)],
    after: "circuit({ load: 4, oneWayFt: 3, gauge: 4 });",
  },
  "replaces a computed value as a whole": {
    before: "circuit({ load: 4, oneWayFt: 3, gauge: 10 + 2 });",
    changes: [gauge(10)],
    after: "circuit({ load: 4, oneWayFt: 3, gauge: 10 });",
  },
  "keeps as const and satisfies": {
    before: "circuit({ load: 4, oneWayFt: 3, gauge: (12 as const) satisfies number });",
    changes: [gauge(10)],
    after: "circuit({ load: 4, oneWayFt: 3, gauge: (10 as const) satisfies number });",
  },
  "puts a property at the end of a line": {
    before: "circuit({ load: 4, oneWayFt: 3, gauge: 12 });",
    changes: [protect(5)],
    after: "circuit({ load: 4, oneWayFt: 3, gauge: 12, protect: 5 });",
  },
  "puts a property at the end of a line that ends with a comma": {
    before: "circuit({ load: 4, oneWayFt: 3, gauge: 12, });",
    changes: [protect(5)],
    after: "circuit({ load: 4, oneWayFt: 3, gauge: 12, protect: 5, });",
  },
  "puts several properties in": {
    before: "circuit({ load: 4, oneWayFt: 3 });",
    changes: [gauge("2/0"), protect(5)],
    after: 'circuit({ load: 4, oneWayFt: 3, gauge: "2/0", protect: 5 });',
  },
  "puts a property on a line of its own": {
    before: "circuit({\n  load: 4,\n  oneWayFt: 3,\n  gauge: 12,\n});",
    changes: [protect(5)],
    after: "circuit({\n  load: 4,\n  oneWayFt: 3,\n  gauge: 12,\n  protect: 5,\n});",
  },
  "puts a property on a line of its own, without a comma at the end": {
    before: "circuit({\n\tload: 4,\n\tgauge: 12\n});",
    changes: [protect(5)],
    after: "circuit({\n\tload: 4,\n\tgauge: 12,\n\tprotect: 5\n});",
  },
  "leaves a remark where it is": {
    before: "circuit({\n  load: 4, // the pump\n  gauge: 12, // left over\n});",
    changes: [protect(5)],
    after: "circuit({\n  load: 4, // the pump\n  gauge: 12, // left over\n  protect: 5,\n});",
  },
  "leaves a remark where it is, without a comma at the end": {
    before: "circuit({\n  load: 4,\n  gauge: 12 // left over\n});",
    changes: [protect(5)],
    after: "circuit({\n  load: 4,\n  gauge: 12, // left over\n  protect: 5\n});",
  },
  "fills an empty literal": {
    before: "circuit({} as any);",
    changes: [protect(5)],
    after: "circuit({ protect: 5 } as any);",
  },
  "puts a property behind a spread": {
    before:
      "const base = { load: 4, gauge: 12 } as const;\ncircuit({ ...base });\ncircuit({ ...base, load: 2 });",
    changes: [protect(5)],
    after:
      "const base = { load: 4, gauge: 12 } as const;\ncircuit({ ...base, protect: 5 });\ncircuit({ ...base, load: 2 });",
  },
  "puts a property into the constant that only one circuit is made of": {
    before: "const lamp = { load: 4, gauge: 12 };\ncircuit(lamp);",
    changes: [protect(5)],
    after: "const lamp = { load: 4, gauge: 12, protect: 5 };\ncircuit(lamp);",
  },
  "leaves a constant alone that several circuits are made of": {
    before: "const lamp = { load: 4, gauge: 12 };\ncircuit(lamp);\ncircuit(lamp);",
    changes: [protect(5, 1)],
    after: "const lamp = { load: 4, gauge: 12 };\ncircuit(lamp);\ncircuit({ ...lamp, protect: 5 });",
  },
  "says what else a shared literal changes": {
    before: "const lamp = { load: 4, gauge: 12 };\ncircuit({ ...lamp });\ncircuit({ ...lamp });",
    changes: [gauge(10)],
    after: "const lamp = { load: 4, gauge: 10 };\ncircuit({ ...lamp });\ncircuit({ ...lamp });",
    alsoChanges: [1],
  },
  "says what else a factory changes": {
    before: "const lamp = (load: number) => circuit({ load, gauge: 12 });\nlamp(1);\nlamp(2);\nlamp(3);",
    changes: [protect(5, 1)],
    after:
      "const lamp = (load: number) => circuit({ load, gauge: 12, protect: 5 });\nlamp(1);\nlamp(2);\nlamp(3);",
    alsoChanges: [0, 2],
  },
  "changes a caller's argument": {
    before: "const lamp = (gauge: number) => circuit({ load: 4, gauge });\nlamp(12);\nlamp(14);",
    changes: [gauge(10)],
    after: "const lamp = (gauge: number) => circuit({ load: 4, gauge });\nlamp(10);\nlamp(14);",
  },
  "changes a default for all that use it": {
    before: "const lamp = (gauge = 12) => circuit({ load: 4, gauge });\nlamp();\nlamp();\nlamp(14);",
    changes: [gauge(10)],
    after: "const lamp = (gauge = 10) => circuit({ load: 4, gauge });\nlamp();\nlamp();\nlamp(14);",
    alsoChanges: [1],
  },
  "sets a nested value": {
    before: "circuit({ load: 4, protect: { ratingA: 5, family: 'ISO 8820-3 Type C' } });",
    changes: [{ do: "set", record: 0, path: ["protect", "ratingA"], value: 7.5 }],
    after: "circuit({ load: 4, protect: { ratingA: 7.5, family: 'ISO 8820-3 Type C' } });",
  },
  "adds a nested value": {
    before: "circuit({ load: 4, protect: { ratingA: 5 } });",
    changes: [{ do: "set", record: 0, path: ["protect", "distanceIn"], value: 7 }],
    after: "circuit({ load: 4, protect: { ratingA: 5, distanceIn: 7 } });",
  },
  "adds an object": {
    before: "circuit({ load: 4 });",
    changes: [
      { do: "set", record: 0, path: ["protect"], value: { ratingA: 5, family: "ISO 8820-3 Type C" } },
    ],
    after: 'circuit({ load: 4, protect: { ratingA: 5, family: "ISO 8820-3 Type C" } });',
  },
  "adds a reason, under a name that needs quotes": {
    before: "circuit({ load: 4 });",
    changes: [{ do: "set", record: 0, path: ["accept"], value: { "conductor/voltage-drop": "it's dim" } }],
    after: `circuit({ load: 4, accept: { 'conductor/voltage-drop': 'it\\'s dim' } });`,
    importLine: "import { circuit } from 'loomwright';",
  },
  "takes a property out": {
    before: "circuit({ load: 4, oneWayFt: 3, gauge: 12 });",
    changes: [{ do: "remove", record: 0, path: ["oneWayFt"] }],
    after: "circuit({ load: 4, gauge: 12 });",
  },
  "takes the last property out": {
    before: "circuit({ load: 4, oneWayFt: 3, gauge: 12 });",
    changes: [{ do: "remove", record: 0, path: ["gauge"] }],
    after: "circuit({ load: 4, oneWayFt: 3 });",
  },
  "takes the only property out": {
    before: "circuit({ load: 4 } as any);",
    changes: [{ do: "remove", record: 0, path: ["load"] }],
    after: "circuit({} as any);",
  },
  "takes a line out": {
    before: "circuit({\n  load: 4, // pump\n  oneWayFt: 3,\n  gauge: 12,\n});",
    changes: [{ do: "remove", record: 0, path: ["oneWayFt"] }],
    after: "circuit({\n  load: 4, // pump\n  gauge: 12,\n});",
  },
  "takes the last line out": {
    before: "circuit({\n  load: 4, // pump\n  gauge: 12,\n});",
    changes: [{ do: "remove", record: 0, path: ["gauge"] }],
    after: "circuit({\n  load: 4, // pump\n});",
  },
  "renames a property": {
    before: "circuit({ load: 4, oneWayFt: 3 });",
    changes: [{ do: "rename", record: 0, path: ["oneWayFt"], to: "oneWayM" }],
    after: "circuit({ load: 4, oneWayM: 3 });",
  },
  "renames a shorthand property": {
    before: "const load = 40;\ncircuit({ load, oneWayFt: 3 });",
    changes: [{ do: "rename", record: 0, path: ["load"], to: "loadW" }],
    after: "const load = 40;\ncircuit({ loadW: load, oneWayFt: 3 });",
  },
  "sets a shorthand whose name leads nowhere": {
    before: "const gauge = Number('12');\ncircuit({ load: 4, gauge });",
    changes: [gauge(10)],
    after: "const gauge = 10;\ncircuit({ load: 4, gauge });",
  },
  "changes two values at once": {
    before: "circuit({ load: 4, gauge: 12, protect: 5 });",
    changes: [gauge(8), protect(30)],
    after: "circuit({ load: 4, gauge: 8, protect: 30 });",
  },
  "keeps Windows line ends": {
    before: "circuit({\r\n  load: 4,\r\n});",
    changes: [protect(5)],
    after: "circuit({\r\n  load: 4,\r\n  protect: 5,\r\n});",
  },
  "spreads what no literal made into a new one": {
    before: "circuit(JSON.parse('{\"load\":4}') as any);",
    changes: [gauge(10)],
    after: "circuit({ ...JSON.parse('{\"load\":4}') as any, gauge: 10 });",
  },
  "cannot put a nested property into what no literal made": {
    before: "circuit(JSON.parse('{\"load\":4}') as any);",
    changes: [{ do: "set", record: 0, path: ["protect", "ratingA"], value: 7.5 }],
    after: undefined,
  },
  "changes several cables at once": {
    before: `${house}\ncable({ from: house.positive, to: bus.stud, gauge: 8 });\ncable({ from: bus.stud, to: fan.positive, gauge: 10 });`,
    changes: [gauge(6, 3), gauge(8, 4)],
    after: `${house}\ncable({ from: house.positive, to: bus.stud, gauge: 6 });\ncable({ from: bus.stud, to: fan.positive, gauge: 8 });`,
    importLine: networkWords,
  },
  "changes the size that several cables share once": {
    before: `${house}\nconst size = 8;\ncable({ from: house.positive, to: bus.stud, gauge: size });\ncable({ from: bus.stud, to: fan.positive, gauge: size });`,
    changes: [gauge(6, 3), gauge(6, 4)],
    after: `${house}\nconst size = 6;\ncable({ from: house.positive, to: bus.stud, gauge: size });\ncable({ from: bus.stud, to: fan.positive, gauge: size });`,
    importLine: networkWords,
  },
  "changes nothing where cables that share a size need two": {
    before: `${house}\nconst size = 8;\ncable({ from: house.positive, to: bus.stud, gauge: size });\ncable({ from: bus.stud, to: fan.positive, gauge: size });`,
    changes: [gauge(6, 3), gauge(4, 4)],
    after: undefined,
    importLine: networkWords,
  },
  "changes nothing where one of several cables cannot be changed": {
    before: `${house}\ncable({ from: house.positive, to: bus.stud, gauge: 8 });\ncable(JSON.parse('{ "protect": { "ratingA": 8 } }'));`,
    changes: [gauge(6, 3), { do: "set", record: 4, path: ["protect", "ratingA"], value: 5 }],
    after: undefined,
    importLine: networkWords,
  },
  "puts one property into what several cables are made of": {
    before: `${house}\nconst lead = { to: bus.stud, gauge: 8 } as const;\ncable({ ...lead, from: house.positive });\nfor (const from of [house.positive, fan.positive]) cable({ ...lead, from });`,
    changes: [protect(60, 4), protect(60, 5)],
    after: `${house}\nconst lead = { to: bus.stud, gauge: 8 } as const;\ncable({ ...lead, from: house.positive });\nfor (const from of [house.positive, fan.positive]) cable({ ...lead, from, protect: 60 });`,
    importLine: networkWords,
  },
  "puts a fuse with its family and place into a cable on lines": {
    before: `${house}\ncable({\n  from: house.positive,\n  to: bus.stud, // behind the seat\n  gauge: 8,\n});`,
    changes: [
      {
        do: "set",
        record: 3,
        path: ["protect"],
        value: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 7 },
      },
    ],
    after: `${house}\ncable({\n  from: house.positive,\n  to: bus.stud, // behind the seat\n  gauge: 8,\n  protect: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 7 },\n});`,
    importLine: networkWords,
  },
  "sets a rating of a part, and puts one into another": {
    before: `${house}\nconst more = 1;`,
    changes: [
      { do: "set", record: 0, path: ["capacityAh"], value: 200 },
      { do: "set", record: 1, path: ["ratedA"], value: 250 },
    ],
    after: `${house.replace("100", "200").replace("busBar({})", "busBar({ ratedA: 250 })")}\nconst more = 1;`,
    importLine: networkWords,
  },
  "changes a number in a list of objects": {
    before: 'part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"], milliohm: 2 }] });',
    changes: [{ do: "set", record: 0, path: ["joins", "0", "milliohm"], value: 3 }],
    after: 'part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"], milliohm: 3 }] });',
    importLine: networkWords,
  },
  "takes no element out of a list": {
    before: 'part({ terminals: ["in", "in"] });',
    changes: [{ do: "remove", record: 0, path: ["terminals", "1"] }],
    after: undefined,
    importLine: networkWords,
  },
};

describe("a fix is edited into the text as a builder would write it", () => {
  for (const [name, { before, changes, after, alsoChanges = [], importLine }] of Object.entries(cases)) {
    it(name, async () => {
      const first = `${importLine ?? 'import { circuit } from "loomwright";'}\n`;
      const files = filesOf(first + before);
      const { plan } = await checkFiles(files);
      const fix = plan.editsOf({ title: "A fix", kind: "repair", changes });
      if (after === undefined) {
        expect(fix).toBeUndefined();
        return;
      }
      expect(fix).toBeDefined();
      expect(applyEdits(files, fix?.edits ?? []).get(`${folder}/plan.ts`)).toBe(first + after);
      expect(fix?.alsoChanges).toEqual(alsoChanges);
      expect(fix?.kind).toBe(alsoChanges.length > 0 ? "suggestion" : "repair");
    });
  }
});
