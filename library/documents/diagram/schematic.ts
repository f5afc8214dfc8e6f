import type { PartKind } from "../../model/network.ts";
import type { Protection } from "../../model/run.ts";
import type { Severity } from "../../rules/finding.ts";

/** What a view shows, before anything has a place: parts, and the lines between their terminals. */
export interface Schematic {
  readonly parts: readonly SchematicPart[];
  readonly lines: readonly SchematicLine[];
  /** Sentences that must be said beside the picture. */
  readonly notices: readonly string[];
}

export interface SchematicPart extends Pointed {
  readonly symbol: SymbolName;
  readonly name: string;
  /** Under the name: what it is and for how much; in a scenario, what it carries. */
  readonly words: readonly string[];
  /** Those at which a line may end, in their order. */
  readonly terminals: readonly SchematicTerminal[];
  /**
   * How far from the sources it stands: batteries 0, then 1 for each conductor outwards. It only says which of two parts stands
   * further left.
   */
  readonly hops: number;
}

/** What is drawn for a part: its kind, except that motors have a symbol of their own and a lone circuit has a supply. */
export type SymbolName = PartKind | "motor" | "supply";

export interface SchematicTerminal {
  readonly name: string;
  /** Written beside it inside of the part; "" where the symbol says it. */
  readonly label: string;
}

export interface SchematicLine extends Pointed {
  readonly polarity: Polarity;
  readonly name: string;
  /** One of the two conductors of a circuit; else of a cable. */
  readonly ofCircuit: boolean;
  readonly from: LineEnd;
  readonly to: LineEnd;
  /** Its number; "" where it has none. */
  readonly number: string;
  /** "6 AWG · 30 ft · 12.4 A". */
  readonly data: string;
}

/**
 * `pair`: both conductors of a circuit as one line. `link`: in series between two batteries or panels, live against both poles
 * of the string, positive at its one end and negative at its other. `unknown`: no source tells its side.
 */
export type Polarity = "positive" | "negative" | "pair" | "link" | "unknown";

export interface LineEnd {
  /** Index in {@link Schematic.parts}. */
  readonly part: number;
  readonly terminal: string;
  readonly device: Device | undefined;
}

/** A protective device in a line, near one of its ends. */
export interface Device extends Pointed {
  readonly protection: Protection;
  readonly name: string;
}

/** What can be pointed at. */
export interface Pointed {
  readonly id: string;
  readonly records: readonly number[];
  /** A protective device is said by one property of its run, everything else by a whole call. */
  readonly property?: "protect" | "protectFarEnd";
  readonly description: string;
  readonly found: readonly FoundHere[];
}

export interface FoundHere {
  readonly severity: Severity;
  readonly message: string;
  readonly accepted: boolean;
}
