import type { Chemistry } from "../plan/battery.ts";
import type { Citation } from "../standards/citation.ts";
import { lowestCellVoltage } from "../standards/device-practice.ts";
import { internalResistance } from "../standards/internal-resistance.ts";
import {
  cellsInSeries,
  emptyFloodedRestVoltage,
  floodedRestVoltage,
  lithiumIronPhosphateCell,
  lithiumIronPhosphateRestVoltage,
  sealedRestVoltage,
} from "../standards/rest-voltage.ts";
import { statedInPlan } from "./stated-in-plan.ts";

/**
 * The basis of a voltage at rest: the plan states it; it follows from the stated charge by a published list, by a recalled one, or
 * from below the lowest row; or the plan states neither, and the usual voltage is taken.
 */
export type RestFrom = "plan" | "charge" | "charge, from memory" | "charge below the list" | "usual";

/** The voltages printed on batteries. The number of its cells follows from it, and all its voltages from that number. */
export interface BatteryLabel {
  readonly chemistry: Chemistry;
  readonly nominalV: number;
}

/** Cells in series, each of a nominal 2 V (lead-acid) or 3.2 V (LiFePO4). */
export function cellsOf({ chemistry, nominalV }: BatteryLabel): number {
  if (chemistry !== "LiFePO4") return nominalV / nominalOfLeadAcidCellV;
  const cells = nominalV / lithiumIronPhosphateCell.restV;
  // 48 V are sixteen cells, not fifteen.
  const byTwelves = isWhole(nominalV / 12);
  if (!byTwelves && isWhole(cells)) return Math.round(cells);
  return (nominalV / 12) * cellsInSeries.lithiumIronPhosphateFor12V;
}

const nominalOfLeadAcidCellV = 2;

/**
 * The nominal voltage of the system that a battery makes: 12 V for each four cells of LiFePO4, whether it is sold as 12 V or as
 * 12.8 V. Lead-acid: as its label states.
 */
export function systemVoltageOf(label: BatteryLabel): number {
  if (label.chemistry !== "LiFePO4") return label.nominalV;
  return (cellsOf(label) * 12) / cellsInSeries.lithiumIronPhosphateFor12V;
}

/** The same for a voltage that a build states, for any battery: 12.8, 25.6 and 51.2 V are labels of LiFePO4 batteries. */
export function systemVoltageFor(nominalV: number): number {
  const twelves = nominalV / (cellsInSeries.lithiumIronPhosphateFor12V * lithiumIronPhosphateCell.restV);
  return isWhole(twelves) ? Math.round(twelves) * 12 : nominalV;
}

/**
 * The sum of the nominal voltages of its cells, V: 2 V of lead-acid, 3.2 V of LiFePO4, so 51.2 V for sixteen. It rests there if the plan
 * does not state the charge.
 */
export function cellVoltageOf(label: BatteryLabel): number {
  const { chemistry, nominalV } = label;
  return chemistry === "LiFePO4" ? cellsOf(label) * lithiumIronPhosphateCell.restV : nominalV;
}

export function isLithiumBattery({ chemistry }: Pick<BatteryLabel, "chemistry">): boolean {
  return chemistry === "LiFePO4";
}

/** The lowest voltage at which devices draw current from it, V: 1.75 V a lead-acid cell, 3.0 V a cell of LiFePO4. */
export function lowestVoltageOf(label: BatteryLabel): number {
  const { leadAcidV, lithiumIronPhosphateV } = lowestCellVoltage;
  return cellsOf(label) * (label.chemistry === "LiFePO4" ? lithiumIronPhosphateV : leadAcidV);
}

/** The same for a system whose battery is unknown: that of lead-acid, which is lower. */
export function lowestVoltageFor(systemV: number): number {
  return (systemV / nominalOfLeadAcidCellV) * lowestCellVoltage.leadAcidV;
}

/** For the maximum fault current, V: lead-acid at rest and full; LiFePO4 at the end of charge, 3.65 V a cell. */
export function fullVoltageOf(label: BatteryLabel): { readonly voltageV: number; readonly source: Citation } {
  return label.chemistry === "LiFePO4"
    ? {
        voltageV: cellsOf(label) * lithiumIronPhosphateCell.chargedV,
        source: lithiumIronPhosphateRestVoltage.source,
      }
    : { voltageV: restVoltageAt(label, 100).voltageV, source: restVoltages[label.chemistry].source };
}

/** At rest and full, the lower end for LiFePO4, V: a charger must hold more to fill it. */
export function fullAtRestOf(label: BatteryLabel): number {
  return label.chemistry === "LiFePO4"
    ? cellsOf(label) * lithiumIronPhosphateCell.fullAtRestV[0]
    : restVoltageAt(label, 100).voltageV;
}

interface RestVoltages {
  readonly source: Citation;
  /** Nominal voltage of the battery or cell that the table is for. */
  readonly forV: number;
  /** In ascending order of charge. */
  readonly rows: readonly Row[];
  /** Below the lowest row. */
  readonly empty?: { readonly restV: number };
}

interface Row {
  readonly chargePercent: number;
  readonly restV: number;
}

const restVoltages: Readonly<Record<Chemistry, RestVoltages>> = {
  "flooded lead-acid": { ...floodedRestVoltage, empty: emptyFloodedRestVoltage },
  AGM: sealedRestVoltage,
  gel: sealedRestVoltage,
  LiFePO4: {
    ...lithiumIronPhosphateRestVoltage,
    rows: lithiumIronPhosphateRestVoltage.rows.map((row) =>
      row.chargePercent === 100 ? { ...row, restV: lithiumIronPhosphateCell.fullAtRestV[1] } : row,
    ),
  },
};

/**
 * Rest voltage of a battery at a state of charge, V: on a straight line between two rows of its table.
 *
 *     U = U_1 + (U_2 − U_1) · (q − q_1) / (q_2 − q_1)     q charge, %
 *
 * `from`: "charge" if it follows from rows that were read. Below the lowest row the line leads to the voltage of an empty battery in
 * another list.
 */
export function restVoltageAt(
  label: BatteryLabel,
  chargePercent: number,
): { readonly voltageV: number; readonly from: Exclude<RestFrom, "plan" | "usual"> } {
  const { forV, rows, empty, source } = restVoltages[label.chemistry];
  const [lowest, secondHighest] = [rows[0] as Row, rows.at(-2) as Row];
  const isRecalled =
    source.confirmed === "memory" ||
    (label.chemistry === "LiFePO4" && chargePercent > secondHighest.chargePercent);
  const from =
    chargePercent < lowest.chargePercent
      ? "charge below the list"
      : isRecalled
        ? "charge, from memory"
        : "charge";
  const all = empty ? [{ chargePercent: 0, restV: empty.restV }, ...rows] : rows;
  const upper = Math.max(
    1,
    all.findIndex((row) => row.chargePercent >= chargePercent),
  );
  const [low, high] = [all[upper - 1] as Row, all[upper] as Row];
  const share = (chargePercent - low.chargePercent) / (high.chargePercent - low.chargePercent);
  const restV = low.restV + (high.restV - low.restV) * share;
  return { voltageV: (restV * cellVoltageOf(label)) / forV, from };
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 1e-6;
}

/** Internal resistance of a battery: as its plan states it, else the usual range. */
export function internalResistanceOf(values: StatedFigures, fullV: number): InternalResistance {
  const { capacityAh, internalMilliohm, shortCircuitA } = values;
  if (internalMilliohm !== undefined) {
    const ohm = internalMilliohm / 1_000;
    return { stated: true, lowOhm: ohm, highOhm: ohm, source: statedInPlan(values.source) };
  }
  const usual = usualRange(values, capacityAh);
  // A stated short-circuit current below the usual range means a resistance above it.
  const fromShort = shortCircuitA === undefined ? undefined : fullV / shortCircuitA;
  return {
    stated: false,
    lowOhm: fromShort ?? usual.lowOhm,
    highOhm: Math.max(fromShort ?? 0, usual.highOhm),
    source: internalResistance.source,
  };
}

interface StatedFigures extends BatteryLabel {
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
function usualRange(label: BatteryLabel, capacityAh: number): { lowOhm: number; highOhm: number } {
  const forV = cellVoltageOf(label);
  const rows = internalResistance.rows.filter((row) => row.chemistry === label.chemistry);
  const scaled = (milliohm: number, row: { readonly forV: number }, ah: number) =>
    (milliohm / 1_000) * (forV / row.forV) * (ah / capacityAh);
  return {
    lowOhm: Math.min(...rows.map((row) => scaled(row.milliohm[0], row, row.forAh[1]))),
    highOhm: Math.max(...rows.map((row) => scaled(row.milliohm[1], row, row.forAh[0]))),
  };
}
