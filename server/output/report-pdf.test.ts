import fc from "fast-check";
import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import type { Block, ReportContent } from "../../library/documents/report/report-content.ts";
import type { Table } from "../../library/documents/table.ts";
import { sampled } from "../../tests/setup/sampled.ts";
import { type ReadPage, type ReadPdf, readPdf } from "./pdf.tester.ts";
import { reportPdf } from "./report-pdf.ts";

const madeBy = "Loomwright 0.1.0";

async function read(blocks: readonly Block[], page: "A4" | "Letter" = "A4"): Promise<ReadPdf> {
  return readPdf((await reportPdf(report(blocks), { page })).bytes);
}

function report(blocks: readonly Block[]): ReportContent {
  return { title: "Library bus", subtitle: "A plan, not a measurement", madeBy, blocks };
}

/** The text of a page as read aloud, without spaces: a line's end removes them. */
const spoken = ({ texts }: ReadPage) =>
  texts
    .filter(({ tag }) => tag !== "Artifact" && tag !== "TOCI")
    .map(({ text }) => text)
    .join("");
const close = (text: string) => text.replaceAll(/\s+/g, "");
const allSpoken = ({ pages }: ReadPdf) => close(pages.map(spoken).join(""));
const footOf = ({ texts }: ReadPage) => texts.filter(({ tag }) => tag === "Artifact").map(({ text }) => text);

/** The whole text of a report, in order. */
function said({ title, subtitle, blocks }: ReportContent): string {
  const texts = blocks.flatMap((block): (string | undefined)[] => {
    switch (block.kind) {
      case "heading":
        return [block.number, block.text];
      case "paragraph":
        return [block.text];
      case "notice":
        return [block.title, ...block.lines];
      case "list":
        return block.items.flatMap((item) => ["•", item]);
      case "facts":
        return block.facts.flatMap(({ name, value }) => [name, value]);
      case "table": {
        const { title: caption, columns, rows, notes } = block.table;
        const cells = rows.flat().map((cell) => (typeof cell === "string" ? cell : cell?.text));
        return [caption, ...columns.map((column) => column.title), ...cells, ...notes];
      }
      case "figure":
        return [...block.svg.matchAll(/<text[^>]*>([^<]*)/g)].map((match) => match[1]).concat(block.caption);
      case "finding": {
        const { number, severity, subject, message, accepted, source, place, rule, followsFrom, following } =
          block;
        const words = { error: "Error", warning: "Warning", info: "Information", hint: "Hint" };
        const word = words[severity];
        const label = `${number} ${word}${accepted === undefined ? "" : ", accepted"}`;
        return [
          subject === "" ? label : `${label}: ${subject}`,
          message,
          accepted === undefined ? "" : `Accepted because: ${accepted}`,
          followsFrom === undefined ? "" : `Follows from: ${followsFrom}`,
          source === "" ? "" : `Source: ${source}`,
          [place, rule].filter((one) => one !== "").join(" · "),
          following?.title ?? "",
          ...(following?.findings ?? []).map(
            (one) =>
              `${one.number} ${words[one.severity]}: ${one.subject === "" ? "" : `${one.subject}: `}${one.message} (${[one.place, one.rule].filter(Boolean).join(", ")})`,
          ),
        ];
      }
      default:
        return [];
    }
  });
  return close([title, subtitle, ...texts].join(""));
}

const heading = (level: 2 | 3, number: string, text: string): Block => ({
  ...{ kind: "heading", level, number, text },
  id: `h-${number}`,
});

function wires(rows: number, columns = 6): Table {
  const titles = [
    "No.",
    "Name",
    "From",
    "To",
    "Size",
    "Cut length, m",
    "Colour",
    "Label",
    "Insulation, °C",
    "At from",
  ];
  return {
    id: "wires",
    title: "Wires of the bus",
    notes: ["Cut lengths hold slack."],
    columns: titles.slice(0, columns).map((title) => ({
      ...{ id: title, title },
      align: /No\.|,/.test(title) ? "end" : "start",
    })),
    rows: Array.from({ length: rows }, (_, row) =>
      titles
        .slice(0, columns)
        .map((title, column) =>
          /No\.|,/.test(title)
            ? { value: row + column, text: `${row + column}` }
            : `${title.toLowerCase()} of the wire in row ${row}`,
        ),
    ),
  };
}

const picture = (widthPx: number, heightPx: number): Block => ({
  kind: "figure",
  svg: `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}" viewBox="0 0 ${widthPx} ${heightPx}" font-family="DejaVu Sans, Verdana, sans-serif" font-size="12"><rect width="${widthPx}" height="${heightPx}" fill="#fff"/><text x="${widthPx - 10}" y="${heightPx - 10}" text-anchor="end" font-weight="bold">last word</text></svg>`,
  ...{ widthPx, heightPx, caption: "Figure 1", description: "A bank feeds a panel." },
});

describe("pages", () => {
  // ISO 216: A4 is 210 mm × 297 mm; Letter is 8.5 in × 11 in. A point is 1/72 in.
  test.each([
    ["A4", 595.28, 841.89],
    ["Letter", 612, 792],
  ] as const)(
    "%s is %d × %d points, and lies on its side where it is told to",
    async (page, width, height) => {
      const { pages } = await read(
        [
          { kind: "paragraph", text: "upright" },
          { kind: "newPage", orientation: "landscape" },
          { kind: "paragraph", text: "on its side" },
          { kind: "newPage", orientation: "portrait" },
          { kind: "paragraph", text: "upright again" },
        ],
        page,
      );
      const sizes = pages.map(({ widthPt, heightPt }) => [widthPt, heightPt]);
      expect(sizes).toEqual([
        [expect.closeTo(width, 2), expect.closeTo(height, 2)],
        [expect.closeTo(height, 2), expect.closeTo(width, 2)],
        [expect.closeTo(width, 2), expect.closeTo(height, 2)],
      ]);
    },
  );

  test("each has its number of how many, and from the second on the title", async () => {
    const { pages } = await read([{ kind: "table", table: wires(200) }]);
    expect(pages.length).toBeGreaterThan(3);
    pages.forEach((page, index) => {
      expect(footOf(page)).toContain(`page ${index + 1} of ${pages.length}`);
      expect(footOf(page)).toContain(madeBy);
      expect(footOf(page).includes("Library bus")).toBe(index > 0);
    });
  });

  test("a page on its side that nothing was put on is not left empty", async () => {
    const { pages } = await read([
      { kind: "paragraph", text: "upright" },
      { kind: "newPage", orientation: "landscape" },
      heading(2, "1", "Wires"),
      { kind: "table", table: wires(3) },
    ]);
    expect(pages).toHaveLength(2);
    expect(pages[1]!.widthPt).toBeGreaterThan(pages[1]!.heightPt);
  });
});

describe("tables", () => {
  test("the head is on every page that the table goes on to, and is read aloud once", async () => {
    const { pages } = await read([{ kind: "table", table: wires(200) }]);
    expect(pages.length).toBeGreaterThan(3);
    for (const { texts } of pages) {
      const titles = texts.map(({ text }) => text);
      for (const title of ["No.", "From", "To", "Size"]) expect(titles).toContain(title);
    }
    // The head, and each row: a table that continues over pages is one table.
    expect(pages[0]!.elements).toMatchObject({ Table: 1, TH: 6, TR: 201, TD: 1200 });
  });

  test("a row is not split, unless it is higher than a page; then nothing of it is lost", async () => {
    const long = Array.from({ length: 900 }, (_, index) => `word${index}`).join(" ");
    const blocks: Block[] = [
      {
        kind: "table",
        table: {
          ...wires(2, 2),
          rows: [
            ["1", "short"],
            ["2", long],
            ["3", "end"],
          ],
        },
      },
    ];
    const pdf = await read(blocks);
    expect(pdf.pages.length).toBeGreaterThan(1);
    expect(allSpoken(pdf)).toBe(said(report(blocks)));
    const rows = (await read([{ kind: "table", table: wires(150, 4) }])).pages.map(spoken);
    for (const page of rows) expect(close(page)).toMatch(/ofthewireinrow\d+(?:Cutlengthsholdslack\.)?$/);
  });

  test("one that is crammed upright lies on its side, with its heading", async () => {
    const { pages } = await read([
      { kind: "paragraph", text: "upright" },
      heading(2, "1", "Wires"),
      { kind: "table", table: wires(20, 10) },
      heading(2, "2", "Upright again"),
      { kind: "paragraph", text: "text" },
    ]);
    const lying = pages.map(({ widthPt, heightPt }) => widthPt > heightPt);
    expect(lying[0]).toBe(false);
    expect(lying[1]).toBe(true);
    expect(lying.at(-1)).toBe(false);
    expect(spoken(pages[1]!)).toMatch(/^1 Wires/);
  });

  test("numbers end where their column ends", async () => {
    const { pages } = await read([
      {
        kind: "table",
        table: { ...wires(0, 1), rows: [1, 12, 123].map((value) => [{ value, text: `${value}` }]) },
      },
    ]);
    const ends = pages[0]!.texts.filter(({ tag }) => tag === "TD").map(({ x, widthPt }) => x + widthPt);
    expect(ends).toHaveLength(3);
    for (const end of ends) expect(end).toBeCloseTo(ends[0]!, 1);
  });

  test("a thousand rows are all there", async () => {
    const blocks: Block[] = [{ kind: "table", table: wires(1000) }];
    const pdf = await read(blocks);
    expect(allSpoken(pdf)).toBe(said(report(blocks)));
  });
});

describe("figures", () => {
  test("fit between the margins, keep their text, and say what they show", async () => {
    for (const [width, height] of [
      [300, 200],
      [4000, 900],
      [500, 6000],
    ] as const) {
      const { pages } = await read([heading(2, "1", "Diagram"), picture(width, height)]);
      const page = pages.find(({ alternatives }) => alternatives.length > 0)!;
      expect(page.alternatives).toEqual(["A bank feeds a panel."]);
      const word = page.texts.find(({ text }) => text === "last word")!;
      expect(word.x).toBeGreaterThan(50);
      expect(word.x + word.widthPt).toBeLessThan(page.widthPt - 50);
      expect(word.y).toBeLessThan(page.heightPt - 50);
      expect(word.sizePt).toBeLessThanOrEqual(9.001);
      expect(spoken(page)).toContain("Figure 1");
    }
  });

  test("a wide one lies on its side, with its heading", async () => {
    const { pages } = await read([
      { kind: "paragraph", text: "upright" },
      heading(2, "1", "Diagram"),
      picture(1600, 900),
    ]);
    expect(pages.map(({ widthPt, heightPt }) => widthPt > heightPt)).toEqual([false, true]);
    expect(spoken(pages[1]!)).toMatch(/^1 Diagram/);
  });
});

describe("figures that are too small to be read", () => {
  const words = Array.from({ length: 12 }, (_, index) => ({
    x: 60 + (index % 4) * 700,
    y: 90 + Math.floor(index / 4) * 700,
  }));
  const figure: Block = {
    ...(picture(2500, 1600) as Extract<Block, { kind: "figure" }>),
    svg: `<svg xmlns="http://www.w3.org/2000/svg" width="2500" height="1600" viewBox="0 0 2500 1600" font-family="DejaVu Sans" font-size="10">${words.map(({ x, y }, index) => `<text x="${x}" y="${y}">word ${index}</text>`).join("")}</svg>`,
  };

  test("are shown again in parts, in which every text can be read, and are read aloud once", async () => {
    const { pages } = await read([
      { kind: "paragraph", text: "before" },
      figure,
      { kind: "paragraph", text: "behind" },
    ]);
    const parts = pages.flatMap((page) => {
      const [, part, count] = /part (\d+) of (\d+)/.exec(footOf(page).join(" ")) ?? [];
      return part === undefined ? [] : [{ page, part: Number(part), count: Number(count) }];
    });
    expect(parts.map(({ part }) => part)).toEqual(parts.map((_, index) => index + 1));
    expect(parts.length).toBe(parts[0]!.count);
    expect(parts.length).toBeGreaterThan(1);
    expect(pages.flatMap(footOf)).toContain(`Shown larger on the next ${parts.length} pages.`);
    for (const index of words.keys()) {
      const whole = parts.flatMap(({ page }) =>
        page.texts.filter(
          ({ text, x, y, widthPt }) =>
            text === `word ${index}` &&
            x > 51 &&
            x + widthPt < page.widthPt - 51 &&
            y > 60 &&
            y < page.heightPt - 56,
        ),
      );
      expect(whole.length, `word ${index}`).toBeGreaterThan(0);
      // 5 points: smaller print is unreadable at the bench.
      for (const { sizePt } of whole) expect(sizePt).toBeGreaterThan(5);
    }
    expect(close(pages.map(spoken).join("")).match(/word7/g)).toHaveLength(1);
    expect(spoken(pages.at(-1)!)).toBe("behind");
  });

  test("others are shown once", async () => {
    expect((await read([picture(900, 500)])).pages.flatMap(footOf).join(" ")).not.toContain("part");
  });
});

describe("what a reader finds his way by", () => {
  const chapters = ["Summary", "Wires", "Sources"];
  const blocks: Block[] = chapters.flatMap((chapter, index) => [
    heading(2, `${index + 1}`, chapter),
    heading(3, `${index + 1}.1`, `More of ${chapter}`),
    { kind: "table", table: wires(60) },
  ]);

  test("bookmarks and the list of contents lead to the page of each heading", async () => {
    const { pages, bookmarks } = await read(blocks);
    const pageOf = (text: string) =>
      1 + pages.findIndex(({ texts }) => texts.some((one) => /^H/.test(one.tag ?? "") && one.text === text));
    expect(bookmarks).toEqual(
      chapters.flatMap((chapter, index) =>
        [`${index + 1} ${chapter}`, `${index + 1}.1 More of ${chapter}`].map((title) => ({
          title,
          page: pageOf(title),
        })),
      ),
    );
    const contents = pages[0]!.texts.filter(({ tag, text }) => tag === "TOCI" && text.trim() !== "");
    expect(contents.map(({ text }) => text)).toEqual(
      chapters.flatMap((chapter, index) => {
        const title = `${index + 1} ${chapter}`;
        return [title, `${pageOf(title)}`];
      }),
    );
  });

  test("title, language and maker stand in the file; the title is harmless in its XML too", async () => {
    const content = { ...report(blocks), title: 'Bus </rdf:li> & "two" (x\\)' };
    const { info, xmp, tagged, language, preferences } = await readPdf(
      (await reportPdf(content, { page: "A4" })).bytes,
    );
    expect(info.Title).toBe(`${content.title} – A plan, not a measurement`);
    expect(info.Producer).toMatch(/^Loomwright \d/);
    expect(info.CreationDate).toBeUndefined();
    expect([tagged, language, preferences?.DisplayDocTitle]).toEqual([true, "en", true]);
    let text = "";
    const parser = new SaxesParser();
    parser.on("text", (piece) => {
      text += piece;
    });
    parser.write(xmp).close();
    expect(text).toContain(content.title);
  });
});

describe("characters that the typeface does not have", () => {
  test("are drawn as boxes, and told", async () => {
    const text = "中 🔥 a\u202Eb\u0007 Ω ✓";
    const { bytes, missing } = await reportPdf(report([{ kind: "paragraph", text }]), { page: "A4" });
    expect([...missing].sort()).toEqual(["\u0007", "\u202E", "中", "🔥"].sort());
    const { pages } = await readPdf(bytes);
    expect(spoken(pages[0]!)).toContain("□ □ a□b□ Ω ✓");
    expect(pages[0]!.missingGlyphs).toBe(0);
  });

  test("in a drawing too", async () => {
    const figure = picture(300, 200) as Extract<Block, { kind: "figure" }>;
    const { missing } = await reportPdf(report([{ ...figure, svg: figure.svg.replace("last", "中") }]), {
      page: "A4",
    });
    expect(missing).toEqual(["中"]);
  });
});

test("the same content gives the same bytes", async () => {
  const content = report([heading(2, "1", "Wires"), { kind: "table", table: wires(40) }, picture(400, 300)]);
  const [one, two] = [await reportPdf(content, { page: "A4" }), await reportPdf(content, { page: "A4" })];
  expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
});

test("cancelling breaks off in the middle", async () => {
  const cancel = new AbortController();
  const rows = wires(3000).rows;
  let asked = 0;
  const table = {
    ...wires(0),
    rows: new Proxy(rows, {
      get(target, key, receiver) {
        if (key === "entries") asked++;
        if (key === "entries") setImmediate(() => cancel.abort(new Error("enough")));
        return Reflect.get(target, key, receiver);
      },
    }),
  };
  const going = reportPdf(report([{ kind: "table", table }]), { page: "A4", signal: cancel.signal });
  await expect(going).rejects.toThrow("enough");
  expect(asked).toBe(1);
});

describe("whatever stands in a report", () => {
  const word = fc.oneof(
    {
      weight: 8,
      arbitrary: fc.string({
        minLength: 1,
        maxLength: 12,
        unit: fc.constantFrom(..."abcdefgß°ΩW-/.,()\\<>&"),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.string({ minLength: 60, maxLength: 200, unit: fc.constantFrom(..."abcdef/-") }),
    },
  );
  const text = fc.array(word, { minLength: 1, maxLength: 60 }).map((words) => words.join(" "));
  const short = fc.array(word, { minLength: 1, maxLength: 4 }).map((words) => words.join(" "));
  // A row that takes most of a page is broken, and then not read in order; it has a test of its own.
  const cell = fc.oneof(
    short.map((words) => words.slice(0, 40).trim()),
    fc.constant(null),
    fc.nat().map((value) => ({ value, text: `${value}` })),
  );
  const table = fc
    .record({
      columns: fc.array(fc.record({ title: short, align: fc.constantFrom("start", "end") }), {
        minLength: 1,
        maxLength: 9,
      }),
      height: fc.nat(40),
    })
    .chain(({ columns, height }) =>
      fc.record({
        id: fc.constant("t"),
        title: short,
        notes: fc.array(text, { maxLength: 2 }),
        columns: fc.constant(
          columns.map((column, index) => ({
            ...column,
            align: column.align as "start" | "end",
            id: `${index}`,
          })),
        ),
        rows: fc.array(fc.tuple(...columns.map(() => cell)), { minLength: height, maxLength: height }),
      }),
    );
  const following = fc.record({
    number: fc.constant("F2"),
    severity: fc.constantFrom("warning" as const, "info" as const),
    ...{ rule: fc.constant("bus/rating"), subject: short, message: text, place: short },
  });
  const block: fc.Arbitrary<Block> = fc.oneof(
    fc.record({ kind: fc.constant("paragraph" as const), text }),
    fc.record({ kind: fc.constant("list" as const), items: fc.array(text, { minLength: 1, maxLength: 6 }) }),
    fc.record({
      kind: fc.constant("notice" as const),
      title: short,
      lines: fc.array(text, { maxLength: 30 }),
    }),
    fc.record({
      kind: fc.constant("facts" as const),
      facts: fc.array(fc.record({ name: short, value: text }), { minLength: 1, maxLength: 12 }),
    }),
    fc.record(
      {
        kind: fc.constant("finding" as const),
        number: fc.constant("F1"),
        severity: fc.constantFrom("error" as const, "warning" as const, "info" as const, "hint" as const),
        ...{
          rule: fc.constant("conductor/ampacity"),
          subject: short,
          message: text,
          place: short,
          source: short,
        },
        followsFrom: short,
        following: fc.record({
          title: short,
          findings: fc.array(following, { minLength: 1, maxLength: 40 }),
        }),
      },
      { requiredKeys: ["kind", "number", "severity", "rule", "subject", "message", "place", "source"] },
    ),
    fc.record({ kind: fc.constant("table" as const), table }),
    fc
      .record({ width: fc.integer({ min: 50, max: 3000 }), height: fc.integer({ min: 50, max: 3000 }) })
      .map(({ width, height }) => picture(width, height)),
    fc.record({
      kind: fc.constant("newPage" as const),
      orientation: fc.constantFrom("portrait" as const, "landscape" as const),
    }),
  );
  const chapter = fc
    .record({
      title: short,
      deeper: fc.boolean(),
      blocks: fc.array(block, { minLength: 1, maxLength: 5 }).filter(([first]) => first!.kind !== "newPage"),
    })
    .map(({ title, deeper, blocks }) => [
      heading(2, "1", title),
      ...(deeper ? [heading(3, "1.1", title)] : []),
      ...blocks,
    ]);

  test.each(sampled("random reports on paper", [20260101, 20260102, 20260103]))(
    "all of it is on paper, in order, between the margins; no heading stands alone at the foot (seed %i)",
    async (seed) => {
      await fc.assert(
        fc.asyncProperty(fc.array(chapter, { minLength: 1, maxLength: 5 }), async (chapters) => {
          const blocks = chapters.flat();
          const pdf = await read(blocks);
          expect(allSpoken(pdf)).toBe(said(report(blocks)));
          for (const page of pdf.pages) {
            expect(page.missingGlyphs).toBe(0);
            const read = page.texts.filter(
              ({ tag, text: drawn }) => tag !== "Artifact" && drawn.trim() !== "",
            );
            for (const { x, y, widthPt, text: drawn } of read) {
              expect(x, drawn).toBeGreaterThanOrEqual(50.9);
              expect(x + widthPt, drawn).toBeLessThanOrEqual(page.widthPt - 50.9);
              expect(y, drawn).toBeLessThan(page.heightPt - 55);
            }
            // A page that repeats a part of a figure has no text to read aloud.
            if (footOf(page).some((drawn) => drawn.startsWith("part "))) continue;
            expect(read.filter(({ tag }) => tag !== "TOCI").at(-1)?.tag).not.toMatch(/^H[23]$/);
          }
        }),
        { numRuns: 7, seed },
      );
    },
    120_000,
  );
});
