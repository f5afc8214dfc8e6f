import type { Colour } from "./colour.ts";
import type { InsulationC } from "./sizes.ts";

/** The properties of the conductors of circuits and cables alike: their construction and surroundings. */
export interface RunOptions {
  /**
   * Temperature rating of the insulation, °C, as printed on it: 60, 70, 75, 80, 85, 90, 105, 125 or 200.
   * If the ampacity table has no column for it, the next lower one applies.
   *
   * Left out: taken from `build`, else as 75 °C, and a hint reports it.
   *
   * Example: `insulationC: 105`
   */
  readonly insulationC?: InsulationC;
  /**
   * Whether any part of the run lies in an engine space, where conductors may carry less: their ampacity at 50 °C
   * (`gauge`) or 60 °C (`mm2`) applies. With `ambientC` as well, the smaller of the two figures applies.
   *
   * Left out: taken from `build`, else as false.
   *
   * Example: `engineSpace: true`
   */
  readonly engineSpace?: boolean;
  /**
   * Temperature of the air around the conductors, °C, on the hottest day in use. -50 to 200.
   *
   * Left out: taken from `build`, else as 30 °C, for which the ampacity tables are made.
   *
   * Example: `ambientC: 45`
   */
  readonly ambientC?: number;
  /**
   * Number of equal wires in parallel in each conductor. A whole number, 1 to 8.
   *
   * Left out: taken as 1.
   *
   * Example: `parallel: 2`
   */
  readonly parallel?: number;
  /**
   * Colour of the insulation, in up to 40 characters: of a cable, or of the positive conductor of a circuit.
   *
   * Left out: taken from `positiveColour` or `negativeColour` of `build`, else as "red" or "black".
   *
   * Example: `colour: "orange"`
   */
  readonly colour?: Colour;
  /**
   * Text printed on the labels at its ends, beside its number. Up to 40 characters.
   *
   * Left out: taken as its name.
   *
   * Example: `label: "READ 1"`
   */
  readonly label?: string;
}
