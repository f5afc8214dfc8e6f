import { type Block, inOneLine } from "../../library/documents/report/report-content.ts";
import { boxedLines, type Frame } from "./boxed-lines.ts";
import { drawSvg, naturalPtPerPx } from "./draw-svg.ts";
import { enlargement, placeEnlarged, sheets } from "./enlarged-figure.ts";
import type { Orientation, PageSize } from "./page-size.ts";
import { areaOf, type Pages } from "./pages.ts";
import { artifact, marked, structure } from "./pdf-file.ts";
import { type ContentsEntry, pageCount } from "./report-frame.ts";
import { type TableOnPaper, tableOnPaper } from "./table-on-paper.ts";
import { lineHeightPt, type TextStyle } from "./text-lines.ts";

/** One block, ready to be placed. */
export interface Piece {
  /** The height that must fit on the page where it begins, in the current orientation, pt. */
  leadPt(): number;
  /** The page that it needs. Undefined: it has the orientation of its surroundings. */
  needs?(page: PageSize): Orientation | undefined;
  place(breathe: () => Promise<void>): void | Promise<void>;
}

interface Where {
  readonly pages: Pages;
  readonly contents: ContentsEntry[];
  /** The headings that must stay with this block. */
  readonly above: readonly Piece[];
}

export function pieceOnPaper(block: Block, where: Where): Piece {
  const { pages } = where;
  switch (block.kind) {
    case "heading":
      return heading(block, where);
    case "paragraph":
      return {
        leadPt: () => 2 * lineHeightPt(body),
        place() {
          pages.paragraph(block.text, body);
          pages.skip(gapPt);
        },
      };
    case "list":
      return list(block.items, pages);
    case "facts":
      return facts(block.facts, pages);
    case "notice":
      return boxed(pages, notice(block));
    case "finding":
      return boxed(pages, finding(block));
    case "table":
      return table(block, pages);
    case "figure":
      return figure(block, where);
    case "newPage":
      return { leadPt: () => 0, place() {} };
  }
}

const body: TextStyle = { bold: false, sizePt: 9.5 };
const strong: TextStyle = { ...body, bold: true };
const small: TextStyle = { bold: false, sizePt: 7.5 };

/** Between one block and the next. */
const gapPt = 6;

const headings: Readonly<Record<2 | 3, { readonly style: TextStyle; readonly above: number }>> = {
  2: { style: { bold: true, sizePt: 14 }, above: 14 },
  3: { style: { bold: true, sizePt: 10.5 }, above: 7 },
};

function heading(
  { level, id, number, text }: Extract<Block, { kind: "heading" }>,
  { pages, contents }: Where,
): Piece {
  const { style, above } = headings[level];
  const title = number === "" ? text : `${number} ${text}`;
  return {
    leadPt: () =>
      above + pages.text.lines(title, style, pages.area.width).length * lineHeightPt(style) + gapPt,
    place() {
      pages.skip(above);
      const { doc } = pages.pdf;
      // Measured from the right, as pdfkit does; its types include neither.
      const top = { top: pages.y - 6, left: doc.page.width } as object;
      const chapter = level === 3 ? doc.outline.children.at(-1) : undefined;
      (chapter ?? doc.outline).addItem(title, top);
      doc.addNamedDestination(id, "XYZ", 0, pages.y - 6, null);
      const entry = contents.find((one) => one.id === id);
      if (entry) entry.beginsOnPage = pageCount(pages);
      pages.paragraph(title, style, { tag: `H${level}` });
      pages.skip(level === 2 ? gapPt : 3);
    },
  };
}

function list(items: readonly string[], pages: Pages): Piece {
  return {
    leadPt: () => 2 * lineHeightPt(body),
    place() {
      const { pdf } = pages;
      const element = structure(pdf, pdf.root, "L");
      for (const item of items) {
        pages.makeRoom(
          Math.min(2, pages.text.lines(item, body, pages.area.width - 12).length) * lineHeightPt(body),
        );
        const one = structure(pdf, element, "LI");
        marked(pdf, { element: structure(pdf, one, "Lbl"), tag: "Lbl" }, () =>
          pages.text.draw("•", body, { x: pages.area.left + 2, y: pages.y }),
        );
        pages.paragraph(item, body, { tag: "LBody", parent: one, indentPt: 12 });
        pages.skip(1.5);
      }
      pages.skip(gapPt);
    },
  };
}

function facts(pairs: readonly { readonly name: string; readonly value: string }[], pages: Pages): Piece {
  const nameWidth = () =>
    Math.min(
      pages.area.width * 0.42,
      Math.max(...pairs.map(({ name }) => pages.text.widthPt(name, strong))) + 14,
    );
  const row = ({ name, value }: { readonly name: string; readonly value: string }): FactLines => ({
    names: pages.text.lines(name, strong, nameWidth() - 10),
    values: pages.text.lines(value, body, pages.area.width - nameWidth()),
  });
  const heightPt = (lines: FactLines) =>
    Math.max(lines.names.length, lines.values.length) * lineHeightPt(body) + 3;
  return {
    leadPt: () => Math.min(total(pairs.slice(0, 2).map((pair) => heightPt(row(pair)))), pages.fullPt / 3),
    place() {
      const { pdf } = pages;
      const element = structure(pdf, pdf.root, "Table");
      for (const pair of pairs) {
        let rest = row(pair);
        if (heightPt(rest) <= pages.fullPt / 3) pages.makeRoom(heightPt(rest));
        const line = structure(pdf, element, "TR");
        const name = structure(pdf, line, "TH", { scope: "Row" });
        const value = structure(pdf, line, "TD");
        const draw = (lines: readonly string[], style: TextStyle, x: number) =>
          lines.forEach((one, index) => {
            pages.text.draw(one, style, { x, y: pages.y + index * lineHeightPt(body) });
          });
        while (rest.names.length + rest.values.length > 0) {
          const fit = Math.max(1, Math.floor(pages.freePt / lineHeightPt(body)));
          const here = { names: rest.names.slice(0, fit), values: rest.values.slice(0, fit) };
          rest = { names: rest.names.slice(fit), values: rest.values.slice(fit) };
          const { left } = pages.area;
          if (here.names.length > 0)
            marked(pdf, { element: name, tag: "TH" }, () => draw(here.names, strong, left));
          marked(pdf, { element: value, tag: "TD" }, () => draw(here.values, body, left + nameWidth()));
          pages.y += heightPt(here);
          if (rest.names.length + rest.values.length > 0) pages.newPage();
        }
      }
      pages.skip(gapPt);
    },
  };
}

interface FactLines {
  readonly names: readonly string[];
  readonly values: readonly string[];
}

function boxed(pages: Pages, { texts, frame }: ReturnType<typeof notice>): Piece {
  return {
    leadPt: () => boxedLines(pages, texts, frame).leadPt,
    place() {
      boxedLines(pages, texts, frame).place();
      pages.skip(gapPt + 1);
    },
  };
}

const heavy: Frame = { barPt: 4, bar: "#000000", line: "#000000" };
const light: Frame = { barPt: 4, bar: "#9a9a9a", line: "#9a9a9a" };

function notice({ title, lines }: Extract<Block, { kind: "notice" }>) {
  return {
    frame: { ...heavy, barPt: 0 },
    texts: [
      { text: title, style: strong },
      ...lines.map((text) => ({ text, style: { ...body, sizePt: 9 }, gapPt: 2.5 })),
    ],
  };
}

const severityWords = { error: "Error", warning: "Warning", info: "Information", hint: "Hint" } as const;

function finding({
  number,
  severity,
  rule,
  subject,
  message,
  place,
  accepted,
  source,
  followsFrom,
  following,
}: Extract<Block, { kind: "finding" }>) {
  const label = `${number}  ${severityWords[severity]}${accepted === undefined ? "" : ", accepted"}`;
  const origin = [place, rule].filter((one) => one !== "").join(" · ");
  const text = (style: TextStyle, words: string, gap = 1.5) => ({ text: words, style, gapPt: gap });
  return {
    frame: severity === "error" && accepted === undefined ? heavy : light,
    texts: [
      { text: subject === "" ? label : `${label}: ${subject}`, style: strong },
      text(body, message, 2),
      ...(accepted === undefined ? [] : [text(body, `Accepted because: ${accepted}`)]),
      ...(followsFrom === undefined ? [] : [text(body, `Follows from: ${followsFrom}`)]),
      ...(source === "" ? [] : [text(small, `Source: ${source}`, 3)]),
      ...(origin === "" ? [] : [text(small, origin, source === "" ? 3 : 0)]),
      ...(following ? [text(small, following.title, 3)] : []),
      ...(following?.findings ?? []).map((one) =>
        text(small, `${one.number}  ${severityWords[one.severity]}: ${inOneLine(one)}`),
      ),
    ],
  };
}

function table({ table: content }: Extract<Block, { kind: "table" }>, pages: Pages): Piece {
  const made = new Map<number, TableOnPaper>();
  const at = (widthPt: number): TableOnPaper => {
    const onPaper = made.get(widthPt) ?? tableOnPaper(content, pages.text, widthPt);
    made.set(widthPt, onPaper);
    return onPaper;
  };
  const here = () => at(pages.area.width);
  const captionPt = () =>
    content.title === ""
      ? 0
      : pages.text.lines(content.title, strong, pages.area.width).length * lineHeightPt(strong) + 3;
  const aboveLines = () =>
    content.above === undefined ? [] : pages.text.lines(content.above, small, pages.area.width);
  const leadPt = () =>
    Math.min(captionPt() + aboveLines().length * lineHeightPt(small) + here().leadPt, pages.fullPt / 2);
  return {
    needs: (page) => (at(areaOf(page, "portrait").width).crammed ? "landscape" : undefined),
    leadPt,
    async place(breathe) {
      const onPaper = here();
      pages.makeRoom(leadPt());
      if (content.title !== "") pages.paragraph(content.title, strong);
      if (content.above !== undefined) pages.paragraph(content.above, small);
      pages.skip(3);
      const noteLines = content.notes.flatMap((note) => pages.text.lines(note, small, pages.area.width));
      await onPaper.place(pages, breathe, 4 + noteLines.length * lineHeightPt(small) + content.notes.length);
      pages.skip(4);
      for (const note of content.notes) {
        pages.paragraph(note, small);
        pages.skip(1);
      }
      pages.skip(gapPt + 2);
    },
  };
}

function figure(block: Extract<Block, { kind: "figure" }>, { pages, above }: Where): Piece {
  const { widthPx, heightPx, caption, description } = block;
  const captionPt = (width: number) =>
    (pages.text.lines(caption, small, width).length + 1) * lineHeightPt(small) + 6;
  const scaleIn = ({ width, top, bottom }: ReturnType<typeof areaOf>, freePt = bottom - top) => {
    const takenPt = captionPt(width) + total(above.map((piece) => piece.leadPt()));
    return Math.min(naturalPtPerPx, width / widthPx, (freePt - takenPt) / heightPx);
  };
  // Slightly smaller is better than a page of its own.
  const scaleHere = () => {
    const whole = scaleIn(pages.area);
    const free = scaleIn(pages.area, pages.freePt);
    return free >= 0.9 * whole ? free : whole;
  };
  /** For a figure that is only shown if it can be read: its parts, if it takes several. */
  const parts = () => {
    if (!block.onlyReadable) return undefined;
    const scales = (["portrait", "landscape"] as const).map((one) => scaleIn(areaOf(pages.size, one)));
    return enlargement(block, Math.max(...scales), pages.size, total(above.map((piece) => piece.leadPt())));
  };
  return {
    needs: (page) =>
      parts()?.orientation ??
      (scaleIn(areaOf(page, "landscape")) > 1.15 * scaleIn(areaOf(page, "portrait"))
        ? "landscape"
        : undefined),
    leadPt: () => (parts() ? 0 : heightPx * scaleHere() + captionPt(pages.area.width)),
    place() {
      const { pdf } = pages;
      const { left, width } = pages.area;
      const asParts = parts();
      if (asParts) {
        const element = structure(pdf, pdf.root, "Figure", { alt: pdf.drawable(description) });
        placeEnlarged(pages, block, { way: asParts, caption, element });
        return;
      }
      const freePt = pages.freePt - captionPt(width);
      const ptPerPx = Math.min(naturalPtPerPx, width / widthPx, freePt / heightPx);
      const way = enlargement(block, ptPerPx, pages.size);
      const element = structure(pdf, pdf.root, "Figure", { alt: pdf.drawable(description) });
      const x = left + (width - widthPx * ptPerPx) / 2;
      marked(pdf, { element, tag: "Figure" }, () => drawSvg(pdf, block, { x, y: pages.y, ptPerPx }));
      pages.y += heightPx * ptPerPx;
      pages.skip(4);
      if (caption !== "") pages.paragraph(caption, small, { tag: "Caption" });
      if (way) {
        const next = sheets(way) === 1 ? "the next page" : `the next ${sheets(way)} pages`;
        artifact(pdf, () => pages.text.draw(`Shown larger on ${next}.`, small, { x: left, y: pages.y }));
        placeEnlarged(pages, block, { way, caption });
      }
      pages.skip(gapPt + 2);
    },
  };
}

const total = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0);
