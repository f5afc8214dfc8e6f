import type { PlannedChannel } from "./channel.ts";
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
  /**
   * The channels that its conductors take, if they are not to take the shortest way. At most 50.
   *
   * Left out: taken as the shortest way through the channels of the plan.
   *
   * Example: `through: []`
   */
  readonly through?: readonly PlannedChannel[];
  /**
   * Outside diameter of one insulated wire, or of its sheath, mm. Above 0, up to 200.
   *
   * Left out: taken as not known: fill and bends are not judged, because no public table of outside diameters exists.
   *
   * Example: `outsideMm: 9.5`
   */
  readonly outsideMm?: number;
  /**
   * Number of the stud or branch where it begins, counted from 1, at a terminal with several (`terminalsAt`). A whole number, 1 to 200.
   *
   * Left out: taken as the next free one, in the order of the plan.
   *
   * Example: `fromStud: 3`
   */
  readonly fromStud?: number;
  /**
   * Number of the stud where a cable ends at `to`, or the return of a circuit at `returnTo`, counted from 1, at a terminal with several
   * (`terminalsAt`). A whole number, 1 to 200.
   *
   * Left out: taken as the next free one, in the order of the plan.
   *
   * Example: `toStud: 2`
   */
  readonly toStud?: number;
}
