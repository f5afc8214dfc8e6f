import { readFile } from "node:fs/promises";

/**
 * The typeface of everything on paper, DejaVu Sans. It travels with us, so that a drawing or a report is the same on every
 * machine, whatever is installed there.
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

/** Makes the typeface known to a PDF as "regular" and "bold", and tells what it can draw. */
export function fontsOf(doc: PDFKit.PDFDocument, { regular, bold }: Typeface): Coverage[] {
  return Object.entries({ regular, bold }).map(([name, bytes]) => {
    doc.registerFont(name, bytes as Buffer);
    doc.font(name);
    // What pdfkit has read of the file; its types do not tell of it.
    return (doc as unknown as { readonly _font: { readonly font: Coverage } })._font.font;
  });
}

export interface Coverage {
  hasGlyphForCodePoint(codePoint: number): boolean;
}
