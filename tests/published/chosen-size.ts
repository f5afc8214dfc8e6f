import { madeSizes } from "../../library/analysis/made-sizes.ts";
import { sampleCircuit } from "../../library/analysis/sample-circuit.tester.ts";
import { thinnestNeeded } from "../../library/analysis/sizing.ts";
import { table5 } from "../../library/standards/ampacity-33cfr183-425.ts";
import { metresPerFoot } from "./published-data.ts";

/** A run as the books describe it. */
export interface Run {
  readonly systemV: number;
  readonly currentA: number;
  /** Both conductors together. */
  readonly roundTripFt: number;
  readonly allowedDropV: number;
}

/** The size, AWG, that the library chooses for a run with its own tables. Undefined: 4/0 is not enough. */
export function chosenAwg(run: Run): number | string | undefined {
  const sizing = thinnestNeeded(circuitOf(run));
  return sizing?.conductor.system === "awg" ? sizing.conductor.awg : undefined;
}

/** The run as a circuit without protection: only current and drop determine the size. */
export function circuitOf({ systemV, currentA, roundTripFt, allowedDropV }: Run) {
  const eachWayM = (roundTripFt / 2) * metresPerFoot;
  return sampleCircuit({
    systemV,
    loadA: currentA,
    loadAtV: systemV,
    lengthsGiven: { oneWayFt: roundTripFt / 2 },
    positiveM: eachWayM,
    negativeM: eachWayM,
    dropLimitPercent: (100 * allowedDropV) / systemV,
    dropLimitStated: true,
    protection: null,
  });
}

/**
 * The sizes that agree with a book's: its own and the next that is made. The books assume cold and solid copper, the library
 * strands at their working temperature, so it may be one size further up and never below.
 */
export function sameOrOneLarger(bookAwg: number | string): (number | string)[] {
  const printed = table5.rows.map(({ awg }): number | string => awg);
  const made = madeSizes({ parallel: 1, system: "awg", awg: 18 }).map((conductor): number | string =>
    conductor.system === "awg" ? conductor.awg : Number.NaN,
  );
  const place = printed.indexOf(bookAwg);
  if (place < 0) throw new Error(`${bookAwg} AWG is not in the tables.`);
  const fromBook = printed.slice(place).filter((awg) => made.includes(awg));
  // If the book's own size is not made (3 AWG), the next one up is the one size larger.
  return fromBook.slice(0, made.includes(bookAwg) ? 2 : 1);
}
