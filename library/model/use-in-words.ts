import type { UseValues } from "./use-values.ts";

/** A use as a builder would say it: "4 h a day, while it is dark, on Sat and Sun". */
export function useInWords(use: UseValues): string {
  const { hoursPerDay, fromHour, untilHour, when, dutyPercent, dutyPercentByMonth, standbyW } = use;
  const clauses = [
    hoursPerDay === undefined
      ? fromHour === undefined && !when
        ? "24 h a day"
        : ""
      : `${hoursPerDay} h a day`,
    fromHour === undefined ? "" : `from ${fromHour} to ${untilHour}`,
    when === undefined ? "" : when === "dark" ? "while it is dark" : "in daylight",
    dutyPercent === undefined ? "" : `${dutyPercent} % of the time`,
    dutyPercentByMonth === undefined ? "" : `${dutyPercentByMonth.join(", ")} % of the time from Jan to Dec`,
    onSome(use.daysOfWeek),
    inSome(use.months),
    standbyW ? `${standbyW} W standby` : "",
  ];
  return clauses.filter(Boolean).join(", ");
}

function onSome(days: readonly string[] | undefined): string {
  return days === undefined ? "" : `on ${days.join(", ")}`;
}

function inSome(months: readonly string[] | undefined): string {
  return months === undefined ? "" : `in ${months.join(", ")}`;
}
