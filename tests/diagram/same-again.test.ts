import { execFile } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { build } from "esbuild";
import { describe, expect, onTestFinished, test } from "vitest";
import type { Drawing, View } from "../../library/documents/diagram/drawing.ts";
import { drawn, fileJudge, judgedText } from "./drawn-plans.ts";
import { sampleDrawing } from "./sample-drawing.ts";

const judgedFile = fileJudge();

const views: readonly View[] = ["one-line", "wiring"];

describe("the same plan gives the same bytes", () => {
  test.each(views)("twice, %s", async (view) => {
    const options = { view, scenario: 1 };
    const file = "examples/library-bus/bus.ts";
    const first = await drawn(await judgedFile(file), options);
    expect((await drawn(await judgedFile(file), options)).svg).toBe(first.svg);
  });

  test("in another process", async () => {
    const folder = await mkdtemp(join(tmpdir(), "drawing-"));
    onTestFinished(() => rm(folder, { recursive: true }));
    const script = join(folder, "draw.cjs");
    await build({
      stdin: {
        contents: `import { sampleDrawing } from "./sample-drawing.ts"; sampleDrawing().then((svg) => process.stdout.write(svg));`,
        resolveDir: fileURLToPath(new URL(".", import.meta.url)),
      },
      outfile: script,
      bundle: true,
      platform: "node",
      format: "cjs",
      logLevel: "error",
    });
    const { stdout } = await promisify(execFile)(process.execPath, [script], { maxBuffer: 1e8 });
    expect(stdout).toContain("<svg");
    expect(stdout).toBe(await sampleDrawing());
  });
});

const circuits = [
  'circuit({ ...fromPanel, name: "lamp", load: 2, oneWayFt: 12, gauge: 14, protect: 5 });',
  'circuit({ ...fromPanel, name: "pump", load: 6, oneWayFt: 20, gauge: 12, protect: 10 });',
  'circuit({ ...fromPanel, name: "fridge", load: 5, oneWayFt: 9, gauge: 12, protect: 10 });',
  'circuit({ from: bus.stud, returnTo: bank.negative, name: "winch", load: 60, oneWayFt: 9, gauge: 4, protect: 80 });',
];

function planOf(runs: readonly string[]): string {
  return `import { battery, build, busBar, cable, circuit, fusePanel } from "loomwright";
build({ name: "small van", voltage: 12 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100 });
const bus = busBar({ name: "bus", side: "positive" });
cable({ name: "main", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: 2, protect: 125 });
const panel = fusePanel({ name: "panel", positions: 8 });
circuit({ name: "feeder", from: bus.stud, returnTo: bank.negative, to: panel, oneWayFt: 5, gauge: 8, protect: 40 });
const fromPanel = { from: panel.branch } as const;
${runs.join("\n")}
`;
}

describe("a small change moves little", () => {
  test.each<[string, View, (run: string) => string]>([
    ["a gauge", "wiring", (run) => run.replace("gauge: 14", "gauge: 10")],
    ["a load", "wiring", (run) => run.replace("load: 6,", "load: 7,")],
    ["a length", "one-line", (run) => run.replace("oneWayFt: 9", "oneWayFt: 8")],
    ["a fuse", "one-line", (run) => run.replace("protect: 5", "protect: 7.5")],
  ])("%s, %s: nothing moves by more than a few pixels", async (_, view, change) => {
    const before = await drawn(await judgedText(planOf(circuits)), { view });
    const after = await drawn(await judgedText(planOf(circuits.map(change))), { view });
    expect(after.svg).not.toBe(before.svg);
    const moved = partsOf(before).map(({ id, box }) => {
      const now = partsOf(after).find((part) => part.id === id)!.box;
      return Math.max(Math.abs(now.x - box.x), Math.abs(now.y - box.y));
    });
    expect(Math.max(...moved)).toBeLessThanOrEqual(8);
  });

  test.each([0, 1, 2, 3, 4])(
    "a circuit added at place %i leaves the others in their order",
    async (place) => {
      const added = 'circuit({ ...fromPanel, name: "radio", load: 1, oneWayFt: 5, gauge: 16, protect: 2 });';
      for (const view of views) {
        const before = await drawn(await judgedText(planOf(circuits)), { view });
        const after = await drawn(await judgedText(planOf(circuits.toSpliced(place, 0, added))), { view });
        const ids = new Set(partsOf(before).map(({ id }) => id));
        expect(downwards(after).filter((id) => ids.has(id))).toEqual(downwards(before));
        expect(rightwards(after).filter((id) => ids.has(id))).toEqual(rightwards(before));
        expect(partsOf(after)).toHaveLength(ids.size + 1);
      }
    },
  );
});

function partsOf({ elements }: Drawing) {
  return elements.filter(({ kind }) => kind === "part");
}

/** Loads from top to bottom. */
function downwards(drawing: Drawing): string[] {
  return partsOf(drawing)
    .filter(({ description }) => / load,|: load/.test(description))
    .sort((one, other) => one.box.y - other.box.y)
    .map(({ id }) => id);
}

function rightwards(drawing: Drawing): string[] {
  return partsOf(drawing)
    .filter(({ description }) => !/: load/.test(description))
    .sort((one, other) => one.box.x - other.box.x || (one.id < other.id ? -1 : 1))
    .map(({ id }) => id);
}
