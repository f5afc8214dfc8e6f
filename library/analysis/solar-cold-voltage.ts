import type { SolarArrayPart } from "../model/network.ts";
import type { Citation } from "../standards/citation.ts";
import { coldVoltageByCoefficient, coldVoltageFactors, standardTestC } from "../standards/solar-factors.ts";

/** The ratio of a solar module's open-circuit voltage on the coldest day to that at standard test conditions. */
export type ColdFactor =
  | { readonly judged: true; readonly factor: number; readonly source: Citation }
  /** Colder than the table, and the maker's coefficient is not stated. */
  | { readonly judged: false; readonly tableEndsC: number };

/**
 *     Voc(T) = Voc(25 °C) · (1 + β · (T − 25))     β per kelvin, negative; T the lowest expected ambient, °C
 *
 * NFPA 70, 690.7(A). Without β the factor is taken from Table 690.7(A), which is for crystalline silicon; a temperature
 * between two of its rows takes the colder one, as the table prints whole degrees only. Never below 1: a place that is
 * never cooler than 25 °C gets no credit for it.
 */
export function coldVoltageFactor(of: {
  lowestC: number;
  /** Percent of the open-circuit voltage for each kelvin, negative. */
  percentPerC: number | undefined;
}): ColdFactor {
  const { lowestC, percentPerC } = of;
  if (lowestC >= standardTestC)
    return {
      judged: true,
      factor: 1,
      source: percentPerC === undefined ? coldVoltageFactors.source : coldVoltageByCoefficient,
    };
  if (percentPerC !== undefined)
    return {
      judged: true,
      factor: 1 + (percentPerC / 100) * (lowestC - standardTestC),
      source: coldVoltageByCoefficient,
    };
  const row = coldVoltageFactors.rows.find(({ toC }) => lowestC >= toC);
  if (!row) return { judged: false, tableEndsC: coldestOfTable };
  return {
    judged: true,
    factor: row.factor,
    source: coldVoltageFactors.source,
  };
}

const coldestOfTable = Math.min(...coldVoltageFactors.rows.map(({ toC }) => toC));

/** A string of solar modules on the coldest day. */
export interface ColdString {
  /** At standard test conditions, V. */
  readonly openCircuitV: number;
  /** On the coldest day, V; arrays that cannot be judged count at 25 °C, which makes this a lower bound. */
  readonly coldV: number;
  /** Undefined: the whole string could be judged. */
  readonly notJudged:
    | { readonly why: "lowest-not-stated" }
    | { readonly why: "below-table"; readonly lowestC: number; readonly tableEndsC: number }
    | undefined;
  readonly source: Citation;
}

/** Arrays in series add up, each with its own number of modules, coefficient and place. */
export function coldStringOf(string: readonly SolarArrayPart[]): ColdString {
  let [openCircuitV, coldV] = [0, 0];
  let notJudged: ColdString["notJudged"];
  let source: Citation | undefined;
  for (const array of string) {
    const atTestV = array.openCircuitV * array.series;
    const { lowestC, openCircuitPercentPerC: percentPerC } = array;
    const cold = lowestC === undefined ? undefined : coldVoltageFactor({ lowestC, percentPerC });
    openCircuitV += atTestV;
    coldV += atTestV * (cold?.judged ? cold.factor : 1);
    if (cold?.judged) source ??= cold.source;
    else if (cold && lowestC !== undefined)
      notJudged ??= { why: "below-table", lowestC, tableEndsC: cold.tableEndsC };
    else notJudged ??= { why: "lowest-not-stated" };
  }
  return { openCircuitV, coldV, notJudged, source: source ?? coldVoltageByCoefficient };
}

/** Maximum number of an array's modules in series that keeps the coldest day's voltage within a limit; 0: not even one. */
export function mostInSeries(array: SolarArrayPart, maxInputV: number): number {
  return Math.floor((maxInputV / coldStringOf([{ ...array, series: 1 }]).coldV) * (1 + 1e-12));
}
