import { type Unit, withUnit } from "../../library/rules/wording/format-number.ts";

/**
 * One line for one limit: the value, the limit, the margin, the source. `margin` is empty if there is none, `source` if there was
 * no judgement.
 */
export function limitRow(what: string, is: string, limit: string, margin: string, source: string): string {
  const parts = [`- ${what}: **${is}**`, limit, margin].filter((part) => part !== "").join("; ");
  return source === "" ? parts : `${parts} · _${source}_`;
}

/** "margin 85 A"; an excess over a limit is set off from the rest. */
export function marginInWords(margin: number, unit: Unit): string {
  return margin < 0 ? `**${withUnit(-margin, unit)} beyond it**` : `margin ${withUnit(margin, unit)}`;
}
