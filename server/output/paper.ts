// The entry to all code that makes PDF and PNG. It is bundled as a file of its own, so import it only when needed:
// `await import("../output/paper.ts")`.

export { drawingPdf, drawingsPdf } from "./drawing-pdf.ts";
export { drawingPng } from "./drawing-png.ts";
export { labelPdf } from "./label-pdf.ts";
export { reportPdf } from "./report-pdf.ts";
export { countSheets, templatePdf } from "./template-pdf.ts";
