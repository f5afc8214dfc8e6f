import type { NetworkConductor } from "../../model/network.ts";
import type { Severity } from "../../rules/finding.ts";

/**
 * `one-line`: the whole system at a glance, a line for each pair of conductors. `wiring`: every conductor of both polarities,
 * terminal to terminal, with its protection, size and length.
 */
export type View = "one-line" | "wiring";

export interface DrawingOptions {
  readonly view: View;
  /** Index in the network's scenarios: its currents stand on the lines, its voltages at the parts. */
  readonly scenario?: number;
  /**
   * `paper`: black on white, every property an SVG attribute, so that any renderer draws it alike. `screen`: classes and custom
   * properties, so that the page around it sets the colours.
   */
  readonly medium: "paper" | "screen";
  /** What the picture is called where the plan names no build: its file, say. */
  readonly title?: string;
  /** The numbers on the conductors, ready to be shown; undefined where one has none. */
  readonly numbers?: WireNumbers;
}

/** The number of a conductor, which is named by its record and its role: of circuits that stand alone as of those in the network. */
export type WireNumbers = (record: number, role: NetworkConductor["role"]) => string | undefined;

export type DrawingOutcome = { readonly drawn: true; readonly drawing: Drawing } | NotDrawn;

/** No picture could be made. `why` is a sentence for people. */
interface NotDrawn {
  readonly drawn: false;
  readonly why: string;
  /** A newer request for the same picture took its place: nothing went wrong, and nothing is to be said. */
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
  /** Sentences that stand in the picture too: what is not drawn, not solved, taken together. */
  readonly notices: readonly string[];
}

export interface DrawnElement {
  /** `data-element` of its group in the SVG. Stays the same while the part or conductor keeps its name. */
  readonly id: string;
  readonly kind: "part" | "conductor" | "protection";
  readonly name: string;
  /** A sentence for those who cannot see the picture: what it is, between what, with which figures and findings. */
  readonly description: string;
  /** Records of the plan that it stands for: where a click leads is the first. */
  readonly records: readonly number[];
  /** The property of the first of them that says it; undefined where the whole call does. */
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
