import { formatExact } from "../../rules/wording/format-number.ts";
import { markPx, worstOf } from "./finding-mark.ts";
import type { Device, LineEnd, SchematicLine } from "./schematic.ts";
import { textPx } from "./svg-writer.ts";
import { deviceHalfPx } from "./symbols/protection.ts";
import { cutToWidth, textWidth } from "./text-measure.ts";

/**
 * A stub is the piece of a line next to a part, equally long for every line on that side of it. From the part outwards it holds
 * the sign of polarity, the protective device and, where the line is read from, its label. Labels are thus under one another, and
 * the layout keeps other lines and parts away from them as it does from the part.
 */
export interface StubColumns {
  /** Width of each column, px; 0 if it is empty. */
  readonly sign: number;
  readonly device: number;
  readonly label: number;
}

/** One line as it leaves a part. */
export interface Row {
  readonly line: number;
  readonly which: "from" | "to";
  readonly terminal: string;
  readonly side: "west" | "east";
  readonly end: LineEnd;
  /** Its label, if it is at this end. */
  readonly label: LineLabel | undefined;
  /** Room from line to line, px. */
  readonly height: number;
  /** The greater of that and the room at its other end, px. */
  readonly pitch: number;
}

export interface LineLabel {
  /** Above the line. */
  readonly above: string;
  /** Below it, if one line of text is not enough; else "". */
  readonly below: string;
}

export const ratingPx = 10;
/** Maximum width of a label; a longer one is cut. */
const mostLabelPx = 190;
/** With a colour such as "green with yellow stripe" in it. */
const mostColourLabelPx = 290;

/** `own`: the part at the other end has the line's name, which the label then omits. */
export function labelOf({ number, name, data, colour }: SchematicLine, own: boolean): LineLabel {
  const mostPx = colour === "" ? mostLabelPx : mostColourLabelPx;
  const called = [number, own ? "" : name].filter(Boolean).join("  ");
  if (own) return { above: cutToWidth([number, data].filter(Boolean).join("  "), mostPx, textPx), below: "" };
  return {
    above: cutToWidth(called, mostPx, textPx),
    below: cutToWidth(data, mostPx, textPx),
  };
}

export function ratingText({ protection }: Device): string {
  return `${formatExact(protection.ratingA)} A`;
}

/** Column widths of the stubs on one side of a part. */
export function columnsOf(rows: readonly Row[], lines: readonly SchematicLine[]): StubColumns {
  if (rows.length === 0) return { sign: 0, device: 0, label: 0 };
  const device = Math.max(0, ...rows.map(({ end }) => (end.device ? deviceWidth(end.device) : 0)));
  const label = Math.max(
    0,
    ...rows.map(({ label: words, line }) => {
      if (!words) return 0;
      const mark = worstOf(lines[line]!.found) ? markPx + 4 : 0;
      return mark + Math.max(textWidth(words.above, textPx), textWidth(words.below, textPx));
    }),
  );
  const sign = rows.some(({ line }) => lines[line]!.polarity !== "unknown") ? 16 : 8;
  return { sign, device: device && device + 8, label: label && label + 10 };
}

export function stubWidth({ sign, device, label }: StubColumns): number {
  return sign + device + label;
}

function deviceWidth(device: Device): number {
  const mark = worstOf(device.found) ? markPx + 3 : 0;
  return Math.max(2 * deviceHalfPx, textWidth(ratingText(device), ratingPx) + mark);
}
