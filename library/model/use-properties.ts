import * as z from "zod";
import type { ByDirection } from "../plan/solar-array.ts";
import type { ByMonth, Month, Weekday } from "../plan/use.ts";
import { grouped } from "./grouped.ts";
import { power } from "./part-properties.ts";
import { amount, count, listOf, ofBalance, oneOf, shortText } from "./property.ts";
import type { Property, PropertyTable } from "./property-table.ts";
import { propertyTable, type ValuesOf } from "./property-table.ts";

/*
 * Allowed values of the properties that serve only the balance of energy. No current depends on them: a wrong one is reported, left out
 * of the balance, and prevents no other check.
 */

export const monthNames = [
  ...(["Jan", "Feb", "Mar", "Apr", "May", "Jun"] as const),
  ...(["Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const),
] as const satisfies readonly Month[];

export const weekdayNames = [
  "Mon",
  "Tue",
  "Wed",
  "Thu",
  "Fri",
  "Sat",
  "Sun",
] as const satisfies readonly Weekday[];

/** A list of some of these names, each once. */
function someOf<const Name extends string>(
  names: readonly Name[],
  unlike: string,
): Property<readonly Name[]> {
  const list = z
    .array(z.literal([...names], { error: unlike }), { error: "is not a list" })
    .min(1, { error: "is empty" })
    .refine((values) => new Set(values).size === values.length, "names one twice");
  return ofBalance({
    schema: list,
    allowed: `a list of ${names.map((name) => JSON.stringify(name)).join(", ")}`,
    affectsResults: false,
  });
}

export const months = someOf(monthNames, "is not one of the months");
const daysOfWeek = someOf(weekdayNames, "is not one of the days");

/** Twelve figures, from January to December. */
export function byMonth(what: string, unit: string, upTo: number): Property<ByMonth> {
  return figures<ByMonth>("twelve", 12, { what, unit, upTo });
}

/** Eight figures, from north clockwise. */
export function byDirection(what: string, unit: string, upTo: number): Property<ByDirection> {
  return figures<ByDirection>("eight", 8, { what, unit, upTo });
}

function figures<List extends readonly number[]>(
  number: string,
  length: number,
  { what, unit, upTo }: { readonly what: string; readonly unit: string; readonly upTo: number },
): Property<List> {
  const allowed = `${number} figures, ${what} from 0 to ${grouped(upTo)} ${unit}`.trim();
  const figure = z
    .number({ error: "is not a number" })
    .gte(0, { error: "is negative" })
    .lte(upTo, { error: "is too large" });
  const schema = z
    .array(figure, { error: "is not a list" })
    .length(length, { error: `has not ${number} figures` });
  return ofBalance({ schema: schema as unknown as z.ZodType<List>, allowed, affectsResults: false });
}

const hour = ofBalance(amount("an hour of the day", "h", { from: 0, upTo: 24 }));

const hoursOfUse = {
  hoursPerDay: ofBalance(amount("hours a day", "h", { from: 0, upTo: 24 })),
  fromHour: hour,
  untilHour: hour,
  daysOfWeek,
};

/** Hours within which it may run: from 22 until 6 are eight. The same hour twice is the whole day. */
export function hoursBetween(fromHour: number, untilHour: number): number {
  return untilHour > fromHour ? untilHour - fromHour : untilHour - fromHour + 24;
}

/** More hours a day than there are between the two that the plan states. */
const withinItsHours: NonNullable<PropertyTable["contradictions"]> = ({
  hoursPerDay,
  fromHour,
  untilHour,
}) => {
  if (typeof hoursPerDay !== "number" || typeof fromHour !== "number" || typeof untilHour !== "number")
    return [];
  const most = hoursBetween(fromHour, untilHour);
  if (hoursPerDay <= most) return [];
  return [
    {
      path: ["hoursPerDay"],
      given: String(hoursPerDay),
      wrong: `is more than the hours from ${fromHour} to ${untilHour}`,
      allowed: `hours a day from 0 to ${most} h`,
      serves: "balance",
    },
  ];
};

const useTable = propertyTable(
  {
    ...hoursOfUse,
    when: ofBalance(oneOf(["dark", "daylight"], "is neither dark nor daylight")),
    dutyPercent: ofBalance(amount("a share of its hours", "%", { from: 0, upTo: 100 })),
    dutyPercentByMonth: byMonth("each a share of its hours", "%", 100),
    months,
    standbyW: ofBalance(amount("a power", "W", { from: 0, upTo: 1_000 })),
  },
  {
    unknown: "is not a property of use",
    choices: [
      { ways: [["fromHour", "untilHour"], ["when"]] },
      { ways: [["dutyPercent"], ["dutyPercentByMonth"]] },
    ],
    contradictions: withinItsHours,
  },
);

const hoursTable = propertyTable(hoursOfUse, {
  unknown: "is not a property of use",
  choices: [{ ways: [["fromHour", "untilHour"]] }],
  contradictions: withinItsHours,
});

const occasionTable = propertyTable(
  { ...hoursOfUse, everyDays: ofBalance(count({ from: 1, upTo: 365 })) },
  {
    unknown: "is not a property of hours on some days",
    choices: [{ ways: [["fromHour", "untilHour"]] }],
    contradictions: withinItsHours,
  },
);

function objectOf<Shape extends Parameters<typeof propertyTable>[0]>(
  table: PropertyTable<Shape>,
  allowed: string,
  whenRefused?: ValuesOf<Shape>,
): Property<ValuesOf<Shape>> {
  const parts = table as PropertyTable;
  const property = { schema: table.schema, allowed, affectsResults: false, parts };
  return ofBalance({ ...property, whenRefused: { value: whenRefused } });
}

/** How long a device runs. */
export const use = objectOf(useTable, "an object with hours, such as { hoursPerDay: 3 }");
/** Replaces refused hours, because hours that are not stated would mean always. It is recognised as this object. */
export const refusedHours: ValuesOf<typeof hoursOfUse> = {};
/** The hours in which an inverter is switched on. */
export const hoursOn = objectOf(hoursTable, "an object with hours, such as { hoursPerDay: 3 }", refusedHours);
/** Hours of driving or shore power. */
export const occasion = objectOf(
  occasionTable,
  "an object with hours, such as { hoursPerDay: 2, everyDays: 3 }",
);

/** Devices behind an inverter. */
export const acDevices = listOf(
  propertyTable(
    { name: shortText("a name", 40), powerW: power, use },
    { unknown: "is not a property of a device", needed: ["name", "powerW", "use"], choices: [] },
  ),
  {
    allowed: 'a list of up to 100 devices, such as [{ name: "Laptop", powerW: 60, use: { hoursPerDay: 3 } }]',
    most: 100,
  },
);
