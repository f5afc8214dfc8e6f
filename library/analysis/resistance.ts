import type { Conductor } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { strandFactor, temperatureCoefficient } from "../standards/copper.ts";
import { resistanceOfAwg } from "../standards/resistance-awg.ts";
import { resistanceOfClass5 } from "../standards/resistance-iec60228.ts";

/** Resistance of one wire of a trade size. */
export interface WireResistance {
  /** At 20 °C, the strand factor included, Ω/m. */
  readonly ohmPerM20C: number;
  /** 1 if the table is for stranded wire. */
  readonly strandFactor: number;
  readonly source: Citation;
}

/**
 * Resistance of one wire: AWG from the table for solid copper times 1.02 for the lay of the strands, metric from
 * IEC 60228 class 5, which is for stranded wire. Undefined for a size in no table.
 */
export function wireResistance(conductor: Conductor): WireResistance | undefined {
  return conductor.system === "awg" ? awgWires.get(conductor.awg) : metricWires.get(conductor.mm2);
}

/**
 * Resistance of copper at a temperature.
 *
 *     R = R20 · (1 + α · (T − 20))     R, R20 in Ω (or Ω/m); α = 0.00393/K; T in °C
 *
 * Annealed copper standard (IEC 60028). Linear between about −50 and 200 °C.
 */
export function resistanceAt(ohm20C: number, conductorC: number): number {
  return ohm20C * (1 + temperatureCoefficient.perK * (conductorC - temperatureCoefficient.referenceC));
}

const awgWires: ReadonlyMap<number | string, WireResistance> = new Map(
  resistanceOfAwg.rows.map(({ awg, solidOhmPerKm20C }) => [
    awg,
    {
      ohmPerM20C: (solidOhmPerKm20C / 1000) * strandFactor.factor,
      strandFactor: strandFactor.factor,
      source: resistanceOfAwg.source,
    },
  ]),
);

const metricWires: ReadonlyMap<number, WireResistance> = new Map(
  resistanceOfClass5.rows.map(({ mm2, maxOhmPerKm20C }) => [
    mm2,
    { ohmPerM20C: maxOhmPerKm20C / 1000, strandFactor: 1, source: resistanceOfClass5.source },
  ]),
);
