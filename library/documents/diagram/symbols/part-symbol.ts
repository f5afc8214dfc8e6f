import type { Box } from "../drawing.ts";
import type { SvgWriter } from "../svg-writer.ts";

/** The symbol of one kind of part: plain lines in the manner of IEC 60617 and IEEE 315; no colour has a meaning. */
export interface PartSymbol {
  /** In the legend. */
  readonly legend: string;
  /** Minimum room for it. */
  readonly widthPx: number;
  readonly heightPx: number;
  /**
   * `gathered`: all lines of a terminal on one side meet outside it and enter as one lead; `each`: every line enters separately.
   */
  readonly leads: "gathered" | "each";
  /**
   * How lines land on it: on a bar in any order; on a bar of each polarity; in series, one on each side; as the end of their line, with the words behind it.
   * Absent: at its terminals in their bands.
   */
  readonly landing?: "bar" | "two bars" | "series" | "end of line";
  /** It spreads current: the legend shows it fed from one side. */
  readonly spreads?: true;
  draw(pen: SvgWriter, box: Box, leads: readonly Lead[]): string;
}

/** Where a terminal is reached: on the west or east edge of the symbol's box. */
export interface Lead {
  readonly terminal: string;
  readonly side: "west" | "east";
  readonly y: number;
}

export function edgeX({ x, width }: Box, side: Lead["side"]): number {
  return side === "west" ? x : x + width;
}

export function middleOf({ x, y, width, height }: Box): { readonly x: number; readonly y: number } {
  return { x: x + width / 2, y: y + height / 2 };
}

/** The middle of all leads of the terminal. */
export function leadY(leads: readonly Lead[], terminal: string): number | undefined {
  const own = leads.filter((lead) => lead.terminal === terminal);
  if (own.length === 0) return undefined;
  return own.reduce((sum, { y }) => sum + y, 0) / own.length;
}
