import { readFile } from "node:fs/promises";

/**
 * The typeface of everything on paper, DejaVu Sans. It is part of the package: a drawing or a report is the same on every
 * machine, independent of the fonts installed there.
 */
export async function typeface(): Promise<Typeface> {
  const [regular, bold] = await Promise.all(
    ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"].map((file) =>
      readFile(new URL(`../dist/${file}`, import.meta.url)),
    ),
  );
  return { regular: regular!, bold: bold! };
}

export interface Typeface {
  /** TrueType. */
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** Registers the typeface in a PDF as "regular" and "bold", and returns the characters that it covers. */
export function fontsOf(doc: PDFKit.PDFDocument, { regular, bold }: Typeface): Coverage[] {
  return Object.entries({ regular, bold }).map(([name, bytes]) => {
    doc.registerFont(name, bytes as Buffer);
    doc.font(name);
    // pdfkit's parsed font file; its types do not include it.
    return (doc as unknown as { readonly _font: { readonly font: Coverage } })._font.font;
  });
}

export interface Coverage {
  hasGlyphForCodePoint(codePoint: number): boolean;
}
