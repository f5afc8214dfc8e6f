import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { PDFPageProxy, TextItem, TextMarkedContent } from "pdfjs-dist/types/src/display/api.d.ts";

/** Reads a PDF with an independent program: pdf.js, the reader of a browser. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  // The call takes ownership of the bytes.
  const loading = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
  const doc = await loading.promise;
  try {
    const pages: ReadPage[] = [];
    for (let number = 1; number <= doc.numPages; number++)
      pages.push(await readPage(await doc.getPage(number)));
    const outline = (await doc.getOutline()) ?? [];
    const bookmarks = await Promise.all(
      outline
        .flatMap((chapter) => [chapter, ...chapter.items])
        .map(async ({ title, dest }) => {
          const [page] = dest as unknown as [{ num: number; gen: number }];
          return { title, page: (await doc.getPageIndex(page)) + 1 };
        }),
    );
    const { info, metadata } = await doc.getMetadata();
    return {
      pages,
      bookmarks,
      info: info as Readonly<Record<string, unknown>>,
      xmp: metadata?.getRaw() ?? "",
      tagged: (await doc.getMarkInfo())?.Marked ?? false,
      language: (info as { Language?: string }).Language,
      preferences: (await doc.getViewerPreferences()) as Readonly<Record<string, unknown>> | null,
    };
  } finally {
    await loading.destroy();
  }
}

export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  /** From 1. */
  readonly bookmarks: readonly { readonly title: string; readonly page: number }[];
  readonly info: Readonly<Record<string, unknown>>;
  readonly xmp: string;
  readonly tagged: boolean;
  readonly language: string | undefined;
  readonly preferences: Readonly<Record<string, unknown>> | null;
}

export interface ReadPage {
  readonly widthPt: number;
  readonly heightPt: number;
  /** In drawing order. */
  readonly texts: readonly ReadText[];
  /** Glyphs that mean "this font has none". */
  readonly missingGlyphs: number;
  /** Elements of the structure, by their tag: { Table: 1, TH: 4, … }. */
  readonly elements: Readonly<Record<string, number>>;
  readonly alternatives: readonly string[];
}

interface ReadText {
  readonly text: string;
  /** The enclosing mark: "TD", "Artifact". */
  readonly tag: string | undefined;
  /** From the left, and of the baseline from the top, pt. */
  readonly x: number;
  readonly y: number;
  readonly widthPt: number;
  readonly sizePt: number;
}

async function readPage(page: PDFPageProxy): Promise<ReadPage> {
  const { width, height } = page.getViewport({ scale: 1 });
  const { items } = await page.getTextContent({ includeMarkedContent: true, disableNormalization: true });
  const tags: (string | undefined)[] = [];
  const texts: ReadText[] = [];
  for (const item of items as (TextItem | TextMarkedContent)[]) {
    if ("str" in item) {
      if (item.str === "") continue;
      const [, , , scale, x, y] = item.transform as [number, number, number, number, number, number];
      const { str, width: widthPt } = item;
      texts.push({ text: str, tag: tags.at(-1), x, y: height - y, widthPt, sizePt: Math.abs(scale) });
    } else if (item.type === "endMarkedContent") tags.pop();
    else tags.push((item as { readonly tag?: string }).tag);
  }
  const elements: Record<string, number> = {};
  const alternatives: string[] = [];
  type Node = { readonly role?: string; readonly alt?: string; readonly children?: readonly Node[] };
  const visit = ({ role, alt, children = [] }: Node) => {
    if (role !== undefined) elements[role] = (elements[role] ?? 0) + 1;
    if (alt !== undefined) alternatives.push(alt);
    children.forEach(visit);
  };
  visit(((await page.getStructTree()) ?? {}) as Node);
  return {
    ...{ widthPt: width, heightPt: height, texts, elements, alternatives },
    missingGlyphs: await missingGlyphs(page),
  };
}

/** Character 0 of a font made from TrueType is its glyph ".notdef". */
async function missingGlyphs(page: PDFPageProxy): Promise<number> {
  const { fnArray, argsArray } = await page.getOperatorList();
  const shown = fnArray.flatMap((operation, index) =>
    operation === OPS.showText ? (argsArray[index] as [unknown[]])[0] : [],
  );
  return shown.filter((glyph) => (glyph as { readonly originalCharCode?: number }).originalCharCode === 0)
    .length;
}
