// The plans that are typed into: several roots that share files, in two workspace folders, and every kind of text that a parser
// or a tracer of values finds hard. Names are paths below one folder.

import { readdirSync, readFileSync } from "node:fs";

/** The two workspace folders; the second one comes and goes. */
export const workspaceFolders = ["camper", "shared"];

export const startingFiles = {
  "camper/plan.ts": `import { build, busBar, cable, circuit, load, part, scenario, type Terminal } from "loomwright";
import { house } from "./bank.ts";
import { sizes, lamp } from "./stock.ts";

build({ name: "Camper", voltage: 12, insulationC: 105 });
const bus = busBar({ ratedA: 200 });
const relay = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"], milliohm: 2 }] });
const lead = (from: Terminal, to: Terminal) => cable({ from, to, lengthM: 1, gauge: 4 });
cable({ from: house.positive, to: bus.stud, lengthFt: 3, gauge: "2/0", protect: { ratingA: 150, distanceIn: 6 } });
lead(bus.stud, relay.in);
const heat = load({ powerW: 60 });
const reading = circuit({ from: relay.out, returnTo: house.negative, to: heat, oneWayFt: 12, gauge: 14, protect: 10 });
circuit({ ...lamp, from: relay.out, returnTo: house.negative, oneWayM: 3, mm2: 2.5 });
circuit({ name: "pump", load: 6, oneWayFt: 12, gauge: sizes.thin, protect: 10 });
scenario({ name: "Night", off: [reading], bankV: 12.4 });
`,
  "camper/bank.ts": `import { battery } from "loomwright";
export const house = battery({ chemistry: "LiFePO4", capacityAh: 200, accept: { "disconnect/missing": "plug" } });
`,
  "camper/stock.ts": `export const sizes = { thin: 14, thick: 4 } as const;
export const lamp = { name: "lamp", load: 1.5, protect: 5 };
`,
  "camper/awning.ts": `import { build, circuit, type CircuitInput } from "loomwright";
import { sizes, lamp } from "./stock.ts";

build({ name: \`Awning \${1 + 1}\`, voltage: 12, insulationC: 105 });
const usual = { gauge: sizes.thin, protect: 10 } as const;
const run = (name: string, load: number) => circuit({ name, load, oneWayFt: 12 + 3, ...usual });
for (const [index, load] of [2, 4, 8].entries()) run(\`lamp "\${index}"\`, load);
circuit({ ...lamp, oneWayM: 3, mm2: 2.5, accept: { "conductor/voltage-drop": "it's short" } });
circuit({ loadW: 480, oneWayFt: 4, gauge: "1/0", protect: { ratingA: 60, family: "UL 248-15 Class T" } } satisfies CircuitInput);
`,
  "camper/odd.ts": `import * as l from 'loomwright'; // 冷蔵庫 🚐 \u202E
/* gauge: 12 */
const wire = /gauge: [0-9]+/u;
const label = <const T,>(x: T) => x!;
l.circuit({ 'name': label("a\\u0000b"), load: +"4", "oneWayFt": 1e1, gauge: 0x4, protect: 5_0 });
l.circuit({ load: -1, oneWayFt: 3, gauge: 5, protect: 9 } as any);
if (wire.test("gauge: 4")) { l.circuit({ load: 3, oneWayFt: 3, gauge: 16, protect: 5 }) }
export default l;
`,
  "camper/cabin/cabin.ts": `import { circuit } from "loomwright";
import { house } from "../bank.ts";
import { far } from "../../shared/far.ts";
circuit({ name: "cabin", from: house.positive, returnTo: house.negative, load: 5, oneWayFt: 20, gauge: 12, protect: 10 });
circuit({ name: "far", load: 5, oneWayFt: far, gauge: 12, protect: 10 });
`,
  "shared/far.ts": `export const far = 33;
`,
  "shared/shed.ts": `import { circuit } from "loomwright";
import { far } from "./far";
circuit({ load: 9, oneWayFt: far, gauge: 10, protect: 15 });
`,
};

const examples = new URL("../../examples/", import.meta.url);

/** Texts to paste from, and to replace a whole text with. */
export const pastedTexts = [
  ...Object.values(startingFiles),
  ...[
    "camper-draft/camper.ts",
    "first-circuit/plan.ts",
    "library-bus/reading-room.ts",
    "faulty-workshop/roof.ts",
  ].map((name) => readFileSync(new URL(name, examples), "utf8")),
  ...readdirSync(new URL("faulty-workshop/", examples))
    .filter((name) => name.endsWith(".ts") && name !== "endless.ts" && name !== "yard.ts")
    .map((name) => readFileSync(new URL(`faulty-workshop/${name}`, examples), "utf8")),
];
