import { descriptorOfWord, partWords } from "../../model/parts/index.ts";
import type { Protection } from "../../model/run.ts";
import { familyInWords } from "../../rules/wording/family-in-words.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import type { Cell, Quantity } from "../table.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import type { WireEnd } from "./wires.ts";

/* The wording that schedules and lists share: one conductor reads the same in all of them. */

/** Counted, not measured: never rounded. */
export function counted(value: number): Quantity {
  return { value, text: whole.format(value) };
}

/** A length to cut, m: shown to the centimetre and never shorter than it is. */
export function lengthToCut(lengthM: number): Quantity {
  return { value: lengthM, text: centimetres.format(Math.ceil(lengthM * 100 - 1e-6) / 100) };
}

/** "12"; "45*" for one that is not kept yet, and so may still change. */
export function numberCell({ number, kept }: Pick<NumberedWire, "number" | "kept">): Cell {
  return kept ? counted(number) : numberText({ number, kept });
}

export function numberText({ number, kept }: Pick<NumberedWire, "number" | "kept">): string {
  return kept ? `${number}` : `${number}*`;
}

/** The note that belongs under each table with numbers; none if all are kept. */
export function notKeptNotes(wires: readonly NumberedWire[]): string[] {
  if (wires.every(({ kept }) => kept)) return [];
  return [notKeptYet];
}

export const notKeptYet =
  "* This wire number is not kept yet and may still change: loomwright number keeps it.";

/** "house bank · positive"; "supply, not stated" for a lone circuit. */
export function endInWords({ at, part, terminal }: WireEnd): string {
  if (at === "notStated") return "supply, not stated";
  return terminalOfPartInWords(part, terminal);
}

/** "house bank · positive" */
export function terminalOfPartInWords(part: string, terminal: string): string {
  return `${part} · ${terminalInWords(terminal)}`;
}

/** "250 A UL 248-15 Class T", "50 A breaker", "10 A ISO 8820-3 Type C, as stated at panel", "10 A fuse, family not stated". */
export function deviceInList(protection: Protection): string {
  const rating = `${formatRounded(protection.ratingA)} A`;
  const family = familyInWords(protection);
  if (family === undefined) return `${rating} fuse, family not stated`;
  return `${rating} ${family.replace(/^circuit breaker/, "breaker")}`;
}

/** Our own names are split, "batterySide" → "battery side"; a builder's names stay as they are. */
function terminalInWords(terminal: string): string {
  return ownTerminals.has(terminal)
    ? terminal.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    : terminal;
}

const ownTerminals: ReadonlySet<string> = new Set(
  partWords.flatMap((word) => Object.keys(descriptorOfWord(word).terminals)),
);
const whole = new Intl.NumberFormat("en-US", { maximumFractionDigits: 0 });
const centimetres = new Intl.NumberFormat("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
