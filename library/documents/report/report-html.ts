import { xmlText } from "../diagram/xml-text.ts";
import type { Cell, Column, Table } from "../table.ts";
import { embeddedSvg } from "./embedded-svg.ts";
import { type Block, inOneLine, type ReportContent } from "./report-content.ts";
import { reportStyle } from "./report-style.ts";

/**
 * The report as one self-contained page of HTML: no network, no script, no file beside it. Also well-formed XML. The same content
 * gives the same bytes.
 */
export function reportHtml(content: ReportContent): string {
  const { title, subtitle, madeBy, blocks } = content;
  const setter = new Setter(anchorsOf(blocks));
  return `<!DOCTYPE html>
<html lang="en" xmlns="http://www.w3.org/1999/xhtml">
<head>
<meta charset="utf-8"/>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<meta name="generator" content="${xmlText(madeBy)}"/>
<meta name="color-scheme" content="light dark"/>
<title>${xmlText(title)}: report</title>
<style>
${reportStyle({ title, madeBy })}</style>
</head>
<body>
<header>
<h1>${xmlText(title)}</h1>
<p>${xmlText(subtitle)}</p>
</header>
${contents(blocks)}
<main>
${setter.set(blocks)}</main>
<footer><p>${xmlText(madeBy)}. ${xmlText(title)}.</p></footer>
</body>
</html>
`;
}

/** A list of the chapters with links. Only paper has page numbers. */
function contents(blocks: readonly Block[]): string {
  const entries = blocks.flatMap((block) =>
    block.kind === "heading" && block.level === 2
      ? [
          `<li><a href="#${block.id}"><span class="number">${block.number}</span> ${xmlText(block.text)}</a></li>`,
        ]
      : [],
  );
  return `<nav aria-labelledby="contents">
<h2 id="contents">Contents</h2>
<ol>
${entries.join("\n")}
</ol>
</nav>`;
}

/** Findings and sources that a number in the text may lead to. */
function anchorsOf(blocks: readonly Block[]): ReadonlySet<string> {
  return new Set(
    blocks.flatMap((block) => {
      if (block.kind === "finding")
        return [block.number, ...(block.following?.findings.map(({ number }) => number) ?? [])];
      if (block.kind !== "table" || block.table.id !== sourceTable) return [];
      return block.table.rows.flatMap(([number]) => (typeof number === "string" ? [number] : []));
    }),
  );
}

/** The numbers of sources lead to its rows. */
const sourceTable = "sources";

/** Sets blocks in their order. Remembers the page orientation and the figures so far. */
class Setter {
  private orientation: "portrait" | "landscape" = "portrait";
  private freshPage = false;
  private chapterOpen = false;
  private figures = 0;
  private readonly tables = new Map<string, number>();

  constructor(private readonly anchors: ReadonlySet<string>) {}

  set(blocks: readonly Block[]): string {
    const lines = blocks.map((block) => this.block(block));
    return lines.join("") + this.closeChapter();
  }

  private block(block: Block): string {
    switch (block.kind) {
      case "newPage":
        this.orientation = block.orientation;
        this.freshPage = true;
        return "";
      case "heading":
        return this.heading(block);
      case "paragraph":
        return `<p>${xmlText(block.text)}</p>\n`;
      case "notice":
        return notice(block, (text) => this.linked(text));
      case "list":
        return list(block.items);
      case "facts":
        return facts(block.facts, (text) => this.linked(text));
      case "table":
        return this.table(block.table);
      case "figure":
        return this.figure(block);
      case "finding":
        return this.finding(block);
    }
  }

  private heading({ level, id, number, text }: Extract<Block, { kind: "heading" }>): string {
    const words = `<span class="number">${number}</span> ${xmlText(text)}`;
    if (level === 3) return `<h3 id="${id}">${words}</h3>\n`;
    const open = `<section${this.pageClasses()} aria-labelledby="${id}">\n<h2 id="${id}">${words}</h2>\n`;
    const closed = this.closeChapter();
    this.chapterOpen = true;
    return closed + open;
  }

  private closeChapter(): string {
    const wasOpen = this.chapterOpen;
    this.chapterOpen = false;
    return wasOpen ? "</section>\n" : "";
  }

  /** The page orientation, and whether a fresh page begins here. */
  private pageClasses(): string {
    const fresh = this.freshPage ? " new-page" : "";
    this.freshPage = false;
    return ` class="${this.orientation}${fresh}"`;
  }

  private table(table: Table): string {
    // Two tables may have one name; their anchors may not.
    const times = (this.tables.get(table.id) ?? 0) + 1;
    this.tables.set(table.id, times);
    const id = xmlText(`table-${table.id}${times > 1 ? `-${times}` : ""}`);
    const head = table.columns.map(
      ({ title, ...column }) => `<th scope="col"${align(column)}>${xmlText(title)}</th>`,
    );
    const rows = table.rows.map((row) => this.row(table, row));
    const notes = table.notes.map((note) => `<p class="note">${xmlText(note)}</p>\n`).join("");
    const above = table.above === undefined ? "" : `<p class="note above">${xmlText(table.above)}</p>\n`;
    return `${above}<div class="table-frame" role="group" aria-labelledby="${id}" tabindex="0">
<table${table.columns.length > manyColumns ? ' class="many-columns"' : ""}>
<caption id="${id}">${xmlText(table.title)}</caption>
<thead><tr>${head.join("")}</tr></thead>
<tbody>
${rows.join("\n")}
</tbody>
</table>
</div>
${notes}`;
  }

  private row(table: Table, row: readonly Cell[]): string {
    const [first] = row;
    const isSource = table.id === sourceTable && typeof first === "string";
    const cells = row.map((cell, index) => {
      const column = table.columns[index] as Column;
      const words = this.linked(textOf(cell), column.id === "findings");
      const tag = index === 0 && words !== "" ? "th" : "td";
      return `<${tag}${tag === "th" ? ' scope="row"' : ""}${align(column)}>${words}</${tag}>`;
    });
    return `<tr${isSource ? ` id="${xmlText(first)}"` : ""}>${cells.join("")}</tr>`;
  }

  private figure({ svg, caption, description }: Extract<Block, { kind: "figure" }>): string {
    this.figures++;
    const prefix = `figure-${this.figures}`;
    return `<figure${this.pageClasses()}>
<div class="drawing" role="group" aria-label="${xmlText(caption)}" tabindex="0">
${embeddedSvg(svg, prefix)}
</div>
<figcaption><span class="number">Figure ${this.figures}</span> ${xmlText(caption)}</figcaption>
<details><summary>The same in words</summary><p>${xmlText(description)}</p></details>
</figure>
`;
  }

  private finding(finding: FindingBlock): string {
    const { number, severity, subject, message, rule, place, accepted, source, followsFrom, following } =
      finding;
    const title = `${number}-title`;
    const facts = [
      ["Accepted because", accepted ?? ""],
      ["Follows from", followsFrom ?? ""],
      ["Written at", place],
      ["Rule", rule],
      ["Source", source],
    ] as const;
    const rows = facts.flatMap(([name, value]) =>
      value === "" ? [] : [`<div><dt>${name}</dt><dd>${this.linked(value)}</dd></div>`],
    );
    return `<article class="finding ${severity}" id="${number}" aria-labelledby="${title}">
<h3 id="${title}"><span class="number">${number}</span> <span class="severity">${severityWords[severity]}</span> ${xmlText(subject)}</h3>
<p>${xmlText(message)}</p>
<dl class="small">${rows.join("")}</dl>
${followingFindings(following)}</article>
`;
  }

  /** Text with links: "[S4]", "(F2)" and, in places for numbers alone, "F2" lead to the items they name. */
  private linked(text: string, numbersAlone = false): string {
    const numbers = numbersAlone ? /\b[FA]\d+\b/g : /(?<=\[)S\d+(?=\])|(?<=[(,] ?)[FA]\d+(?=[,)])/g;
    return xmlText(text).replace(numbers, (number) =>
      this.anchors.has(number) ? `<a href="#${number}">${number}</a>` : number,
    );
  }
}

function followingFindings(following: FindingBlock["following"]): string {
  if (!following) return "";
  const items = following.findings.map((one) => {
    const { number, severity } = one;
    return `<li class="${severity}" id="${number}"><span class="number">${number}</span> <span class="severity">${severityWords[severity]}</span> ${xmlText(inOneLine(one))}</li>`;
  });
  return `<p class="small">${xmlText(following.title)}</p>
<ul class="small">${items.join("")}</ul>
`;
}

type FindingBlock = Extract<Block, { kind: "finding" }>;

/** Set smaller, to have room on a landscape page. */
const manyColumns = 9;

const severityWords = {
  error: "Error",
  warning: "Warning",
  info: "Information",
  hint: "Hint",
} as const;

type Words = (text: string) => string;

function notice({ title, lines }: Extract<Block, { kind: "notice" }>, words: Words): string {
  const items = lines.map((line) => `<li>${words(line)}</li>`).join("\n");
  return `<div class="notice" role="note">
<p class="notice-title">${xmlText(title)}</p>
<ul>
${items}
</ul>
</div>
`;
}

function list(items: readonly string[]): string {
  return `<ul>
${items.map((item) => `<li>${xmlText(item)}</li>`).join("\n")}
</ul>
`;
}

function facts(pairs: readonly { readonly name: string; readonly value: string }[], words: Words): string {
  const rows = pairs.map(({ name, value }) => `<div><dt>${xmlText(name)}</dt><dd>${words(value)}</dd></div>`);
  return `<dl class="facts">
${rows.join("\n")}
</dl>
`;
}

function textOf(cell: Cell): string {
  return cell === null ? "" : typeof cell === "string" ? cell : cell.text;
}

function align({ align: at, toFillIn }: Pick<Column, "align" | "toFillIn">): string {
  const classes = [at === "end" ? "end" : "", toFillIn ? "pen" : ""].filter(Boolean).join(" ");
  return classes === "" ? "" : ` class="${classes}"`;
}
