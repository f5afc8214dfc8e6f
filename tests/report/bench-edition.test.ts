import { pathToFileURL } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { layOut } from "../../library/documents/diagram/lay-out.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { PageSize } from "../../server/output/page-size.ts";
import { readPdf } from "../../server/output/pdf.tester.ts";
import { planReport } from "../../server/output/plan-report.ts";
import { reported, wordsOf } from "./reported-plan.ts";

// The edition that a builder prints for the bench: few pages, with every known hazard on the first.

const examples = new URL("../../examples/", import.meta.url);
const workspace = diskWorkspace([examples.href]);
const checker = createChecker(workspace, { sandbox: sharedSandbox });
afterAll(() => checker.dispose());

async function benchPages(file: string, page: PageSize) {
  const plan = await checker.check(pathToFileURL(new URL(file, examples).pathname).href);
  if (plan.state !== "checked") throw new Error("half typed");
  const { bytes } = await planReport({ plan, workspace, layOut, edition: "bench", kind: "pdf", page });
  return (await readPdf(bytes)).pages;
}

/**
 * The largest is the library bus, whose wire schedule names the way of each conductor; a page more is a page that somebody turns with
 * dirty hands.
 */
const mostPages: Readonly<Record<string, number>> = {
  "first-circuit/plan.ts": 4,
  "camper-draft/camper.ts": 6,
  "library-bus/bus.ts": 13,
  "river-launch/launch.ts": 9,
  "northbound-van/van.ts": 10,
  "rangers-hut/hut.ts": 11,
  "shared-builds/ferry-shelter/plan.ts": 6,
  "shared-builds/gatehouse/plan.ts": 6,
  "shared-builds/tool-trailer/plan.ts": 6,
};

test("every example has its number, except those that are wrong on purpose", () => {
  const plans = checker
    .roots()
    .map((uri) => decodeURIComponent(uri.slice(examples.href.length)))
    .filter((file) => !file.startsWith("faulty-workshop/"));
  expect(plans.sort()).toEqual(Object.keys(mostPages).sort());
});

test.each(Object.entries(mostPages))(
  "%s: at most %d pages of A4, and no empty one",
  async (file, most) => {
    const pages = await benchPages(file, "A4");
    expect(pages.length).toBeLessThanOrEqual(most);
    // More than the head and the foot.
    for (const { texts } of pages) expect(texts.length).toBeGreaterThan(4);
  },
  60_000,
);

test("no word of a table is broken on paper: the side of a conductor, a size, a fuse family", async () => {
  const texts = (await benchPages("library-bus/bus.ts", "A4")).flatMap((page) =>
    page.texts.map(({ text }) => text.trim()),
  );
  for (const word of [
    "negative",
    "positive",
    "return",
    "emergency",
    "alternator",
    "controller",
    "Continuity",
  ]) {
    const lines = texts.filter(
      (text) => text !== "" && word.startsWith(text) && text.length >= 3 && text !== word,
    );
    expect([word, lines]).toEqual([word, []]);
  }
  expect(texts.filter((text) => text === "AWG")).toEqual([]);
}, 60_000);

describe("the first page", () => {
  const shed = (load: number) => `import { build, circuit } from "loomwright";
build({ name: "shed", insulationC: 105 });
circuit({ name: "winch", load: ${load}, continuous: false, oneWayFt: 10, gauge: 12, protect: 45 });
`;

  test("states every error and warning, before the drawing", async () => {
    const content = await reported(shed(48), "bench");
    const [heading, notice] = content.blocks;
    expect(heading).toMatchObject({ kind: "heading", text: "Before you work" });
    if (notice?.kind !== "notice") throw new Error("no notice");
    expect(notice.title).toContain("correct them before you build");
    expect(notice.lines.join("\n")).toMatch(/F1 error: winch: .*conductor\/ampacity/);
  });

  test("never says that a plan without findings is safe", async () => {
    const words = wordsOf(await reported(shed(2).replace("protect: 45", "protect: 5"), "bench")).join("\n");
    expect(words).toContain("Loomwright is a planning aid.");
    expect(words).toContain("none in the checks made");
    expect(words).not.toMatch(/\bsafe\b/i);
  });
});

describe("columns that say the same in every row", () => {
  test("are left out of the schedule, and said above it", async () => {
    const content = await reported(
      `import { build, circuit } from "loomwright";
build({ name: "shed", insulationC: 105 });
for (const name of ["lamp", "fan", "pump"]) circuit({ name, load: 2, oneWayFt: 9, gauge: 14, protect: 5 });
`,
      "bench",
    );
    const schedule = content.blocks.flatMap((block) =>
      block.kind === "table" && block.table.id === "wire-schedule" ? [block.table] : [],
    )[0]!;
    expect(schedule.above).toContain("Size: 14 AWG");
    expect(schedule.above).toContain("Insulation: 105 °C");
    expect(schedule.columns.map(({ title }) => title)).not.toContain("Size");
    expect(schedule.columns.map(({ title }) => title)).toContain("Name");
    expect(schedule.rows.map((row) => row.length)).toEqual(schedule.rows.map(() => schedule.columns.length));
  });
});
