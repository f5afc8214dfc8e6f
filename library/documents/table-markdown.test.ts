import fc from "fast-check";
import MarkdownIt from "markdown-it";
import { describe, expect, test } from "vitest";
import type { Table } from "./table.ts";
import { tableMarkdown } from "./table-markdown.ts";

const reader = new MarkdownIt({ html: true, linkify: true });

test("a table, with its heading and its notes", () => {
  const text = tableMarkdown({
    id: "spools",
    title: "Spools to buy",
    notes: ["One note."],
    columns: [
      { id: "size", title: "Size", align: "start" },
      { id: "lengthM", title: "Length, m", align: "end" },
      { id: "seen", title: "Seen", align: "start", toFillIn: true },
    ],
    rows: [["35 mm²", { value: 25.004, text: "25" }, null]],
  });
  expect(text).toBe(`## Spools to buy

| Size | Length, m | Seen |
| --- | ---: | --- |
| 35 mm² | 25 |  |

- One note.
`);
});

test("an empty one says so", () => {
  expect(tableMarkdown({ ...tableWith("x"), rows: [] })).toContain("No entries.");
});

describe("text from a plan is nothing but text", () => {
  const hostile = [
    "a | b",
    "`code`",
    "``",
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "[link](http://example.com)",
    "![image](http://example.com/x.png)",
    "http://example.com",
    "www.example.com",
    "**bold** _it_ ~~gone~~",
    "# heading",
    "1. list",
    "- list",
    "line\nbreak",
    "line\r\n| another | row |",
    "trailing backslash \\",
    "&lt;b&gt;",
    "[x]: http://example.com",
    "<!-- comment",
    "$$ x $$",
  ];
  test.each(hostile)("%j", (text) => {
    expect(readBack(text)).toEqual({ cell: seen(text), tags: plainTags });
  });

  test("any text", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: "grapheme" }), fc.stringMatching(/^[|`<>[\]()!*_\\#\-\n a]{0,12}$/)),
        (text) => {
          expect(readBack(text).tags).toEqual(plainTags);
        },
      ),
    );
  });
});

const plainTags = ["h2", "table", "thead", "tr", "th", "th", "tbody", "tr", "td", "td", "ul", "li"];

/** A reader's view of a table with this text as title, cell and note: the text of the cell, and every tag. */
function readBack(text: string) {
  const html = reader.render(tableMarkdown(tableWith(text)));
  const tags = [...html.matchAll(/<([a-z][a-z0-9]*)/g)].map((match) => match[1]);
  const cell = /<td[^>]*>([\s\S]*?)<\/td>/.exec(html)?.[1] ?? "";
  return { cell: decoded(cell), tags };
}

function tableWith(text: string): Table {
  const column = { align: "start" } as const;
  return {
    id: "t",
    title: `Title ${text}`,
    notes: [`Note ${text}`],
    columns: [
      { ...column, id: "a", title: `A ${text}` },
      { ...column, id: "b", title: "B" },
    ],
    rows: [[text, "last"]],
  };
}

/** As people see it: one line, without zero-width characters. */
function seen(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

function decoded(html: string): string {
  return html
    .replaceAll("\u200b", "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&");
}
