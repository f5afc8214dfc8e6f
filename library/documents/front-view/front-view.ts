import type { Severity } from "../../rules/finding.ts";
import type { Box, DrawingOptions, WireNumbers } from "../diagram/drawing.ts";

/** How the front view of a surface is drawn. */
export interface FrontViewOptions extends Pick<DrawingOptions, "medium" | "title" | "revision" | "sheet"> {
  /** The numbers of the conductors, for their ends. */
  readonly numbers?: WireNumbers;
  /** Draw the conductors along their ways too. Left out: channels name only how many are in them. */
  readonly conductors?: boolean;
}

/** The front view of one surface. The same plan and options give the same bytes. */
export interface FrontView {
  /** A whole SVG document of the given size, with a title and a description. */
  readonly svg: string;
  /** "library bus, front view of Board". */
  readonly title: string;
  /** A few sentences for those who cannot see it. */
  readonly description: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** The name of the plan. */
  readonly plan: string;
  /** Index in the surfaces of the layout. */
  readonly surface: number;
  readonly surfaceName: string;
  /** A point of the surface in mm, times `pxPerMm` and moved by `x` and `y`, is in the units of the SVG, from its top left corner. */
  readonly frame: { readonly pxPerMm: number; readonly x: number; readonly y: number };
  /** Everything that can be pointed at: parts in the order of the plan, then channels. */
  readonly elements: readonly FrontElement[];
  /** Sentences that the picture shows too: anything left out or not known. */
  readonly notices: readonly string[];
}

export interface FrontElement {
  /** `data-element` of its group in the SVG. Its `id` in the SVG is made of the index of its record. */
  readonly id: string;
  readonly kind: "surface" | "body" | "channel" | "conductor";
  readonly name: string;
  /** A sentence for those who cannot see the picture: place, size and findings. */
  readonly description: string;
  /** Index of its record in the plan. */
  readonly record: number;
  /** In the units of the SVG, from its top left corner; absent for a part without a place. */
  readonly box?: Box;
  /** Of its worst finding that is not accepted. */
  readonly severity: Severity | undefined;
  /** Messages of its findings, accepted ones marked so. */
  readonly findings: readonly string[];
}
