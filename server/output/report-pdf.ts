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
 * Wide tables and figures get pages that lie on their side. A heading stands on the page of what follows it. Rejects with the
 * reason of `signal`, and only with that.
 */
export async function reportPdf(
  content: ReportContent,
  { page, signal }: { readonly page: PageSize; readonly signal?: AbortSignal | undefined },
): Promise<Paper> {
  // Other requests, and the one that cancels this, get their turn in between.
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
  // A page is begun with what stands on it, so that none stays empty.
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
    // Without a heading a text stays beside what it belongs to, and what introduces a table goes to where that will lie.
    const asBefore = first!.kind === "heading" || onNewPage ? lying : pages.orientation;
    const wide = [group.at(-1)!, ...introduced(all, index)].some((block) =>
      pieceOnPaper(block, { pages, contents, above: [] }).needsLandscape?.(page),
    );
    const next = wide ? "landscape" : asBefore;
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

/** The table or figure that a paragraph stands before, directly or with others like it. */
function introduced(all: readonly (readonly Block[])[], index: number): readonly Block[] {
  if (all[index]!.at(-1)!.kind !== "paragraph") return [];
  const [next] = all.slice(index + 1).find(([first]) => first?.kind !== "paragraph") ?? [];
  return next?.kind === "table" || next?.kind === "figure" ? [next] : [];
}

/** Headings with what follows them; everything else by itself. */
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
