import type { AwgSize, Mm2Size } from "../plan/sizes.ts";

/**
 * What a builder says of the work at the bench: how much longer than the way a conductor is cut, what the spools hold, which
 * colours the polarities have. None of it changes a current, a drop or a limit.
 */
export interface BenchSettings {
  /** Added to every length when it is cut, in percent of it. */
  readonly slackPercent: number;
  /** Added at each end for stripping and terminating, m. */
  readonly endSlackM: number;
  /** How many spare fuses of each rating and family to buy. */
  readonly spareFuses: number;
  /** Of conductors that name no colour of their own. */
  readonly positiveColour: string;
  readonly negativeColour: string;
  /** Put behind every price: "EUR". Empty: none is stated. */
  readonly currency: string;
  /** Spools that can be bought. Empty: the builder states none, and usual lengths are taken. */
  readonly spools: readonly Spool[];
}

/** One spool as it is sold. */
export interface Spool {
  readonly size: { readonly awg: AwgSize } | { readonly mm2: Mm2Size };
  readonly lengthM: number;
  /** Undefined: sold in every colour. */
  readonly colour?: string;
  /** Of the whole spool. */
  readonly price?: number;
}

/** Common practice, no source. */
export const defaultBench: BenchSettings = {
  slackPercent: 10,
  endSlackM: 0.1,
  spareFuses: 2,
  positiveColour: "red",
  negativeColour: "black",
  currency: "",
  spools: [],
};
