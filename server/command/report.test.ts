import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { sharedSandbox } from "../evaluate/shared-sandbox.tester.ts";
import { sharedLayouts } from "../output/shared-layouts.tester.ts";
import type { Host } from "./host.ts";
import { interruptible } from "./interruption.ts";
import { run } from "./run.ts";

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loomwright-report-"));
  write("package.json", "{}");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const plan = `import { build, circuit } from "loomwright";
build({ name: "shed", insulationC: 105 });
circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
`;

describe("where a report goes", () => {
  test("without more words, beside where the command runs, named after its plan", async () => {
    write("plans/shed.ts", plan);
    const { code, out, err } = await loomwright("report", "plans/shed.ts");
    expect({ code, out, err }).toEqual({
      code: 0,
      out: "plans-shed.report.html: the report of plans/shed.ts\n",
      err: "",
    });
    expect(read("plans-shed.report.html")).toContain("<title>shed: report</title>");
  });

  test("to the file that is named, of the kind that its ending says", async () => {
    write("shed.ts", plan);
    expect((await loomwright("report", "shed.ts", "--out", "for the surveyor.HTML")).code).toBe(0);
    expect(read("for the surveyor.HTML")).toMatch(/^<!DOCTYPE html>/);
    expect((await loomwright("report", "shed.ts", "--out", "shed.pdf", "--page", "Letter")).code).toBe(0);
    const pdf = readFileSync(join(folder, "shed.pdf"), "latin1");
    expect(pdf).toMatch(/^%PDF-/);
    // 8.5 in by 11 in, in points.
    expect(pdf).toMatch(/\/MediaBox \[0 0 612 792\]/);
    expect((await loomwright("report", "shed.ts", "--out", "large.pdf", "--page", "A3")).code).toBe(0);
    // ISO 216: 297 mm by 420 mm.
    expect(readFileSync(join(folder, "large.pdf"), "latin1")).toMatch(/\/MediaBox \[0 0 841\.89 1190\.551\]/);
  });

  test("of two plans of one name, one after the other: each has its own", async () => {
    write("boat/plan.ts", plan);
    write("hut/plan.ts", plan.replace("lamp", "stove fan"));
    write("hut/plan.mts", plan.replace("lamp", "pump"));
    for (const one of ["boat/plan.ts", "hut/plan.ts"])
      expect((await loomwright("report", one, "--out", "out")).code).toBe(0);
    expect(read("out/boat-plan.report.html")).toContain("lamp");
    expect(read("out/hut-plan.report.html")).toContain("stove fan");
    expect((await loomwright("report", "hut", "--out", "both")).code).toBe(0);
    expect(readdirSync(join(folder, "both")).sort()).toEqual([
      "hut-plan.report.html",
      "hut-plan.ts.report.html",
    ]);
  });

  test("for the bench: the drawing, the schedule, the fuse map and the checks, beside the inspector's", async () => {
    write("shed.ts", plan);
    for (const edition of ["bench", "inspector"])
      expect((await loomwright("report", "shed.ts", "--edition", edition)).code).toBe(0);
    const bench = read("shed.bench.html");
    const chapters = [...bench.matchAll(/<h2 id="([^"]+)"/g)].map(([, id]) => id);
    expect(chapters).toEqual(["contents", "before-work", "diagrams", "schedules", "first-power"]);
    for (const title of ["Wire schedule", "Fuse map", "Before first power, 1: conductors"])
      expect(bench).toContain(title);
    expect(bench).not.toMatch(/Spools to buy|Parts list/);
    expect(read("shed.report.html")).toContain("Spools to buy");
    const { code, err } = await loomwright("report", "shed.ts", "--edition", "shop");
    expect([code, err]).toEqual([2, expect.stringContaining("--edition is inspector or bench, not 'shop'.")]);
  });

  test("of several plans, each into a folder, with the folders of the plans in the names", async () => {
    write("boat/plan.ts", plan);
    write("hut/plan.ts", plan);
    write("van.ts", plan);
    expect((await loomwright("report", "--out", "handed out")).code).toBe(0);
    expect(readdirSync(join(folder, "handed out")).sort()).toEqual([
      "boat-plan.report.html",
      "hut-plan.report.html",
      "van.report.html",
    ]);
  });

  test("the same plan gives the same bytes", async () => {
    write("shed.ts", plan);
    for (const kind of ["html", "pdf"]) {
      expect((await loomwright("report", "shed.ts", "--out", `first.${kind}`)).code).toBe(0);
      const again = ["report", "shed.ts", "--out", `second.${kind}`];
      expect((await loomwright(again, { ownThreads: true })).code).toBe(0);
    }
    expect(read("first.html")).toBe(read("second.html"));
    expect(readFileSync(join(folder, "first.pdf"))).toEqual(readFileSync(join(folder, "second.pdf")));
  });
});

describe("what is there already", () => {
  test.each(["report.html", "report.pdf"])(
    "%s of somebody else stays as it is, unless forced",
    async (name) => {
      write("shed.ts", plan);
      write(name, "my own notes");
      const { code, out, err } = await loomwright("report", "shed.ts", "--out", name);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(err).toBe(
        `loomwright: ${name} was not made by Loomwright; only --force overwrites it; no report was written.\n`,
      );
      expect(read(name)).toBe("my own notes");
      expect((await loomwright("report", "shed.ts", "--out", name, "--force")).code).toBe(0);
      expect(read(name)).not.toContain("my own notes");
      // The file is ours by now.
      expect((await loomwright("report", "shed.ts", "--out", name)).code).toBe(0);
    },
  );

  test("a report of ours is renewed, and nothing else is left behind", async () => {
    write("shed.ts", plan);
    await loomwright("report", "shed.ts");
    write("shed.ts", plan.replaceAll("lamp", "lantern"));
    expect((await loomwright("report", "shed.ts")).code).toBe(0);
    expect(read("shed.report.html")).toContain("lantern");
    expect(readdirSync(folder).sort()).toEqual(["package.json", "shed.report.html", "shed.ts"]);
  });

  test.each([
    [
      "a folder in its place",
      () => mkdirSync(join(folder, "shed.html")),
      /^loomwright: shed\.html is a folder; /,
    ],
    [
      "a link to nothing",
      () => symlinkSync(join(folder, "gone.html"), join(folder, "shed.html")),
      /^loomwright: shed\.html is a link to a missing file; /,
    ],
  ])("%s is said, and nothing is written", async (_, prepare, expected) => {
    write("shed.ts", plan);
    prepare();
    const { code, out, err } = await loomwright("report", "shed.ts", "--out", "shed.html");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(expected);
  });

  test("a folder that is not there is said", async () => {
    write("shed.ts", plan);
    const { code, err } = await loomwright("report", "shed.ts", "--out", "nowhere/shed.html");
    expect(code).toBe(2);
    expect(err).toMatch(
      /^loomwright: nowhere\/shed\.html is in a folder that does not exist; no report was written/,
    );
  });
});

describe("a plan that could not be evaluated gets no report", () => {
  test.each([
    ["throws", `${plan}throw new Error("no such lamp");\n`, /shed\.ts:4:\d+: .*no such lamp/],
    ["never ends", `${plan}for (;;) {}\n`, /shed\.ts:4:\d+: The plan was stopped after/],
    [
      "is half typed",
      `${plan}circuit({ name: "lamp", load: `,
      /shed\.ts:4:\d+: this text is not complete TypeScript yet/,
    ],
  ])("one that %s", async (_, text, expected) => {
    write("shed.ts", text);
    const { code, out, err } = await loomwright("report", "shed.ts");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(expected);
    expect(existsSync(join(folder, "shed.report.html"))).toBe(false);
  });

  test("and those beside it still get theirs", async () => {
    write("bad.ts", `${plan}throw new Error("no");\n`);
    write("good.ts", plan);
    const { code, out } = await loomwright("report");
    expect(code).toBe(2);
    expect(out).toBe("good.report.html: the report of good.ts\n");
  });

  test("one with findings gets one, and the code does not judge", async () => {
    write("shed.ts", plan.replace("gauge: 14", "gauge: 18"));
    expect((await loomwright("check", "shed.ts")).code).toBe(1);
    expect((await loomwright("report", "shed.ts")).code).toBe(0);
  });
});

describe("words that it does not understand", () => {
  test.each([
    [["--out", "shed.docx"], "--out takes a file that ends in .html or .pdf, or a folder, not 'shed.docx'"],
    [["--out", ""], "--out takes the name of a file or a folder"],
    [["--page", "A5", "--out", "shed.pdf"], "--page is A4, Letter or A3, not 'A5'"],
    [["--page", "A4"], "--page is for a PDF: give a file that ends in .pdf with --out"],
    [["--view", "wiring"], "'report' does not take --view"],
  ])("%j", async (words, expected) => {
    write("shed.ts", plan);
    const { code, out, err } = await loomwright("report", "shed.ts", ...words);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain(expected);
    expect(readdirSync(folder).sort()).toEqual(["package.json", "shed.ts"]);
  });

  test("one file for several plans", async () => {
    write("boat.ts", plan);
    write("hut.ts", plan);
    const { code, err } = await loomwright("report", "--out", "all.html");
    expect(code).toBe(2);
    expect(err).toContain("--out names one file, and there are 2 plans");
    expect(existsSync(join(folder, "all.html"))).toBe(false);
  });
});

test("for a person who looks on there is a progress line, and it goes again", async () => {
  write("shed.ts", plan);
  const { err } = await loomwright(["report", "shed.ts"], { progress: true });
  expect(err).toBe("\r\u001b[Kwriting the report of shed.ts\r\u001b[K");
});

test("Ctrl+C breaks off in order, is said, and leaves no listener behind", async () => {
  const before = process.listenerCount("SIGINT");
  const { outside, said } = outsideOf({});
  const code = await interruptible(outside, async (signal) => {
    process.emit("SIGINT");
    expect(signal.aborted).toBe(true);
    signal.throwIfAborted();
    return 0;
  });
  expect(code).toBe(2);
  expect(said().err).toContain("interrupted");
  expect(process.listenerCount("SIGINT")).toBe(before);
});

interface HostOptions {
  readonly progress?: boolean;
  /** Threads that end with the command, as outside of tests: no plan is run, and no graph laid out, by those of other tests. */
  readonly ownThreads?: boolean;
}

async function loomwright(...given: string[] | [string[], HostOptions]) {
  const [words, options] = (Array.isArray(given[0]) ? given : [given, {}]) as [string[], HostOptions];
  const { outside, said } = outsideOf(options);
  const code = await run(words, outside);
  return { code, ...said() };
}

function outsideOf({ progress = false, ownThreads = false }: HostOptions) {
  let [out, err] = ["", ""];
  const outside: Host = {
    cwd: folder,
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    terminal: { colour: false, progress },
    ...(ownThreads ? {} : { sandbox: sharedSandbox, layouts: sharedLayouts }),
  };
  return { outside, said: () => ({ out, err }) };
}

function write(file: string, text: string): void {
  mkdirSync(dirname(join(folder, file)), { recursive: true });
  writeFileSync(join(folder, file), text);
}

function read(file: string): string {
  return readFileSync(join(folder, file), "utf8");
}
