import type { Protection, Run } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { adiabaticCopper, finalTemperatures } from "../standards/short-circuit-copper.ts";
import { crossSectionMm2 } from "./copper-area.ts";
import { type LetThrough, letThrough } from "./let-through.ts";

/** The withstand of a conductor, and the let-through of a device into it. */
export type FaultWithstand =
  | (Withstand & {
      readonly judged: true;
      /** Maximum, A²·s. */
      readonly letThroughA2s: number;
      readonly openingS: number;
      /** {@link letThroughA2s} is at or below {@link Withstand.withstandA2s}. */
      readonly withstands: boolean;
      /** Source of the device's time to open. */
      readonly openingSource: Citation;
    })
  | (Withstand & {
      readonly judged: false;
      /** Why the device's time to open is unknown; or it takes so long that heat escapes meanwhile. */
      readonly why: Extract<LetThrough, { judged: false }>["why"] | "takes-too-long";
    });

export interface Withstand {
  /** k² · S², A²·s, all parallel wires together. */
  readonly withstandA2s: number;
  /** A·√s/mm² */
  readonly k: number;
  /** All parallel wires together, mm². */
  readonly crossSectionMm2: number;
  /** °C: the rating of the insulation, and its limit for the moment of the short. */
  readonly initialC: number;
  readonly finalC: number;
  readonly source: Citation;
}

/**
 *     I²·t ≤ k² · S²     I prospective current, A; t time to open, s; S cross-section, mm²; k see {@link adiabaticK}
 *
 * IEC 60364-4-43, 434.5.2; valid up to 5 s. The conductor is assumed to be at its insulation's rating when the short occurs.
 * A device that takes longer and still lets through less than the withstand is judged all the same: heat that escapes is on
 * the safe side. One that takes longer and lets through more is not judged.
 */
export function faultWithstand(
  run: Pick<Run, "conductor" | "insulationC">,
  device: Pick<Protection, "ratingA" | "family">,
  currentA: number,
): FaultWithstand {
  const withstand = withstandOf(run);
  const through = letThrough(device, currentA);
  if (!through.judged) return { ...withstand, judged: false, why: through.why };
  const withstands = through.letThroughA2s <= withstand.withstandA2s;
  if (!withstands && through.openingS > adiabaticCopper.validUpToS) {
    return { ...withstand, judged: false, why: "takes-too-long" };
  }
  return {
    ...withstand,
    judged: true,
    letThroughA2s: through.letThroughA2s,
    openingS: through.openingS,
    withstands,
    openingSource: through.source,
  };
}

export function withstandOf({ conductor, insulationC }: Pick<Run, "conductor" | "insulationC">): Withstand {
  const finalC = finalTemperatureC(insulationC);
  const k = adiabaticK(insulationC, finalC);
  const areaMm2 = crossSectionMm2(conductor) * conductor.parallel;
  return {
    withstandA2s: withstandA2s(k, areaMm2),
    k,
    crossSectionMm2: areaMm2,
    initialC: insulationC,
    finalC,
    source: adiabaticCopper.source,
  };
}

/** k² · S², A²·s; k in A·√s/mm², S in mm². */
export function withstandA2s(k: number, areaMm2: number): number {
  return (k * areaMm2) ** 2;
}

/**
 *     k = K · √ln((β + θ_f) / (β + θ_i))     A·√s/mm²; K = 226, β = 234.5 °C; θ initial and final temperature, °C
 *
 * IEC 60949. Copper that keeps all of the heat; valid for θ_f above θ_i, up to 5 s.
 */
export function adiabaticK(initialC: number, finalC: number): number {
  const { bigK, betaC } = adiabaticCopper;
  return bigK * Math.sqrt(Math.log((betaC + finalC) / (betaC + initialC)));
}

function finalTemperatureC(insulationC: number): number {
  const { rows } = finalTemperatures;
  // No insulation is rated above the last row.
  return (rows.find(({ ratedUpToC }) => insulationC <= ratedUpToC) ?? rows[1]).finalC;
}
