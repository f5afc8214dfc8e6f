import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import type { Network } from "../../../library/model/network.ts";
import { createChecker } from "../../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../../server/evaluate/files/disk-workspace.ts";
import { askNgspice, comparedNetwork } from "./compared-network.ts";
import { ngspiceVersion } from "./run-ngspice.ts";

/**
 * The networks of the examples, and those that must have no finding, in each of their scenarios, as ngspice answers them. If it
 * is installed it is asked, else its recorded answers count; `RECORD_NGSPICE=1` writes them anew:
 * `RECORD_NGSPICE=1 npx vitest run --config tests/vitest.config.ts tests/published/ngspice/plans.test.ts`.
 */
const root = fileURLToPath(new URL("../../../", import.meta.url));
const plans = [
  "examples/library-bus/bus.ts",
  "examples/rangers-hut/hut.ts",
  "examples/river-launch/launch.ts",
  ...readdirSync(`${root}tests/networks/correct`)
    .filter((name) => name.endsWith(".ts"))
    .map((name) => `tests/networks/correct/${name}`),
];
const file = new URL("recorded-plans.json", import.meta.url);

interface Recorded {
  readonly ngspice: string;
  /** By plan and scenario: one voltage for each node that a source reaches, in the order of terminals, V. */
  readonly voltages: Readonly<Record<string, readonly number[]>>;
}

const recorded: Recorded = existsSync(file)
  ? JSON.parse(readFileSync(file, "utf8"))
  : { ngspice: "", voltages: {} };
const installed = ngspiceVersion();
const answers: Record<string, readonly number[]> = {};

const checker = createChecker(
  diskWorkspace([pathToFileURL(`${root}examples`).href, pathToFileURL(`${root}tests/networks`).href]),
);
afterAll(async () => {
  await checker.dispose();
  if (!process.env.RECORD_NGSPICE || !installed) return;
  const lines = Object.entries(answers).map(
    ([key, voltages]) => `${JSON.stringify(key)}:${JSON.stringify(voltages)}`,
  );
  writeFileSync(file, `{"ngspice":"${installed}","voltages":{\n${lines.join(",\n")}\n}}\n`);
});

describe(`plans as ngspice ${installed ?? `${recorded.ngspice} (recorded: none is installed)`} answers them`, () => {
  it.each(plans)("%s", async (plan) => {
    const network = await networkOf(plan);
    for (const scenario of network.scenarios) {
      const compared = comparedNetwork({ ...network, scenarios: [scenario] });
      if (!compared) throw new Error(`No operating point in "${scenario.name}".`);
      const key = `${plan}: ${scenario.name}`;
      const live = installed ? askNgspice(compared)?.voltages : undefined;
      if (live) answers[key] = live.map((voltageV) => Number(voltageV.toPrecision(10)));
      const theirV = live ?? recorded.voltages[key];
      if (!theirV) throw new Error(`ngspice has no answer to "${key}", and none is recorded.`);
      expect(theirV.length).toBe(compared.terminals.length);
      compared.ourV.forEach((voltageV, index) => {
        const theirs = theirV[index] ?? Number.NaN;
        expect(Math.abs(voltageV - theirs), key).toBeLessThanOrEqual(1e-6 * Math.abs(theirs) + 1e-9);
      });
    }
  });
});

async function networkOf(plan: string): Promise<Network> {
  const outcome = await checker.check(pathToFileURL(`${root}${plan}`).href);
  const network = outcome.state === "checked" ? outcome.judgement.network?.network : undefined;
  if (!network) throw new Error(`${plan} has no network.`);
  return network;
}
