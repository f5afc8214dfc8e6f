import type { Table } from "../table.ts";

/**
 * A report as plain data, in reading order. Made once from a checked plan; the page of HTML and the PDF are two settings of the
 * same content.
 */
export interface ReportContent {
  readonly title: string;
  /** Under the title: its subject, and its limits. */
  readonly subtitle: string;
  /** "Loomwright 0.1.0", for the foot of each page and the files' own data. */
  readonly madeBy: string;
  readonly blocks: readonly Block[];
}

/** The words of a finding, and its name in tables: "F3", or "A1" for an accepted one. Unique within the report. */
export interface FindingInWords {
  readonly number: string;
  readonly severity: "error" | "warning" | "info" | "hint";
  readonly rule: string;
  readonly subject: string;
  readonly message: string;
  /** "bus.ts:14", if it is known. */
  readonly place: string;
}

/** A finding that is shown under its cause, after its number and severity: "bank plus: Carries 840 A … (bus.ts:14, bus/rating)". */
export function inOneLine({ subject, message, place, rule }: FindingInWords): string {
  const where = [place, rule].filter((one) => one !== "").join(", ");
  return `${subject === "" ? "" : `${subject}: `}${message} (${where})`;
}

export type Block =
  | {
      readonly kind: "heading";
      readonly level: 2 | 3;
      readonly id: string;
      /** "3" for a chapter, "3.1" within it. */
      readonly number: string;
      readonly text: string;
    }
  | { readonly kind: "paragraph"; readonly text: string }
  /** Must be read: a caution, or something that was not checked. */
  | { readonly kind: "notice"; readonly title: string; readonly lines: readonly string[] }
  | { readonly kind: "list"; readonly items: readonly string[] }
  /** Name and value pairs. */
  | { readonly kind: "facts"; readonly facts: readonly { readonly name: string; readonly value: string }[] }
  | { readonly kind: "table"; readonly table: Table }
  | {
      readonly kind: "figure";
      /** For paper; see {@link import("../diagram/drawing.ts").DrawingOptions.medium}. */
      readonly svg: string;
      readonly widthPx: number;
      readonly heightPx: number;
      readonly caption: string;
      /** For those who cannot see it. */
      readonly description: string;
      /** On paper, a drawing that is too large to be read on one page is only shown in parts, without the whole before them. */
      readonly onlyReadable?: true;
    }
  | (FindingInWords & {
      readonly kind: "finding";
      /** The builder's reason, if it was accepted. */
      readonly accepted?: string;
      readonly source: string;
      /** "battery/unlike at spare battery (F1)", if it is caused by another finding. */
      readonly followsFrom?: string;
      /** The findings that it causes and that are shown only here, set smaller. */
      readonly following?: { readonly title: string; readonly findings: readonly FindingInWords[] };
    })
  /**
   * The following blocks begin on a fresh page of this orientation, and so do the pages after it, up to the next of these.
   * Reports begin in portrait. Tables are made for the page that they come on: none has to turn it, unless words would not fit
   * otherwise.
   */
  | { readonly kind: "newPage"; readonly orientation: "portrait" | "landscape" };
