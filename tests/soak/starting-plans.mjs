// The initial plans for typing: several roots that share files, in two workspace folders, and every kind of text that is hard for
// a parser or a tracer of values. Names are paths below one folder.

import { readdirSync, readFileSync } from "node:fs";
import { bank, fromBankToRelay, manyWays, odd, stock } from "../typing/hard-texts.mjs";

/** The two workspace folders; the second one comes and goes. */
export const workspaceFolders = ["camper", "shared"];

export const startingFiles = {
  "camper/plan.ts": `import { build, busBar, cable, circuit, load, part, scenario, type Terminal } from "loomwright";
import { house } from "./bank.ts";
import { sizes, lamp } from "./stock.ts";

build({ name: "Camper", voltage: 12, insulationC: 105 });
${fromBankToRelay}const reading = circuit({ from: relay.out, returnTo: house.negative, to: heat, oneWayFt: 12, gauge: 14, protect: 10 });
circuit({ ...lamp, from: relay.out, returnTo: house.negative, oneWayM: 3, mm2: 2.5 });
circuit({ name: "pump", load: 6, oneWayFt: 12, gauge: sizes.thin, protect: 10 });
scenario({ name: "Night", off: [reading], bankV: 12.4 });
`,
  "camper/bank.ts": bank,
  "camper/stock.ts": stock,
  "camper/awning.ts": manyWays("Awning"),
  "camper/odd.ts": odd,
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
