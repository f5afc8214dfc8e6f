import type { Citation } from "../standards/citation.ts";
import { coldVoltageByCoefficient, coldVoltageFactors, standardTestC } from "../standards/solar-factors.ts";

/** How much higher than at standard test conditions the open-circuit voltage of a panel is on the coldest day. */
export type ColdFactor =
  | { readonly judged: true; readonly factor: number; readonly source: Citation }
  /** Colder than the table goes, and no coefficient of the maker's is stated. */
  | { readonly judged: false; readonly tableEndsC: number };

/**
 *     Voc(T) = Voc(25 °C) · (1 + β · (T − 25))     β per kelvin, negative; T the lowest expected ambient, °C
 *
 * NFPA 70, 690.7(A). Without β the factor is taken from Table 690.7(A), which is for crystalline silicon; a temperature
 * between two of its rows takes the colder one, as the table prints whole degrees only. Nowhere below 1: a place that is
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
      source: percentPerC === undefined ? coldVoltageFactors.sourceOfReadRow : coldVoltageByCoefficient,
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
    source: row.confirmed === "read" ? coldVoltageFactors.sourceOfReadRow : coldVoltageFactors.source,
  };
}

const coldestOfTable = Math.min(...coldVoltageFactors.rows.map(({ toC }) => toC));
