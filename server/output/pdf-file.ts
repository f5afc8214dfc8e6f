import PDFDocument from "pdfkit";
import { xmlText } from "../../library/documents/diagram/xml-text.ts";
import { version } from "../../library/package.json";
import { drawableText } from "./drawable-text.ts";
import { fontsOf, typeface } from "./fonts.ts";

/**
 * An empty PDF without pages, in English, for screen readers too: all content must be marked as part of `root` or as an artifact
 * (see {@link marked}, {@link artifact}). It does not depend on clock, chance or installed fonts.
 */
export async function newPdf(title: string, { printScaling = true }: PrintOptions = {}): Promise<Pdf> {
  const doc = new TimelessPdf({
    autoFirstPage: false,
    // Page numbers are written when all pages exist.
    bufferPages: true,
    pdfVersion: "1.7",
    tagged: true,
    lang: "en",
    displayTitle: true,
    info: { Title: title, Producer: `Loomwright ${version}`, Creator: `Loomwright ${version}` },
    // Without a font of the library's own, which would be looked for on disk.
    font: null as never,
  });
  if (!printScaling) doc.askForTrueSize();
  const fonts = fontsOf(doc, await typeface());
  const root = doc.struct("Document");
  doc.addStructure(root);
  return { doc, root, ...drawableText(fonts) };
}

interface PrintOptions {
  /** Whether a printer may shrink pages to its printable area, as most do unless asked not to. */
  readonly printScaling?: boolean;
}

export interface Pdf {
  readonly doc: PDFKit.PDFDocument;
  readonly root: PDFKit.PDFStructureElement;
  /** The text as the typeface can draw it; {@link missing} lists the other characters. */
  drawable(text: string): string;
  readonly missing: ReadonlySet<string>;
}

/** A finished PDF or PNG. */
export interface Paper {
  readonly bytes: Uint8Array;
  /** Characters that the typeface lacks, each drawn as an empty box. */
  readonly missing: readonly string[];
}

/** Ends a PDF and returns its bytes. */
export async function finishedPdf({ doc, root, missing }: Pdf): Promise<Paper> {
  const pieces: Buffer[] = [];
  await new Promise((resolve, reject) => {
    doc.on("data", (piece: Buffer) => pieces.push(piece));
    doc.on("end", resolve);
    doc.on("error", reject);
    root.end();
    doc.end();
  });
  return { bytes: Buffer.concat(pieces), missing: [...missing] };
}

/** Draws something that is read aloud as (part of) this element. */
export function marked(
  { doc }: Pdf,
  { element, tag }: { readonly element: PDFKit.PDFStructureElement; readonly tag: string },
  draw: () => void,
): void {
  element.add(doc.markStructureContent(tag));
  draw();
  doc.endMarkedContent();
}

/** Draws something that is not read aloud: rules, boxes, page numbers, repeated heads. */
export function artifact({ doc }: Pdf, draw: () => void): void {
  doc.markContent("Artifact", {});
  draw();
  doc.endMarkedContent();
}

/** A new element after the existing children of its parent. */
export function structure(
  { doc }: Pdf,
  parent: PDFKit.PDFStructureElement,
  tag: string,
  options: StructureOptions = {},
): PDFKit.PDFStructureElement {
  const element = doc.struct(tag, options);
  parent.add(element);
  return element;
}

/** `scope`: whether a heading cell is the head of a column or a row. */
type StructureOptions = PDFKit.Mixins.StructureElementOptions & { readonly scope?: "Column" | "Row" };

class TimelessPdf extends PDFDocument {
  constructor(options: PDFKit.PDFDocumentOptions) {
    super({ ...options, info: { ...options.info, CreationDate: new Date(0) } });
    // It went into the file's identity, and has no other meaning.
    delete this.info.CreationDate;
  }

  askForTrueSize() {
    // ISO 32000-1, table 150. pdfkit makes the dictionary, but its types do not include it.
    const { _root } = this as unknown as {
      readonly _root: {
        readonly data: { readonly ViewerPreferences: { readonly data: Record<string, unknown> } };
      };
    };
    _root.data.ViewerPreferences.data.PrintScaling = "None";
  }

  /** The library's own metadata would contain the date, and the title unescaped, which may be invalid XML. */
  protected _addInfo() {
    const { Title = "", Producer = "" } = this.info;
    this.appendXML(`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${xmlText(Title)}</rdf:li></rdf:Alt></dc:title>
<pdf:Producer>${xmlText(Producer)}</pdf:Producer>
</rdf:Description>`);
  }
}
