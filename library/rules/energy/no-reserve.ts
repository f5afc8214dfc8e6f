import { reserveOf } from "../../analysis/energy/bank-of-plan.ts";
import { usualReserve } from "../../standards/energy-practice.ts";
import { defineRule, type Found } from "../rule.ts";

export const energyNoReserve = defineRule<Values>({
  id: "energy/no-reserve",
  title: "Reserve of a bank not stated",
  severity: "info",
  why: "How long a bank lasts depends on the charge that is kept in it, and only the builder knows that.",
  sources: [usualReserve.source],
  fixable: true,
  acceptable: true,
  // Needs the batteries of each bank that is judged. A bank is named once, at its first battery without a reserve.
  check({ energy }): Found<Values>[] {
    const found = new Map<number, Found<Values>>();
    for (const { period, banks } of energy)
      for (const { batteries, months } of banks) {
        const [battery, ...others] = batteries.filter(({ reservePercent }) => reservePercent === undefined);
        if (!battery || found.has(battery.record) || months.every(({ verdict }) => verdict === "not judged"))
          continue;
        const takenPercent = reserveOf(battery);
        found.set(battery.record, {
          subject: battery.name,
          at: { record: battery.record, path: [] },
          values: { takenPercent, chemistry: battery.chemistry, others: others.length },
          related: [{ at: { record: period.record, path: [] }, text: `In the period ${period.name}` }],
          fixes: [
            {
              title: `State a reserve of ${takenPercent} %`,
              kind: "suggestion",
              changes: [battery, ...others].map((one) => ({
                ...{ do: "set", record: one.record, path: ["reservePercent"], value: reserveOf(one) },
              })),
            },
          ],
        });
      }
    return [...found.values()];
  },
  message: ({ takenPercent, chemistry, others }) =>
    `${others === 0 ? "Its reserve is not stated" : `The reserve of ${others + 1} batteries is not stated`}: ${takenPercent} % is taken, usual for ${chemistry} (common practice, no source). State reservePercent, the charge that you keep in it.`,
});

interface Values {
  readonly takenPercent: number;
  readonly chemistry: string;
  /** Further batteries of the bank without a reserve. */
  readonly others: number;
}
