import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { sampled } from "../setup/sampled.ts";

const script = fileURLToPath(new URL("soak.mjs", import.meta.url));

/** The whole script, for as long as the gate can wait; `npm run soak -- MINUTES` runs longer. */
test.each(
  sampled("editors of the short soak", [
    ["pulls findings", 11],
    ["has findings pushed", 12],
  ] as const),
)("a short soak with an editor that %s ends without a mismatch", (_, seed) => {
  const folder = mkdtempSync(join(tmpdir(), "loomwright-soak-test-"));
  try {
    const words = [
      "5",
      "--edits",
      "150",
      "--edits-per-comparison",
      "75",
      "--seed",
      String(seed),
      "--folder",
      folder,
    ];
    const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...words], { encoding: "utf8" });
    expect(stderr).toBe("");
    expect(stdout).toMatch(/1[5-9]\d edits, \d+ requests, [2-9] comparisons, 0 mismatches, 0 troubles/);
    expect(readdirSync(folder)).toEqual([]);
    expect(status).toBe(0);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
