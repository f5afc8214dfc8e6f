import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";
import { formatAbout } from "../wording/format-number.ts";

const half = 0.5;
const moreThanHalf = ownRequirement(
  "One load that takes more than half of all use is worth a look before the bank is made larger.",
);

export const energyGreatestUse = defineRule<Values>({
  id: "energy/greatest-use",
  title: "One load takes more than half",
  severity: "info",
  why: "A larger bank or array for the sake of one load costs more than to change that load; often it is an inverter's idle power.",
  sources: [moreThanHalf],
  fixable: false,
  acceptable: true,
  // Needs the use of each consumer of a bank over each period. A load is named once, for the period where its share is greatest.
  check({ energy }): Found<Values>[] {
    const byRecord = new Map<string, Found<Values>>();
    for (const { period, banks } of energy)
      for (const { consumers } of banks) {
        const all = consumers.reduce((sum, { dailyWh }) => sum + dailyWh, 0);
        const [greatest] = consumers;
        if (!greatest || consumers.length < fewest || greatest.dailyWh <= half * all) continue;
        const { record, name, dailyWh } = greatest;
        const values = { name, period: period.name, dailyWh, percent: (dailyWh / all) * 100 };
        const key = `${record} ${name}`;
        const before = byRecord.get(key);
        if (before && before.values.percent >= values.percent) continue;
        byRecord.set(key, { subject: name, at: { record, path: [] }, values });
      }
    return [...byRecord.values()];
  },
  message: ({ name, period, dailyWh, percent }) =>
    `${name} takes about ${formatAbout(dailyWh)} Wh a day in ${period}, ${formatAbout(percent)} % of all use: fewer hours, or another device, do more than a larger bank.`,
});

interface Values {
  readonly name: string;
  readonly period: string;
  readonly dailyWh: number;
  readonly percent: number;
}

/** Of two loads one always takes half: our choice. */
const fewest = 3;
