import { setImmediate as nextTurn } from "node:timers/promises";
import type { Block, ReportContent } from "../../library/documents/report/report-content.ts";
import type { Orientation, PageSize } from "./page-size.ts";
import { Pages } from "./pages.ts";
import { finishedPdf, newPdf, type Paper } from "./pdf-file.ts";
import { finishPages, placeTitle } from "./report-frame.ts";
import { type Piece, pieceOnPaper } from "./report-pieces.ts";

/**
 * A report as PDF: every block in reading order, with bookmarks, a list of contents, and the structure that screen readers
 * follow. The same content gives the same bytes.
 *
 * Wide tables and figures get landscape pages. A heading is on the same page as the block after it. Rejects with the reason of
 * `signal`, and only with that.
 */
export async function reportPdf(
  content: ReportContent,
  { page, signal }: { readonly page: PageSize; readonly signal?: AbortSignal | undefined },
): Promise<Paper> {
  // Lets other requests, and the one that cancels this, run in between.
  const breathe = async () => {
    await nextTurn();
    signal?.throwIfAborted();
  };
  await breathe();
  const pdf = await newPdf(pdfTitle(content));
  const pages = new Pages(pdf, page);
  pages.newPage("portrait");
  const contents = placeTitle(pages, content);
  let lying: Orientation = "portrait";
  // A page begins with its first block: no page stays empty.
  let onNewPage = false;
  const all = groups(content.blocks);
  for (const [index, group] of all.entries()) {
    await breathe();
    const [first] = group;
    if (first!.kind === "newPage") {
      lying = first!.orientation;
      onNewPage = true;
      continue;
    }
    const pieces: Piece[] = [];
    for (const block of group) pieces.push(pieceOnPaper(block, { pages, contents, above: [...pieces] }));
    // Without a heading, a text stays on the page of its context, and a text that introduces a table goes to the table's page.
    const asBefore = first!.kind === "heading" || onNewPage ? lying : pages.orientation;
    const needed = [group.at(-1)!, ...introduced(all, index)].map((block) =>
      pieceOnPaper(block, { pages, contents, above: pieces.slice(0, -1) }).needs?.(page),
    );
    const next = needed.find(Boolean) ?? asBefore;
    if (onNewPage || next !== pages.orientation) pages.newPage(next);
    onNewPage = false;
    const together = pieces.reduce((sum, piece) => sum + piece.leadPt(), 0);
    if (together <= pages.fullPt) pages.makeRoom(together);
    for (const piece of pieces) await piece.place(breathe);
  }
  finishPages(pages, content, contents);
  return finishedPdf(pdf);
}

function pdfTitle({ title, subtitle }: ReportContent): string {
  return subtitle === "" ? title : `${title} – ${subtitle}`;
}

/** The table or figure that a paragraph precedes, directly or with other paragraphs in between. */
function introduced(all: readonly (readonly Block[])[], index: number): readonly Block[] {
  if (all[index]!.at(-1)!.kind !== "paragraph") return [];
  const [next] = all.slice(index + 1).find(([first]) => first?.kind !== "paragraph") ?? [];
  return next?.kind === "table" || next?.kind === "figure" ? [next] : [];
}

/** Headings together with the block after them; every other block by itself. */
function groups(blocks: readonly Block[]): Block[][] {
  const found: Block[][] = [];
  let headings: Block[] = [];
  for (const block of blocks) {
    if (block.kind === "heading") {
      headings.push(block);
    } else if (block.kind === "newPage") {
      if (headings.length > 0) found.push(headings);
      found.push([block]);
      headings = [];
    } else {
      found.push([...headings, block]);
      headings = [];
    }
  }
  return headings.length > 0 ? [...found, headings] : found;
}
