import { displayName } from "./display-name.ts";
import { descriptorOfWord } from "./parts/index.ts";
import { type PeriodValues, periodProperties } from "./period-properties.ts";
import { readValues } from "./read-values.ts";
import type { PlanRecord } from "./record.ts";
import type { InvalidValue } from "./run.ts";
import { isPartWord } from "./terminals.ts";

/** A period as the plan states it. Its place is looked up later, because that needs the table of the world. */
export interface Period {
  readonly record: number;
  readonly name: string;
  readonly values: PeriodValues;
}

/** The periods of a plan; one with a refused value is left out, and the value reported. No other check depends on it. */
export function readPeriods(records: readonly PlanRecord[]): {
  readonly periods: readonly Period[];
  readonly invalid: readonly InvalidValue[];
} {
  const periods: Period[] = [];
  const invalid: InvalidValue[] = [];
  records.forEach((entry, record) => {
    if (entry.word !== "period") return;
    const read = readValues(entry.input, periodProperties);
    const name = displayName(read.values.name ?? "") || displayName(entry.fallbackName);
    const refused = [...read.invalid, ...unfit(read.values, records)];
    if (refused.length === 0) periods.push({ record, name, values: read.values });
    for (const refusal of refused) invalid.push({ record, name, ...refusal, serves: "balance" });
  });
  return { periods, invalid };
}

/** The consumers that are not used are named by their own calls: circuits, loads, inverters. */
function unfit({ notUsed = [] }: PeriodValues, records: readonly PlanRecord[]) {
  return notUsed.flatMap(({ kind, id }, index) => {
    const place = { path: ["notUsed", String(index)], given: undefined };
    const allowed = "a circuit, a load, a motor or an inverter of this plan";
    if (records[id]?.word !== kind) return [{ ...place, wrong: "is not in this plan", allowed }];
    return kind === "circuit" || (isPartWord(kind) && descriptorOfWord(kind).role === "consumer")
      ? []
      : [{ ...place, wrong: `is a ${kind}, which has no use of its own`, allowed }];
  });
}
