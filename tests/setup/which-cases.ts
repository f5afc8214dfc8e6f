import { execFileSync } from "node:child_process";
import { shares } from "./sampled.ts";

/** The share of the sampled cases that belongs to this commit: a number of its own hash. 0 where there is no git. */
export function casesOfCommit(house: string): string {
  if (process.env.LOOMWRIGHT_CASES) return process.env.LOOMWRIGHT_CASES;
  try {
    const commit = execFileSync("git", ["rev-parse", "HEAD"], { cwd: house, stdio: "pipe" }).toString();
    return String(Number.parseInt(commit.slice(0, 8), 16));
  } catch {
    return "0";
  }
}

/** Vitest's global setup: says which share this run takes, and how to take it again. */
export function setup(): void {
  const cases = process.env.LOOMWRIGHT_CASES;
  const list = Object.entries(shares).map(
    ([of, share]) => `  ${(Number(cases) % share) + 1} of ${share}: ${of}`,
  );
  console.log(
    cases === "all"
      ? "Every case of every test.\n"
      : `Of some tests this run takes a share, which the commit decides (LOOMWRIGHT_CASES=${cases}; all: every case):\n${list.join("\n")}\n`,
  );
}
