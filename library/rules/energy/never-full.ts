import type { BankEnergy } from "../../analysis/energy/energy-result.ts";
import { isNeverFull } from "../../analysis/energy/never-full.ts";
import { monthNames } from "../../model/use-properties.ts";
import type { Citation } from "../../standards/citation.ts";
import { defineRule, type Found } from "../rule.ts";
import { banksInWords } from "../wording/banks-in-words.ts";
import { listInWords } from "../wording/part-in-words.ts";

const fullCharge: Citation = {
  document: "Charging notes for lead-acid batteries",
  section: "",
  authority: "common practice",
  confirmed: "read",
  note: "A full charge takes 12 to 16 h; a bank that never stays long enough at its absorption voltage is in deficit charge, and sulphates.",
};

export const energyNeverFull = defineRule<Values>({
  id: "energy/never-full",
  title: "Lead-acid bank never fully charged",
  severity: "warning",
  why: "Lead-acid plates that are never fully charged sulphate, and the bank loses its capacity within months.",
  sources: [fullCharge],
  fixable: false,
  acceptable: true,
  // Needs the highest state of charge of each month, of banks that are not LiFePO4.
  check: ({ energy }) =>
    energy.flatMap(({ period, banks }) =>
      banks.flatMap((bank): Found<Values>[] => {
        const months = bank.months.filter(isNeverFull);
        const [battery] = bank.batteries;
        if (!battery || months.length === 0 || !hasLead(bank)) return [];
        return [
          {
            subject: battery.name,
            at: { record: battery.record, path: [] },
            values: {
              bank: banksInWords(bank),
              period: period.name,
              months: months.map(({ month }) => monthNames[month]!),
              highestPercent: Math.max(...months.map(({ highest }) => highest)) * 100,
            },
            related: [{ at: { record: period.record, path: [] }, text: `In the period ${period.name}` }],
          },
        ];
      }),
    ),
  message: ({ bank, period, months, highestPercent }) =>
    `In ${period}, ${bank} is never full in ${listInWords(months, 12)}: about ${Math.round(highestPercent)} % is the most. Lead-acid needs a full charge every few weeks: shore power or more sun (common practice, no source).`,
});

interface Values {
  readonly bank: string;
  readonly period: string;
  readonly months: readonly string[];
  /** The best of those months. */
  readonly highestPercent: number;
}

function hasLead({ batteries }: BankEnergy): boolean {
  return batteries.some(({ chemistry }) => chemistry !== "LiFePO4");
}
