import type { Citation } from "../standards/citation.ts";
import { internalResistance } from "../standards/internal-resistance.ts";
import {
  cellsInSeries,
  floodedRestVoltage,
  lithiumIronPhosphateRestVoltage,
  sealedRestVoltage,
} from "../standards/rest-voltage.ts";
import type { BatteryValues } from "./battery-properties.ts";
import type { Chemistry, InternalResistance } from "./network.ts";
import { statedInPlan } from "./stated-in-plan.ts";

/** The table of voltages at rest that counts for a chemistry. */
export function restVoltages(chemistry: Chemistry): RestVoltages {
  return tables[chemistry];
}

interface RestVoltages {
  readonly source: Citation;
  /** The nominal voltage of that for which it stands: a battery, or one cell. */
  readonly forV: number;
  readonly rows: readonly { readonly chargePercent: number; readonly restV: number }[];
}

const tables: Readonly<Record<Chemistry, RestVoltages>> = {
  "flooded lead-acid": floodedRestVoltage,
  AGM: sealedRestVoltage,
  gel: sealedRestVoltage,
  LiFePO4: lithiumIronPhosphateRestVoltage,
};

/** Voltage of a battery at rest, V; undefined where its table has no row for so much charge. */
export function restVoltageAt(
  { chemistry, nominalV }: { readonly chemistry: Chemistry; readonly nominalV: number },
  chargePercent: number,
): number | undefined {
  const { forV, rows } = restVoltages(chemistry);
  const row = rows.find((candidate) => candidate.chargePercent === chargePercent);
  return row && (row.restV * ratedV(chemistry, nominalV)) / forV;
}

/**
 * The nominal voltage by the number of cells. A LiFePO4 battery of four cells goes by 12 V as well as by 12.8 V, and it is the
 * cells that make the voltage at rest.
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

/** What a battery holds against current, from what its plan says of it, else from the range that is usual. */
export function internalResistanceOf(
  values: BatteryValues & { readonly chemistry: Chemistry; readonly capacityAh: number },
  nominalV: number,
  fullV: number,
): InternalResistance {
  const { chemistry, capacityAh, internalMilliohm, shortCircuitA } = values;
  if (internalMilliohm !== undefined) {
    const ohm = internalMilliohm / 1_000;
    return { stated: true, lowOhm: ohm, highOhm: ohm, source: statedInPlan(values.source) };
  }
  const usual = usualRange(chemistry, ratedV(chemistry, nominalV), capacityAh);
  // A battery that is stated to give less than the usual range has more resistance than it.
  const fromShort = shortCircuitA === undefined ? undefined : fullV / shortCircuitA;
  return {
    stated: false,
    lowOhm: fromShort ?? usual.lowOhm,
    highOhm: Math.max(fromShort ?? 0, usual.highOhm),
    source: internalResistance.source,
  };
}

/**
 * The widest range of all rows of a chemistry, brought to this voltage and capacity: R grows with the number of cells and falls
 * with their capacity. The low end of a row goes with its greatest capacity, the high end with its least.
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
