import type { DrawingToPrint } from "./drawing-pdf.ts";
import type { PageSize } from "./page-size.ts";

/** The first is that of the files in a folder. */
export const drawingKinds = ["svg", "png", "pdf"] as const;

export type DrawingKind = (typeof drawingKinds)[number];

/** The kind of file that a name's ending asks for; undefined for any other. */
export function drawingKind(path: string): DrawingKind | undefined {
  return kindOf(path, drawingKinds);
}

/** The one of several kinds of file that a name's ending asks for. */
export function kindOf<Kind extends string>(path: string, kinds: readonly Kind[]): Kind | undefined {
  const ending = /\.([A-Za-z0-9]+)$/.exec(path)?.[1]?.toLowerCase();
  return kinds.find((kind) => kind === ending);
}

/** A drawing as the content of a file. Without a page, a PDF is a sheet as large as its drawing. */
export async function drawingFile(
  drawing: DrawingToPrint,
  kind: DrawingKind,
  page: PageSize | undefined,
): Promise<DrawingFile> {
  if (kind === "svg") return { bytes: drawing.svg, missing: [] };
  // The PDF and PNG code, and the typeface, are loaded only if needed.
  const { drawingPdf, drawingPng } = await import("./paper.ts");
  return kind === "png" ? drawingPng(drawing, { scale: pngScale }) : drawingPdf(drawing, { page });
}

export interface DrawingFile {
  readonly bytes: string | Uint8Array;
  /** Characters that the typeface lacks. */
  readonly missing: readonly string[];
}

/** Sharp enough to print as large as the SVG. */
const pngScale = 2;
