import { readFileSync } from "node:fs";
import { expect } from "vitest";

/**
 * Reads a file of reference data beside this one. The data is written separately from the library's tables and uses none of its
 * code: comparing the two finds a slip of the pen in either.
 */
export function published<Data>(file: `${string}.json`): Data {
  return JSON.parse(readFileSync(new URL(file, import.meta.url), "utf8")) as Data;
}

export type Confirmed = "read" | "computed" | "memory";

/** The documents print 0, 00, 000 and 0000 for the sizes sold as 1/0 to 4/0; a plan writes the sizes below as numbers. */
export function asInAPlan(printedAwg: string): number | string {
  return /^0+$/.test(printedAwg) ? `${printedAwg.length}/0` : Number(printedAwg);
}

/** Compares two tables as lists of named cells: a missing, an added and a changed cell are all reported by name. */
export function expectSameCells(library: Cells, printed: Cells, count: number): void {
  expect(printed.size, "cells in the reference data").toBe(count);
  expect(Object.fromEntries(library)).toEqual(Object.fromEntries(printed));
}

/** "4 AWG, 75 °C" → 125. */
export type Cells = ReadonlyMap<string, number | null>;

/** The unit of length in the books. */
export const metresPerFoot = 0.3048;

/** Ω per 1000 ft, as the books print it, in Ω/m. */
export function ohmPerM(ohmPerKft: number): number {
  return ohmPerKft / (1000 * metresPerFoot);
}
