import { isLithiumBattery } from "../../model/battery-figures.ts";
import type { BatteryPart } from "../../model/network.ts";
import { coldCharging } from "../../standards/charging-practice.ts";
import {
  chargeAcceptance,
  chargeEfficiency,
  leadAcidInTheCold,
  selfDischarge,
  usualReserve,
} from "../../standards/energy-practice.ts";
import { usualChargeRates } from "../../standards/usual-charge-rates.ts";
import type { BankModel } from "./bank-balance.ts";

/** Temperature of a bank that is kept warm, °C. */
export const heatedC = 20;

/** A bank for the balance, from its batteries and its temperature by month, °C. The plan states more, or the usual figures apply. */
export function bankModel(batteries: readonly BatteryPart[], temperatureC: readonly number[]): BankModel {
  const sum = (of: (battery: BatteryPart) => number) => batteries.reduce((total, one) => total + of(one), 0);
  const lithium = isLithium(batteries);
  const fullWh = sum(fullOf);
  const ofFull = (share: (battery: BatteryPart) => number) => sum((one) => fullOf(one) * share(one));
  const reserveWh = ofFull((one) => reserveOf(one) / 100);
  const minimumWh = ofFull((one) => (one.minimumChargePercent ?? 0) / 100);
  const left = temperatureC.map((celsius) => (lithium ? 1 : capacityInTheCold(celsius)));
  // In the cold the last part cannot be taken out: the levels rise, and a full charge stays the same.
  const raised = (levelWh: number) => left.map((share) => fullWh - share * (fullWh - levelWh));
  const cutOffC = Math.max(...batteries.map(cutOffOf));
  const efficiency = lithium ? chargeEfficiency.lithium : chargeEfficiency.leadAcid;
  return {
    fullWh,
    floorWh: raised(minimumWh),
    reserveWh: raised(Math.max(reserveWh, minimumWh)),
    efficiency,
    selfDischarge: (lithium ? selfDischarge.lithium : selfDischarge.leadAcid) / hoursOfMonth,
    // The limit holds for the current at its poles.
    greatestChargeW: sum((one) => chargeCurrentOf(one) * one.usualRestV) * efficiency,
    constantUpTo: lithium ? chargeAcceptance.lithiumUpTo : chargeAcceptance.leadAcidUpTo,
    timeConstantH: chargeAcceptance.timeConstantH,
    chargeable: temperatureC.map((celsius) => celsius >= cutOffC),
  };
}

/** Mean hours of a month. */
const hoursOfMonth = 730;

export function isLithium(batteries: readonly BatteryPart[]): boolean {
  return batteries.every(isLithiumBattery);
}

function fullOf({ capacityAh, usualRestV, stateOfHealthPercent = 100 }: BatteryPart): number {
  return (capacityAh * usualRestV * stateOfHealthPercent) / 100;
}

/** Percent of a full charge. */
export function reserveOf({ reservePercent, chemistry }: BatteryPart): number {
  return (
    reservePercent ?? (chemistry === "LiFePO4" ? usualReserve.lithiumPercent : usualReserve.leadAcidPercent)
  );
}

/** The temperature below which it is not charged, °C: as the plan states, else by its chemistry. */
function cutOffOf({ chargeCutOffC, chemistry }: BatteryPart): number {
  if (chargeCutOffC !== undefined) return chargeCutOffC;
  return chemistry === "LiFePO4" ? coldCharging.lithiumIronPhosphateFromC : Number.NEGATIVE_INFINITY;
}

function chargeCurrentOf({ maxChargeA, capacityAh, chemistry }: BatteryPart): number {
  return maxChargeA ?? usualChargeRates.greatestPerAh[chemistry] * capacityAh;
}

/** The share of its capacity that a lead-acid battery gives at a temperature: 1 when it is warm. Below the table, its coldest row. */
export function capacityInTheCold(celsius: number): number {
  const { rows } = leadAcidInTheCold;
  const below = rows.findIndex(({ atC }) => atC <= celsius);
  if (below === 0) return 1;
  if (below === -1) return 1 / rows[rows.length - 1]!.multiplier;
  const [warm, cold] = [rows[below - 1]!, rows[below]!];
  const part = (celsius - cold.atC) / (warm.atC - cold.atC);
  return 1 / (cold.multiplier + part * (warm.multiplier - cold.multiplier));
}
