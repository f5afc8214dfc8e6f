import * as z from "zod";
import { amount, ofBalance, text, yesOrNo } from "./property.ts";
import type { Property } from "./property-table.ts";
import { propertyTable, type ValuesOf } from "./property-table.ts";
import { references } from "./terminal-property.ts";
import { byMonth, monthNames, months, occasion } from "./use-properties.ts";

/** The number of days that each month can have, also in leap years. */
const longestMonths = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** A day of the year, "15 Jun", as its month from 0 and its day from 1; 29 February reads as the 28th. */
export function dayOf(written: string): { readonly month: number; readonly day: number } | undefined {
  const [, number, name] = /^(\d{1,2}) ([A-Z][a-z]{2})$/.exec(written) ?? [];
  const month = (monthNames as readonly (string | undefined)[]).indexOf(name);
  const day = Number(number);
  if (month === -1 || day < 1 || day > longestMonths[month]!) return undefined;
  return { month, day: month === 1 ? Math.min(day, 28) : day };
}

const day: Property<string> = ofBalance({
  schema: z
    .string({ error: "is not text" })
    .refine((written) => dayOf(written) !== undefined, { error: "is not a day of the year" }),
  allowed: 'a day and a month, such as "15 Jun"',
  affectsResults: false,
});

const properties = {
  name: text("a name, as text"),
  place: ofBalance(text('a place and its country, such as "Tarifa, ES"')),
  latitudeDeg: ofBalance(amount("a latitude", "°", { from: -90, upTo: 90 })),
  longitudeDeg: ofBalance(amount("a longitude", "°", { from: -180, upTo: 180 })),
  months,
  fromDay: day,
  untilDay: day,
  driving: occasion,
  shore: occasion,
  notUsed: ofBalance(references("circuits, loads and inverters of this plan")),
  bankHeated: ofBalance(yesOrNo()),
  startPercent: ofBalance(amount("a share of a full charge", "%", { from: 0, upTo: 100 })),
  clockAheadH: ofBalance(amount("hours", "h", { from: -4, upTo: 4 })),
  irradiation: byMonth("each", "kWh/m² a day", 12),
};

export type PeriodValues = ValuesOf<typeof properties>;

/** Allowed values of each property of `period`. */
export const periodProperties = propertyTable(properties, {
  word: "period",
  unknown: "is not a property of period",
  needed: ["name"],
  choices: [
    { ways: [["place"], ["latitudeDeg", "longitudeDeg"]], needed: "a place" },
    { ways: [["months"], ["fromDay", "untilDay"]] },
  ],
});
