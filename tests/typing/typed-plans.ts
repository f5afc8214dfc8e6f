import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { bank, fromBankToRelay, manyWays, odd, stock } from "./hard-texts.mjs";

/** A plan as a folder of texts, and its typed file. */
export interface TypedPlan {
  readonly name: string;
  readonly file: string;
  readonly files: Readonly<Record<string, string>>;
}

/**
 * Texts with content that the examples lack: everything that is hard for a parser or a tracer of values and that a builder may
 * write.
 */
export const ownPlans: readonly TypedPlan[] = [
  {
    name: "constants, spreads, factories and loops",
    file: "plan.ts",
    files: {
      "plan.ts": manyWays("Bus"),
      "stock.ts": stock,
    },
  },
  {
    name: "a network",
    file: "plan.ts",
    files: {
      "plan.ts": `import { battery, busBar, cable, circuit, load, part, scenario, type Terminal } from "loomwright";
import { house } from "./bank.ts";

${fromBankToRelay}const lamp = circuit({ from: relay.out, returnTo: house.negative, to: heat, oneWayFt: 12, gauge: 14, protect: 10 });
scenario({ name: "Night", off: [lamp, ...[heat]], bankV: 12.4 });
battery({ ...house, name: "spare" });
`,
      "bank.ts": bank,
    },
  },
  {
    name: "odd texts",
    file: "odd.ts",
    files: {
      "odd.ts": odd,
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
