import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { sharedSandbox } from "../evaluate/shared-sandbox.tester.ts";
import { sharedLayouts } from "../output/shared-layouts.tester.ts";
import type { ExitCode, KeptResults } from "./host.ts";
import { run } from "./run.ts";
import type { Terminal } from "./terminal.ts";

/** A temporary project folder to run commands in. */
export class CommandTester {
  /** The folder around the project, for files that must be outside it. */
  readonly around = mkdtempSync(join(tmpdir(), "loomwright-command-"));
  readonly folder = join(this.around, "project");

  constructor() {
    this.write("package.json", "{}");
  }

  /** In the project's folder, or in one below it. */
  run(words: readonly string[], options: RunOptions = {}): Promise<Ran> {
    return runCommand(words, { ...options, cwd: join(this.folder, options.cwd ?? "") });
  }

  write(file: string, text: string): void {
    mkdirSync(dirname(join(this.folder, file)), { recursive: true });
    writeFileSync(join(this.folder, file), text);
  }

  read(file: string): string {
    return readFileSync(join(this.folder, file), "utf8");
  }

  remove(file: string): void {
    rmSync(join(this.folder, file), { recursive: true });
  }

  dispose(): void {
    rmSync(this.around, { recursive: true, force: true });
  }
}

export interface RunOptions {
  readonly cwd?: string;
  readonly kept?: KeptResults | undefined;
  /** If left out: neither colour nor progress. */
  readonly terminal?: Terminal;
}

interface Ran {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
}

/** Runs one command, in any folder. */
async function runCommand(
  words: readonly string[],
  { cwd, kept, terminal = { colour: false, progress: false } }: RunOptions & { readonly cwd: string },
): Promise<Ran> {
  let out = "";
  let err = "";
  const code = await run(words, {
    cwd,
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    terminal,
    sandbox: sharedSandbox,
    layouts: sharedLayouts,
    ...(kept ? { kept } : {}),
  });
  return { code, out, err };
}

const head = 'import { build, circuit } from "loomwright";\nbuild({ insulationC: 105 });\n';

/** Plans, named after the findings in them. */
export const samplePlans = {
  head,
  clean: `${head}circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n`,
  /** An error with a repair. */
  thin: `${head}circuit({ name: "winch", load: 48, continuous: false, oneWayFt: 10, gauge: 12, protect: 45 });\n`,
  /** A warning with a repair. */
  droopy: `${head}circuit({ name: "lamp", load: 4, oneWayFt: 80, gauge: 14, protect: 5 });\n`,
  accepted: `${head}circuit({ name: "lamp", load: 4, oneWayFt: 80, gauge: 14, protect: 5, accept: { "conductor/voltage-drop": "only a marker" } });\n`,
  /** A hint. */
  unstated:
    'import { circuit } from "loomwright";\ncircuit({ load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n',
  half: `${head}circuit({ name: "lamp", load: `,
  endless: `${head}for (;;) {}\n`,
  network: `import { battery, build, cable, circuit, fusePanel, scenario } from "loomwright";
build({ insulationC: 105 });
const bank = battery({ name: "house bank", chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 8, source: "data sheet p. 3" });
const panel = fusePanel({ name: "fuse panel", positions: 6, ratedA: 100 });
cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthFt: 1, gauge: 4, protect: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 } });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 4 });
circuit({ name: "heater", from: panel.branch, load: 15, oneWayFt: 12, gauge: 10, protect: { ratingA: 20, interruptingA: 5_000 } });
scenario({ name: "evening", chargePercent: 50 });
`,
} as const;
