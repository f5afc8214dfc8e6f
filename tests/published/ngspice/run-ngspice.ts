import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** The installed version, such as "39.3"; undefined if there is none. */
export function ngspiceVersion(): string | undefined {
  const { stdout, error } = spawnSync("ngspice", ["--version"], { encoding: "utf8" });
  return error ? undefined : /ngspice-(\S+)/.exec(stdout ?? "")?.[1];
}

/**
 * Runs ngspice in a temporary folder and reads its output. Its exit code is no verdict; an empty answer is one.
 * @param input receives the name of the output file
 */
export function runNgspice(input: (printTo: string) => string): {
  readonly voltages: ReadonlyMap<string, number>;
  readonly log: string;
} {
  const folder = mkdtempSync(join(tmpdir(), "loomwright-ngspice-"));
  try {
    writeFileSync(join(folder, "network.cir"), input("voltages.txt"));
    const { stdout, stderr } = spawnSync("ngspice", ["-b", "network.cir"], {
      cwd: folder,
      encoding: "utf8",
      timeout: 60_000,
    });
    return { voltages: printedVoltages(join(folder, "voltages.txt")), log: `${stdout}${stderr}` };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function printedVoltages(file: string): ReadonlyMap<string, number> {
  const voltages = new Map<string, number>();
  let text = "";
  try {
    text = readFileSync(file, "utf8");
  } catch {
    // Without output, there is no answer.
  }
  for (const line of text.split("\n")) {
    const [, name, value] = /^(\S+) = (\S+)$/.exec(line.trim()) ?? [];
    if (name && value && !name.includes("#")) voltages.set(name.toLowerCase(), Number(value));
  }
  return voltages;
}
