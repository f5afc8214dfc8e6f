import type { PeriodValues } from "../../model/period-properties.ts";
import { useInWords } from "../../model/use-in-words.ts";
import type { UseValues } from "../../model/use-values.ts";
import { type Property, said, stated } from "./property.ts";

/** The values of a period in comparable form. Loads that are not used in it are named by their records, which every edit moves. */
export function periodProperties(values: PeriodValues): Property[] {
  const { months, irradiation, notUsed } = values;
  return [
    ...said(values.place, "place", "place"),
    ...stated("latitudeDeg", "latitude", values.latitudeDeg, "°"),
    ...stated("longitudeDeg", "longitude", values.longitudeDeg, "°"),
    ...said(months?.join(", "), "months", "months"),
    ...said(values.fromDay, "fromDay", "first day"),
    ...said(values.untilDay, "untilDay", "last day"),
    ...said(values.driving && occasionInWords(values.driving), "driving", "driving"),
    ...said(values.shore && occasionInWords(values.shore), "shore", "shore power"),
    ...stated("notUsed", "loads not used", notUsed?.length, ""),
    ...said(values.bankHeated, "bankHeated", "bank kept warm"),
    ...stated("startPercent", "charge at its beginning", values.startPercent, "%"),
    ...stated("clockAheadH", "clock ahead of the sun", values.clockAheadH, "h"),
    ...said(irradiation?.join(", "), "irradiation", "irradiation from January to December"),
  ];
}

function occasionInWords({
  everyDays,
  ...hours
}: UseValues & { readonly everyDays?: number | undefined }): string {
  return `${useInWords(hours)}${everyDays === undefined ? "" : `, every ${everyDays} days`}`;
}
