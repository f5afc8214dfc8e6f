import type { CoolestTerminal } from "../model/coolest-terminal.ts";
import type { Estimate } from "../model/estimate.ts";
import type { Citation } from "../standards/citation.ts";
import type { ContinuousMargin, LoadForHours } from "./load-for-hours.ts";

/** All results for one circuit. All numbers are unrounded; rounding is left to the display. */
export interface CircuitResult {
  readonly ampacity: Ampacity;
  readonly drop: Drop;
  readonly protection: ProtectionRange;
}

/** Ampacity of the conductor, all parallel wires together. */
export type Ampacity =
  | {
      readonly judged: true;
      /** After all factors, all parallel wires together, and not above that of the coolest terminal, A. */
      readonly ampacityA: number;
      /** The same by the insulation alone, A: at it the conductor is as hot as its column states. */
      readonly byInsulationA: number;
      /** The terminal that lowers the ampacity; absent if none does. */
      readonly terminal?: TerminalLimit;
      /** As printed in the table for one wire, A. */
      readonly tableA: number;
      /** The column used, °C: at or below the stated insulation rating. */
      readonly columnC: number;
      readonly parallel: number;
      readonly factors: readonly AmpacityFactor[];
      /** Ambient for which the figure holds, °C (the engine space's if that applies). */
      readonly ambientC: number;
      /** The place on its way that decides; absent if its surroundings are the same everywhere. */
      readonly place?: string;
      readonly source: Citation;
    }
  | {
      readonly judged: false;
      /** Why no figure can be given, e.g. the place is hotter than the insulation may be. */
      readonly why: "place-too-hot" | "no-table";
      readonly columnC: number;
      readonly ambientC: number;
      readonly source: Citation;
    };

/** The ampacity of a conductor with insulation of the terminal's rating, without factors. */
export interface TerminalLimit {
  readonly coolest: CoolestTerminal;
  /** The column used, °C: at or below the rating of the terminal. */
  readonly columnC: number;
  /** As printed in the table for one wire, A. */
  readonly tableA: number;
  readonly source: Citation;
}

export interface AmpacityFactor {
  readonly what: "engine-space" | "ambient" | "bundling";
  readonly factor: number;
  /** The input the factor follows from: °C for the first two, number of conductors together for the third. */
  readonly input: number;
  readonly source: Citation;
}

/** Drop over the round trip, at the conductor's working temperature. */
export type Drop = KnownDrop | UnknownDrop;

export interface KnownDrop extends DropBasis {
  readonly judged: true;
  readonly dropV: number;
  /** Relative to the nominal voltage. */
  readonly dropPercent: number;
  /** Nominal voltage less the drop, V. */
  readonly arrivingV: number;
  /** Resistance of the whole round trip, all parallel wires together, at {@link resistanceAtC}, Ω. */
  readonly roundTripOhm: number;
  /** Positive and negative conductor together, m. */
  readonly roundTripM: number;
}

/** The length of the run is unknown. */
interface UnknownDrop extends DropBasis {
  readonly judged: false;
}

/** The part of a drop that depends on no length. */
interface DropBasis {
  readonly dropLimitPercent: number;
  readonly dropLimitSource: Citation;
  /** Estimated conductor temperature at the load, °C; ambient + (rating − ambient) · (load / ampacity)². */
  readonly conductorC: number;
  /** The temperature used for the resistance: conductorC, but not above the insulation's rating unless the place is. */
  readonly resistanceAtC: number;
  /** True: the load is above the ampacity, so the real drop is greater than the one stated. */
  readonly overloaded: boolean;
  /** Resistance of one wire at 20 °C, with the strand factor if the table is for solid wire, Ω/m. */
  readonly ohmPerM20C: number;
  /** Already included; 1 for tables of stranded wire. */
  readonly strandFactor: number;
  readonly source: Citation;
}

/** Ratings that protect the conductor and carry the load. */
export interface ProtectionRange {
  /** The design current, A: the load, with constant powers at the lowest voltage at which they work. */
  readonly minA: number;
  /** The load for hours. */
  readonly forHours: LoadForHours;
  /** The figures behind these currents that the plan does not state. */
  readonly estimate?: Estimate;
  /** The ampacity, A; undefined if the ampacity cannot be judged. */
  readonly maxA: number | undefined;
  /** The target for the rating: 125 % of the continuous part of the load, in a hot place more, and no less than the design current, A. */
  readonly aimA: number;
  /** The margin of the target over the continuous part of the load. */
  readonly margin: ContinuousMargin;
  /** The smallest made rating from aimA to maxA (of the stated family, else of any), if there is one. */
  readonly bestRatingA: number | undefined;
  readonly source: Citation;
}
