import type { NetworkConductor } from "../../model/network.ts";
import type { Severity } from "../../rules/finding.ts";

/**
 * `one-line`: the whole system at a glance, a line for each pair of conductors. `wiring`: every conductor of both polarities,
 * terminal to terminal, with its protection, size and length.
 */
export type View = "one-line" | "wiring";

export interface DrawingOptions {
  readonly view: View;
  /** Index in the network's scenarios: its currents are on the lines, its voltages at the parts. */
  readonly scenario?: number;
  /**
   * `paper`: black on white, every property an SVG attribute; any renderer draws it alike. `screen`: classes and custom
   * properties; the page around it sets the colours.
   */
  readonly medium: "paper" | "screen";
  /** Title of the picture if the plan names no build: its file, say. */
  readonly title?: string;
  /** For the title block: "B", "1a2b3c4 + uncommitted". Left out: the block has no line for it. */
  readonly revision?: string;
  /** Its place among drawings that belong together, from 1. Left out: the title block has no line for it. */
  readonly sheet?: SheetNumber;
  /** The numbers of the conductors, ready to be shown; undefined for a conductor without one. */
  readonly numbers?: WireNumbers;
  /** The colour edition: each conductor in the colour of its insulation, which its label names too. Left out: black and white. */
  readonly colours?: WireColours;
}

/** The colour of a conductor's insulation in words, by record and role; "" or undefined if it is not known. */
export type WireColours = (record: number, role: NetworkConductor["role"]) => string | undefined;

export interface SheetNumber {
  readonly number: number;
  readonly of: number;
}

/** The number of a conductor, which is named by its record and its role. Covers circuits outside a network too. */
export type WireNumbers = (record: number, role: NetworkConductor["role"]) => string | undefined;

export type DrawingOutcome = { readonly drawn: true; readonly drawing: Drawing } | NotDrawn;

/** No picture could be made. `why` is a sentence for people. */
interface NotDrawn {
  readonly drawn: false;
  readonly why: string;
  /** A newer request for the same picture replaced this one: no error, and no report. */
  readonly superseded?: true;
}

/** A picture of a plan. The same plan and options give the same bytes. */
export interface Drawing {
  /** A whole SVG document of the given size, with a title and a description. */
  readonly svg: string;
  /** "library bus, wiring diagram". */
  readonly title: string;
  /** A few sentences for those who cannot see it. */
  readonly description: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Everything that can be pointed at, in reading order. */
  readonly elements: readonly DrawnElement[];
  /** Sentences that the picture shows too: anything not drawn, not solved, or combined. */
  readonly notices: readonly string[];
}

export interface DrawnElement {
  /** `data-element` of its group in the SVG. Stays the same while the part or conductor keeps its name. */
  readonly id: string;
  readonly kind: "part" | "conductor" | "protection";
  readonly name: string;
  /** A sentence for those who cannot see the picture: the kind, the ends, the figures and the findings. */
  readonly description: string;
  /** Records of the plan that it represents; a click leads to the first. */
  readonly records: readonly number[];
  /** The property of the first record that states it; undefined if the whole call does. */
  readonly property: "protect" | "protectFarEnd" | undefined;
  readonly box: Box;
  /** Of its worst finding that is not accepted. */
  readonly severity: Severity | undefined;
  /** Messages of its findings, accepted ones marked so. */
  readonly findings: readonly string[];
}

/** In the units of the SVG, from its top left corner. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
