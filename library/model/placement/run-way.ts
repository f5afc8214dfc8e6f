import type { LengthUnit } from "../length-unit.ts";

/** The lengths of the conductors of a run along the way on which it is laid, m; `negativeM` is 0 for a cable. */
export interface WayLengths {
  readonly positiveM: number;
  readonly negativeM: number;
  /** In which they are shown. */
  readonly unit: LengthUnit;
  /** The places that it passes through, each once. */
  readonly places?: readonly PlaceOnWay[];
}

/** A channel or surface on a way. Its surroundings are absent if the plan states none for it. */
export interface PlaceOnWay {
  readonly name: string;
  readonly ambientC?: number;
  readonly engineSpace?: boolean;
}

/** By record of a run. Only a run whose plan states no length takes its lengths from there. */
export type Ways = ReadonlyMap<number, WayLengths>;
