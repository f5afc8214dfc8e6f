// Texts that are hard for a parser or a tracer of values, for the typing tests and the soak. Plain JavaScript, because the soak
// runs unbundled.

/** Constants, spreads, factories and loops; imports {@link stock} as "./stock.ts". `name` is a template text. */
export const manyWays = (name) => `import { build, circuit, type CircuitInput } from "loomwright";
import { sizes, lamp } from "./stock.ts";

build({ name: \`${name} \${1 + 1}\`, voltage: 12, insulationC: 105 });
const usual = { gauge: sizes.thin, protect: 10 } as const;
const run = (name: string, load: number) => circuit({ name, load, oneWayFt: 12 + 3, ...usual });
for (const [index, load] of [2, 4, 8].entries()) run(\`lamp "\${index}"\`, load);
circuit({ ...lamp, oneWayM: 3, mm2: 2.5, accept: { "conductor/voltage-drop": "it's short" } });
circuit({ loadW: 480, oneWayFt: 4, gauge: "1/0", protect: { ratingA: 60, family: "UL 248-15 Class T" } } satisfies CircuitInput);
`;

export const stock = `export const sizes = { thin: 14, thick: 4 } as const;
export const lamp = { name: "lamp", load: 1.5, protect: 5 };
`;

export const bank = `import { battery } from "loomwright";
export const house = battery({ chemistry: "LiFePO4", capacityAh: 200, accept: { "disconnect/missing": "plug" } });
`;

/** Parts of a network, from a battery called `house` to a relay. */
export const fromBankToRelay = `const bus = busBar({ ratedA: 200 });
const relay = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"], milliohm: 2 }] });
const lead = (from: Terminal, to: Terminal) => cable({ from, to, lengthM: 1, gauge: 4 });
cable({ from: house.positive, to: bus.stud, lengthFt: 3, gauge: "2/0", protect: { ratingA: 150, distanceIn: 6 } });
lead(bus.stud, relay.in);
const heat = load({ powerW: 60 });
`;

/** Odd spellings, and characters of every kind. */
export const odd = `import * as l from 'loomwright'; // 冷蔵庫 🚐 \u202E
/* gauge: 12 */
const wire = /gauge: [0-9]+/u;
const label = <const T,>(x: T) => x!;
l.circuit({ 'name': label("a\\u0000b"), load: +"4", "oneWayFt": 1e1, gauge: 0x4, protect: 5_0 });
l.circuit({ load: -1, oneWayFt: 3, gauge: 5, protect: 9 } as any);
if (wire.test("gauge: 4")) { l.circuit({ load: 3, oneWayFt: 3, gauge: 16, protect: 5 }) }
export default l;
`;
