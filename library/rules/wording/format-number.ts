import { grouped } from "../../model/grouped.ts";

/** The one place that turns numbers into text. Everything before it is unrounded; everything after it is for people. */

/** Three significant figures, no exponent, thousands separated: `2.6789` → "2.68", `12345` → "12,300", `40` → "40". */
export function formatRounded(value: number): string {
  return written(value, threeFigures);
}

/** {@link formatRounded} and its unit, with the space that SI requires before every unit, % included: "2.68 V", "3 %". */
export function withUnit(value: number, unit: Unit): string {
  return `${formatRounded(value)} ${unit}`;
}

/** "1 finding", "1,500 findings", "0 findings". `noun` is a word whose plural ends in s. */
export function counted(count: number, noun: string): string {
  return `${count.toLocaleString("en-US")} ${noun}${count === 1 ? "" : "s"}`;
}

/**
 * A number as the builder wrote it, thousands separated: `4567` → "4,567". A computed one with endless decimals is cut to three
 * decimals, and below 1 to three figures.
 */
export function formatExact(value: number): string {
  return Math.abs(value) >= 1 ? grouped(value) : formatRounded(value);
}

/**
 * Two numbers as text that differs if the numbers differ: a drop of 10.02 % is never reported as "10 %", above "10 %". Three
 * significant figures if those are enough, else as many as necessary. Both texts get the same accuracy.
 */
export function formatDistinct(first: number, second: number): readonly [string, string] {
  for (let figures = threeFigures; figures < mostFigures; figures++) {
    const texts = [written(first, figures), written(second, figures)] as const;
    if (texts[0] !== texts[1] || !differ(first, second)) return texts;
  }
  return [written(first, mostFigures), written(second, mostFigures)];
}

/** {@link formatDistinct} with the same unit after both. */
export function formatDistinctWithUnit(first: number, second: number, unit: Unit): readonly [string, string] {
  const [one, other] = formatDistinct(first, second);
  return [`${one} ${unit}`, `${other} ${unit}`];
}

/**
 * Two times below one second are in milliseconds, others in seconds: "2.47 ms" and "5 s"; distinct as in {@link formatDistinct}.
 */
export function timesApart(firstS: number, secondS: number): readonly [string, string] {
  if (Math.max(firstS, secondS) >= 1) return formatDistinctWithUnit(firstS, secondS, "s");
  return formatDistinctWithUnit(1000 * firstS, 1000 * secondS, "ms");
}

/**
 * True if a value is above its limit by more than rounding errors. A load of exactly the permitted current is permitted, even if
 * a factor such as 0.58 has no exact binary form.
 */
export function exceeds(value: number, limit: number): boolean {
  return value > limit && differ(value, limit);
}

export type Unit =
  | "A"
  | "V"
  | "W"
  | "%"
  | "°C"
  | "m"
  | "mm"
  | "ft"
  | "in"
  | "mm²"
  | "Ω"
  | "Ω/m"
  | "mΩ"
  | "mΩ/m"
  | "s"
  | "ms";

const threeFigures = 3;
/** A double holds 15 decimal figures for certain; beyond them, differences are noise. */
const mostFigures = 15;
/** A thousand times the rounding of one operation on doubles, and far below anything a builder can measure. */
const blur = 1e-12;

function differ(first: number, second: number): boolean {
  return Math.abs(first - second) > blur * Math.max(Math.abs(first), Math.abs(second));
}

const formats = new Map<number, Intl.NumberFormat>();

function written(value: number, figures: number): string {
  let format = formats.get(figures);
  if (!format) {
    format = new Intl.NumberFormat("en-US", { maximumSignificantDigits: figures });
    formats.set(figures, format);
  }
  // Adding 0 turns −0 into 0.
  return format.format(value + 0);
}

/** Two significant figures, for figures that are known no better, such as those that rest on the sun of a month. */
export function formatAbout(value: number): string {
  return formatRounded(Number(value.toPrecision(2)));
}
