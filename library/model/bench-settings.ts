import type { DuplexCable } from "../plan/duplex.ts";
import type { AwgSize, Mm2Size } from "../plan/sizes.ts";
import { conductorColours } from "../standards/conductor-colours.ts";
import type { BuildValues } from "./build-properties.ts";
import { displayName } from "./display-name.ts";
import { metresPerFoot, metresPerInch } from "./length-limits.ts";
import { shown } from "./read-run.ts";

/**
 * Settings for the work at the bench: the extra length of cut conductors, the lengths of spools, the colours of polarities.
 * None of them changes a current, a drop or a limit.
 */
export interface BenchSettings {
  /** Added to every length when it is cut, in percent of it. */
  readonly slackPercent: number;
  /** Added at each end for stripping and terminating, m. */
  readonly endSlackM: number;
  /** Number of spare fuses of each rating and family to buy; undefined: the usual number of its family. */
  readonly spareFuses: number | undefined;
  /** For conductors without a stated colour. */
  readonly positiveColour: string;
  readonly negativeColour: string;
  /** Written after every price: "EUR". Empty: none is stated. */
  readonly currency: string;
  /** Spools that can be bought. Empty: none are stated, and usual lengths are used. */
  readonly spools: readonly Spool[];
  /** Wire of a size without stated spools is bought by the foot or metre. */
  readonly wireByLength: boolean;
}

/** One spool as it is sold. */
export interface Spool {
  readonly size: { readonly awg: AwgSize } | { readonly mm2: Mm2Size };
  readonly lengthM: number;
  /** Undefined: single wire. */
  readonly duplex?: DuplexCable;
  /** Undefined: sold in every colour. */
  readonly colour?: string;
  /** Price of the whole spool. */
  readonly price?: number;
}

/** Common practice, no source, except for the colours. */
export const defaultBench: BenchSettings = {
  slackPercent: 10,
  endSlackM: 0.1,
  spareFuses: undefined,
  positiveColour: conductorColours.positive,
  negativeColour: conductorColours.negative[0],
  currency: "",
  spools: [],
  wireByLength: false,
};

/** The settings of a build, with defaults filled in. */
export function benchOf(values: BuildValues): BenchSettings {
  const { slackPercent, spareFuses, positiveColour, negativeColour, currency, spools } = values;
  return {
    slackPercent: slackPercent ?? defaultBench.slackPercent,
    endSlackM: endSlackM(values) ?? defaultBench.endSlackM,
    spareFuses,
    positiveColour: displayName(positiveColour ?? "") || defaultBench.positiveColour,
    negativeColour: displayName(negativeColour ?? "") || defaultBench.negativeColour,
    currency: displayName(currency ?? ""),
    spools: (spools ?? []).map(spoolOf),
    wireByLength: values.wireByLength ?? defaultBench.wireByLength,
  };
}

function endSlackM({ endSlackMm, endSlackIn }: BuildValues): number | undefined {
  if (endSlackMm !== undefined) return endSlackMm / 1_000;
  return endSlackIn === undefined ? undefined : endSlackIn * metresPerInch;
}

/** The reader of the values ensures exactly one size and one length. */
function spoolOf({ gauge, mm2, lengthFt, lengthM, sheathed, colour, price }: WrittenSpool): Spool {
  return {
    size: gauge !== undefined ? { awg: gauge } : { mm2: mm2! },
    lengthM: lengthFt !== undefined ? lengthFt * metresPerFoot : lengthM!,
    ...(sheathed !== undefined && { duplex: sheathed }),
    ...shown("colour", colour),
    ...(price !== undefined && { price }),
  };
}

type WrittenSpool = NonNullable<BuildValues["spools"]>[number];
