import type { PartKind } from "../../model/network.ts";
import type { Protection } from "../../model/run.ts";
import type { Severity } from "../../rules/finding.ts";

/** The content of a view before anything has a place: parts, and the lines between their terminals. */
export interface Schematic {
  readonly parts: readonly SchematicPart[];
  readonly lines: readonly SchematicLine[];
  /** Sentences that must appear beside the picture. */
  readonly notices: readonly string[];
}

export interface SchematicPart extends Pointed {
  readonly symbol: SymbolName;
  readonly name: string;
  /** Under the name: its kind and ratings; in a scenario, also its voltage and current. */
  readonly words: readonly string[];
  /** Those at which a line may end, in their order. */
  readonly terminals: readonly SchematicTerminal[];
}

/** The symbol of a part: its kind, except that motors have a symbol of their own and a lone circuit has a supply. */
export type SymbolName = PartKind | "motor" | "supply";

export interface SchematicTerminal {
  readonly name: string;
  /** Written beside it inside the part; "" if the symbol shows it. */
  readonly label: string;
}

export interface SchematicLine extends Pointed {
  readonly polarity: Polarity;
  readonly name: string;
  /** One of the two conductors of a circuit; else of a cable. */
  readonly ofCircuit: boolean;
  /** No conductor: its part is mounted on the terminal of the other. It has neither number nor data, and cannot be pointed at. */
  readonly isMounting?: true;
  readonly from: LineEnd;
  readonly to: LineEnd;
  /** It is read from `from` to `to`: away from the sources, towards the loads. */
  readonly forward: boolean;
  /** Its number; "" if it has none. */
  readonly number: string;
  /** "6 AWG · 30 ft · 12.4 A"; in the colour edition, its colour is behind them. */
  readonly data: string;
  /** The colour of its insulation in which it is drawn, in the words of the plan; "" for a line in black. */
  readonly colour: string;
}

/**
 * `pair`: both conductors of a circuit as one line. `link`: in series between two batteries or panels, live against both poles of
 * the string, positive at its one end and negative at its other. `unknown`: no source determines its side.
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

/** Something that can be pointed at. */
export interface Pointed {
  readonly id: string;
  readonly records: readonly number[];
  /** One property of its run states a protective device; a whole call states everything else. */
  readonly property?: "protect" | "protectFarEnd";
  readonly description: string;
  readonly found: readonly FoundHere[];
}

export interface FoundHere {
  readonly severity: Severity;
  readonly message: string;
  readonly accepted: boolean;
}
