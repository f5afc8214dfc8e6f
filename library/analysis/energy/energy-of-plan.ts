import type { Network } from "../../model/network.ts";
import type { Period } from "../../model/read-periods.ts";
import type { WorldTable } from "../../standards/world.ts";
import { type Climate, type ClimateTable, climateTable } from "./climate.ts";
import { energyOfPeriod, isUsed } from "./energy-of-period.ts";
import type { BankEnergy, NamedConsumer, PeriodEnergy } from "./energy-result.ts";
import { type FlowsAtBank, flowsAtBanks, type SolvedNetwork } from "./flows-at-bank.ts";
import { type PlaceTable, placeTable } from "./places.ts";

/** The table of the world, decoded. */
export interface World {
  readonly climate: ClimateTable;
  readonly places: PlaceTable;
}

export function worldOf(table: WorldTable): World {
  return { climate: climateTable(table), places: placeTable(table) };
}

/**
 * The energy of each period of a plan. The table of the world is asked for only if there is a period. `refused`: the records with a
 * refused value that the balance reads. A consumer among them has no hours; a battery or a source leaves its bank without a balance.
 */
export function energyOfPlan(
  periods: readonly Period[],
  judged: SolvedNetwork | undefined,
  world: () => World,
  refused: ReadonlySet<number> = new Set(),
): readonly PeriodEnergy[] {
  if (periods.length === 0) return [];
  const flows = judged ? flowsAtBanks(judged) : { banks: [], withoutBank: [], idleArrays: [] };
  const withRefused = flows.banks.map((bank) => partsRefused(judged?.network, bank, refused));
  const judgedBanks = flows.banks.filter((_, index) => withRefused[index]!.length === 0);
  return periods.map((period): PeriodEnergy => {
    const found = climateOf(period, world());
    const { climate } = found;
    const banks = climate
      ? judgedBanks.map((bank) => withInvalid(energyOfPeriod(period, climate, bank), refused))
      : [];
    const withoutBank = flows.withoutBank.filter((part) => isUsed(period.values, part));
    return {
      period,
      ...found,
      banks,
      refusedParts: [...new Map(withRefused.flat().map((part) => [part.record, part])).values()],
      idleArrays: flows.idleArrays,
      withoutBank: withoutBank.map(({ record, name }) => ({ record, name })),
    };
  });
}

/** A consumer whose hours are refused does state some. */
function withInvalid(bank: BankEnergy, refused: ReadonlySet<number>): BankEnergy {
  if (!bank.withoutHours.some(({ record }) => refused.has(record))) return bank;
  const withoutHours = bank.withoutHours.map((one) =>
    refused.has(one.record) ? { record: one.record, name: one.name, isInvalid: true as const } : one,
  );
  return { ...bank, withoutHours };
}

/** Of a bank: its batteries, its arrays, and every charger on the mains of the plan. */
function partsRefused(
  network: Network | undefined,
  { batteries, arrays }: FlowsAtBank,
  refused: ReadonlySet<number>,
): readonly NamedConsumer[] {
  if (refused.size === 0) return [];
  const chargers = network?.parts.filter(({ kind }) => kind === "shoreCharger") ?? [];
  return [...batteries, ...arrays, ...chargers]
    .filter(({ record }) => refused.has(record))
    .map(({ record, name }) => ({ record, name }));
}

/** At the degrees that the plan states, or at the only place of its name. */
function climateOf({ values }: Period, world: World): Pick<PeriodEnergy, "places" | "alike" | "climate"> {
  const { place, latitudeDeg, longitudeDeg, irradiation } = values;
  const places = place === undefined ? [] : world.places.find(place);
  const alike = place !== undefined && places.length === 0 ? world.places.like(place) : [];
  const at = places.length === 1 ? places[0]! : { latitudeDeg, longitudeDeg };
  if (at.latitudeDeg === undefined || at.longitudeDeg === undefined)
    return { places, alike, climate: undefined };
  const climate: Climate = world.climate(at.latitudeDeg, at.longitudeDeg);
  return { places, alike, climate: irradiation ? withIrradiation(climate, irradiation) : climate };
}

/** The same object for the same figures: the sun of a year is kept with it. */
function withIrradiation(climate: Climate, irradiation: readonly number[]): Climate {
  const before = ownIrradiation.get(irradiation);
  if (before && before.airC === climate.airC) return before;
  const own = { ...climate, irradiation };
  ownIrradiation.set(irradiation, own);
  return own;
}

const ownIrradiation = new WeakMap<readonly number[], Climate>();
