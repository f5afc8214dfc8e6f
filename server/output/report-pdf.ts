import { setImmediate as nextTurn } from "node:timers/promises";
import type { Block, ReportContent } from "../../library/documents/report/report-content.ts";
import type { PageSize } from "./page-size.ts";
import { Pages } from "./pages.ts";
import { finishedPdf, newPdf, type Paper } from "./pdf-file.ts";
import { finishPages, placeTitle } from "./report-frame.ts";
import { pieceOnPaper } from "./report-pieces.ts";

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
  let lying: "portrait" | "landscape" = "portrait";
  for (const group of groups(content.blocks)) {
    await breathe();
    if (group[0]!.kind === "newPage") {
      lying = group[0]!.orientation;
      if (!pages.fresh || pages.orientation !== lying) pages.newPage(lying);
      continue;
    }
    const pieces = group.map((block) => pieceOnPaper(block, { pages, contents }));
    const wanted = pieces.at(-1)!.needsLandscape?.(page) ? "landscape" : undefined;
    // Without a heading a text stays beside what it belongs to.
    const next = wanted ?? (group[0]!.kind === "heading" ? lying : pages.orientation);
    if (next !== pages.orientation) pages.newPage(next);
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
