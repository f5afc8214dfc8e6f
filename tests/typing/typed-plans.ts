import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** A plan as a folder of texts, and the file of it that is typed in. */
export interface TypedPlan {
  readonly name: string;
  readonly file: string;
  readonly files: Readonly<Record<string, string>>;
}

/** Texts that hold what the examples do not: everything a builder may write that is hard on a parser or a tracer of values. */
export const ownPlans: readonly TypedPlan[] = [
  {
    name: "constants, spreads, factories and loops",
    file: "plan.ts",
    files: {
      "plan.ts": `import { build, circuit, type CircuitInput } from "loomwright";
import { sizes, lamp } from "./stock.ts";

build({ name: \`Bus \${1 + 1}\`, voltage: 12, insulationC: 105 });
const usual = { gauge: sizes.thin, protect: 10 } as const;
const run = (name: string, load: number) => circuit({ name, load, oneWayFt: 12 + 3, ...usual });
for (const [index, load] of [2, 4, 8].entries()) run(\`lamp "\${index}"\`, load);
circuit({ ...lamp, oneWayM: 3, mm2: 2.5, accept: { "conductor/voltage-drop": "it's short" } });
circuit({ loadW: 480, oneWayFt: 4, gauge: "1/0", protect: { ratingA: 60, family: "UL 248-15 Class T" } } satisfies CircuitInput);
`,
      "stock.ts": `export const sizes = { thin: 14, thick: 4 } as const;
export const lamp = { name: "lamp", load: 1.5, protect: 5 };
`,
    },
  },
  {
    name: "a network",
    file: "plan.ts",
    files: {
      "plan.ts": `import { battery, busBar, cable, circuit, load, part, scenario, type Terminal } from "loomwright";
import { house } from "./bank.ts";

const bus = busBar({ ratedA: 200 });
const relay = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"], milliohm: 2 }] });
const lead = (from: Terminal, to: Terminal) => cable({ from, to, lengthM: 1, gauge: 4 });
cable({ from: house.positive, to: bus.stud, lengthFt: 3, gauge: "2/0", protect: { ratingA: 150, distanceIn: 6 } });
lead(bus.stud, relay.in);
const heat = load({ powerW: 60 });
const lamp = circuit({ from: relay.out, returnTo: house.negative, to: heat, oneWayFt: 12, gauge: 14, protect: 10 });
scenario({ name: "Night", off: [lamp, ...[heat]], bankV: 12.4 });
battery({ ...house, name: "spare" });
`,
      "bank.ts": `import { battery } from "loomwright";
export const house = battery({ chemistry: "LiFePO4", capacityAh: 200, accept: { "disconnect/missing": "plug" } });
`,
    },
  },
  {
    name: "odd texts",
    file: "odd.ts",
    files: {
      "odd.ts": `import * as l from 'loomwright'; // 冷蔵庫 🚐 \u202E
/* gauge: 12 */
const wire = /gauge: [0-9]+/u;
const label = <const T,>(x: T) => x!;
l.circuit({ 'name': label("a\\u0000b"), load: +"4", "oneWayFt": 1e1, gauge: 0x4, protect: 5_0 });
l.circuit({ load: -1, oneWayFt: 3, gauge: 5, protect: 9 } as any);
if (wire.test("gauge: 4")) { l.circuit({ load: 3, oneWayFt: 3, gauge: 16, protect: 5 }) }
export default l;
`,
    },
  },
];

const examples = fileURLToPath(new URL("../../examples/", import.meta.url));

/** Every TypeScript file of every example, each with the other files of its folder beside it. */
export function examplePlans(): TypedPlan[] {
  return readdirSync(examples, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name }) => {
      const names = readdirSync(join(examples, name)).filter((file) => file.endsWith(".ts"));
      const files = Object.fromEntries(
        names.map((file) => [file, readFileSync(join(examples, name, file), "utf8")]),
      );
      return names.map((file) => ({ name: `${name}/${file}`, file, files }));
    });
}
