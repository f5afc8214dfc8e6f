import type { Chemistry } from "../plan/battery.ts";
import type { Citation } from "../standards/citation.ts";
import { internalResistance } from "../standards/internal-resistance.ts";
import {
  cellsInSeries,
  floodedRestVoltage,
  lithiumIronPhosphateRestVoltage,
  sealedRestVoltage,
} from "../standards/rest-voltage.ts";
import { statedInPlan } from "./stated-in-plan.ts";

/** The table of rest voltages for a chemistry. */
export function restVoltages(chemistry: Chemistry): RestVoltages {
  return tables[chemistry];
}

interface RestVoltages {
  readonly source: Citation;
  /** Nominal voltage of the battery or cell that the table is for. */
  readonly forV: number;
  readonly rows: readonly { readonly chargePercent: number; readonly restV: number }[];
}

const tables: Readonly<Record<Chemistry, RestVoltages>> = {
  "flooded lead-acid": floodedRestVoltage,
  AGM: sealedRestVoltage,
  gel: sealedRestVoltage,
  LiFePO4: lithiumIronPhosphateRestVoltage,
};

/** Rest voltage of a battery, V; undefined if its table has no row for this state of charge. */
export function restVoltageAt(
  { chemistry, nominalV }: { readonly chemistry: Chemistry; readonly nominalV: number },
  chargePercent: number,
): number | undefined {
  const { forV, rows } = restVoltages(chemistry);
  const row = rows.find((candidate) => candidate.chargePercent === chargePercent);
  return row && (row.restV * ratedV(chemistry, nominalV)) / forV;
}

/**
 * The nominal voltage from the number of cells. A LiFePO4 battery of four cells is sold as 12 V and as 12.8 V, but its cells
 * determine the rest voltage.
 */
function ratedV(chemistry: Chemistry, nominalV: number): number {
  if (chemistry !== "LiFePO4") return nominalV;
  const cellV = lithiumIronPhosphateRestVoltage.forV;
  const cells = nominalV / cellV;
  const byTwelves = isWhole(nominalV / 12);
  if (!byTwelves && isWhole(cells)) return nominalV;
  return (nominalV / 12) * cellsInSeries.lithiumIronPhosphateFor12V * cellV;
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 1e-6;
}

/** Internal resistance of a battery: as its plan states it, else the usual range. */
export function internalResistanceOf(
  values: StatedFigures,
  nominalV: number,
  fullV: number,
): InternalResistance {
  const { chemistry, capacityAh, internalMilliohm, shortCircuitA } = values;
  if (internalMilliohm !== undefined) {
    const ohm = internalMilliohm / 1_000;
    return { stated: true, lowOhm: ohm, highOhm: ohm, source: statedInPlan(values.source) };
  }
  const usual = usualRange(chemistry, ratedV(chemistry, nominalV), capacityAh);
  // A stated short-circuit current below the usual range means a resistance above it.
  const fromShort = shortCircuitA === undefined ? undefined : fullV / shortCircuitA;
  return {
    stated: false,
    lowOhm: fromShort ?? usual.lowOhm,
    highOhm: Math.max(fromShort ?? 0, usual.highOhm),
    source: internalResistance.source,
  };
}

interface StatedFigures {
  readonly chemistry: Chemistry;
  readonly capacityAh: number;
  readonly internalMilliohm: number | undefined;
  readonly shortCircuitA: number | undefined;
  /** The builder's source. */
  readonly source: string | undefined;
}

/** Stated: both ends are equal. Otherwise the usual range for the chemistry, scaled to voltage and capacity. */
export interface InternalResistance {
  readonly stated: boolean;
  /** For the maximum fault current, Ω. */
  readonly lowOhm: number;
  /** For the minimum fault current and in use, Ω. */
  readonly highOhm: number;
  readonly source: Citation;
}

/**
 * The widest range of all rows of a chemistry, scaled to this voltage and capacity: R increases with the number of cells and
 * decreases with their capacity. The low end of a row belongs to its maximum capacity, the high end to its minimum.
 */
function usualRange(
  chemistry: Chemistry,
  forV: number,
  capacityAh: number,
): { lowOhm: number; highOhm: number } {
  const rows = internalResistance.rows.filter((row) => row.chemistry === chemistry);
  const scaled = (milliohm: number, row: { readonly forV: number }, ah: number) =>
    (milliohm / 1_000) * (forV / row.forV) * (ah / capacityAh);
  return {
    lowOhm: Math.min(...rows.map((row) => scaled(row.milliohm[0], row, row.forAh[1]))),
    highOhm: Math.max(...rows.map((row) => scaled(row.milliohm[1], row, row.forAh[0]))),
  };
}
