import { worksheetFactors } from "../../standards/energy-practice.ts";

interface WorksheetInput {
  readonly loadWh: number;
  readonly nominalV: number;
  /** By month: kWh/m² a day in the plane of the modules. */
  readonly sunHours: readonly number[];
  readonly days: number;
  /** Share of the capacity that may be used. */
  readonly depth: number;
  readonly coldMultiplier: number;
}

/** The classic worksheet, which a reader can redo by hand. */
export interface Worksheet {
  readonly given: WorksheetInput;
  /** Ah a day at the battery. */
  readonly loadAh: number;
  /** Divided by the wire and the battery factor. */
  readonly correctedAh: number;
  /** By month: the current that the array must give at its peak, A. */
  readonly arrayA: readonly number[];
  /** The month that asks for the greatest array. */
  readonly designMonth: number;
  /** The bank for the load itself, and for the corrected load, Ah. */
  readonly bankAh: number;
  readonly bankOfCorrectedAh: number;
}

/**
 * SAND87-7023, worksheets 1 to 3: load in Ah a day over wire and battery efficiency, over the sun hours of the month; and days of autonomy
 * over the depth of discharge, times the multiplier for the cold.
 */
export function worksheet(given: WorksheetInput): Worksheet {
  const { loadWh, nominalV, sunHours, days, depth, coldMultiplier } = given;
  const loadAh = loadWh / nominalV;
  const correctedAh = loadAh / worksheetFactors.wire / worksheetFactors.battery;
  const arrayA = sunHours.map((hours) => correctedAh / hours);
  const designMonth = arrayA.reduce((most, amps, month) => (amps > arrayA[most]! ? month : most), 0);
  const bank = (ah: number) => ((ah * days) / depth) * coldMultiplier;
  return {
    bankAh: bank(loadAh / worksheetFactors.wire),
    bankOfCorrectedAh: bank(correctedAh),
    ...{ given, loadAh, correctedAh, arrayA, designMonth },
  };
}
