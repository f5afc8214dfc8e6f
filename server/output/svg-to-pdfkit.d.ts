/** Draws an SVG into a PDF. pdfmake contains the maintained copy. */
declare module "pdfmake/js/3rd-party/svg-to-pdfkit/source.js" {
  export default function svgToPdfkit(
    doc: PDFKit.PDFDocument,
    svg: string,
    x: number,
    y: number,
    options: {
      readonly width: number;
      readonly height: number;
      readonly preserveAspectRatio?: string;
      /** Points instead of pixels. */
      readonly assumePt?: boolean;
      readonly fontCallback: (family: string, bold: boolean, italic: boolean) => string;
      readonly imageCallback?: (link: string) => string;
      readonly documentCallback?: (file: string) => undefined;
      readonly warningCallback: (warning: string) => void;
    },
  ): void;
}
