import { type BankEnergy, isAtBest, type PeriodEnergy } from "../../analysis/energy/energy-result.ts";
import { leastChangesOf, usualTimes } from "../../analysis/energy/least-changes.ts";
import type { Lever } from "../../analysis/energy/levers.ts";
import type { Change, ProposedFix } from "../finding.ts";
import type { AskedAnswer } from "../rule.ts";
import { formatRounded } from "../wording/format-number.ts";

/** The single changes that would each mend a bank that runs short, and in words the least of each. It costs up to 50 balances. */
export function leastChangeFixes({ period }: PeriodEnergy, bank: BankEnergy): AskedAnswer {
  const { levers } = leastChangesOf(bank);
  const fixes = levers.flatMap((lever): readonly ProposedFix[] => {
    const made =
      lever.least === undefined || !isUsual(lever, lever.least)
        ? undefined
        : changesOf(lever, lever.least, bank, period);
    return made ? [{ ...made, kind: "suggestion" }] : [];
  });
  const more = isAtBest(bank) && levers.some(({ least }) => least !== undefined);
  return {
    fixes,
    advice: `${adviceOf(levers)}${more ? ' It may take more: every verdict is "at best".' : ""}`,
  };
}

/**
 * Whether a builder would make such a change: a bank or array of not many times its size, or hours that one can drive day after
 * day. Common practice, no source.
 */
function isUsual({ change, now }: Lever, least: number): boolean {
  if (change === "bank" || change.startsWith("array")) return least <= usualTimes * now;
  return change !== "driving" || least <= mostDrivingH;
}

const mostDrivingH = 4;

type Made = Pick<ProposedFix, "title" | "changes"> | undefined;

function changesOf(lever: Lever, least: number, bank: BankEnergy, period: PeriodEnergy["period"]): Made {
  switch (lever.change) {
    case "bank":
      return largerBank(bank, lever, least);
    case "array":
      return largerArray(bank, lever, least);
    case "controller":
      return largerController(lever, least);
    case "array and controller":
      // No single change: the plan's own controller would hold it back.
      return undefined;
    case "driving":
    case "shore":
      return moreHours(period, lever.change, least);
    default:
      return lever.change satisfies never;
  }
}

/** Each of its batteries gets the same capacity; the plan may as well be given more batteries. */
function largerBank({ batteries, hours }: BankEnergy, { now, step }: Lever, least: number): Made {
  const [first, ...others] = batteries;
  if (!first || batteries.some(({ capacityAh }) => capacityAh !== first.capacityAh)) return undefined;
  const each = (first.capacityAh * least) / now;
  const strings = hours.flows.bank.strings.length;
  const asMany = `as much as ${formatRounded(least / step)} × ${formatRounded(step)} Ah`;
  return {
    title:
      others.length === 0
        ? `Use ${formatRounded(each)} Ah instead of ${formatRounded(now)} Ah, ${asMany}`
        : `Use ${formatRounded(each)} Ah for each battery: ${formatRounded(least)} Ah instead of ${formatRounded(now)} Ah${strings > 1 ? `, ${asMany}` : ""}`,
    changes: batteries.map(({ record }) => ({ do: "set", record, path: ["capacityAh"], value: each })),
  };
}

function largerArray({ hours }: BankEnergy, { step }: Lever, least: number): Made {
  const [array, ...others] = hours.flows.arrays;
  if (!array || others.length > 0) return undefined;
  const parallel = Math.round(least / step);
  return {
    title: `Use ${parallel} in parallel instead of ${array.stringsInParallel}: ${formatRounded(least)} W`,
    changes: [{ do: "set", record: array.record, path: ["parallel"], value: parallel }],
  };
}

function largerController({ controllerRecord }: Lever, amps: number): Made {
  if (controllerRecord === undefined) return undefined;
  return {
    title: `Use a controller of ${formatRounded(amps)} A, rounded up to 5 A`,
    changes: [{ do: "set", record: controllerRecord, path: ["outputA"], value: amps }],
  };
}

function moreHours(
  { record, values }: PeriodEnergy["period"],
  hours: "driving" | "shore",
  least: number,
): Made {
  const change: Change = values[hours]
    ? { do: "set", record, path: [hours, "hoursPerDay"], value: least }
    : { do: "set", record, path: [hours], value: { hoursPerDay: least } };
  const { everyDays = 1, daysOfWeek } = values[hours] ?? {};
  const days = everyDays > 1 || daysOfWeek ? "on each of its days" : "a day";
  return {
    title:
      hours === "driving"
        ? `Drive ${formatRounded(least)} h ${days}`
        : `Connect shore power for ${formatRounded(least)} h ${days}`,
    changes: [change],
  };
}

function adviceOf(levers: readonly Lever[]): string {
  const mending = levers.filter(({ least }) => least !== undefined);
  const least = mending.map((lever) => inWords(lever, lever.least!));
  if (mending.some((lever) => isUsual(lever, lever.least!)))
    return `The least that mends it, each alone: ${least.join("; ")}.`;
  if (mending.length > 0)
    return `No single change of a usual size mends it; alone, it would take ${least.join(" or ")}: combine changes, use less, or leave out the months that run short.`;
  const tried = levers.map((lever) => inWords(lever, lever.most));
  const notEven = tried.length > 0 ? `, not even ${tried.join(" or ")}` : "";
  return `No single change mends it${notEven}: combine them, use less, or leave out the months that run short.`;
}

function inWords({ change }: Lever, size: number): string {
  const figure = formatRounded(size);
  switch (change) {
    case "bank":
      return `a bank of ${figure} Ah`;
    case "array":
      return `${figure} W of modules`;
    case "array and controller":
      return `${figure} W of modules with a controller to match`;
    case "controller":
      return `a controller of ${figure} A`;
    case "driving":
      return `${figure} h of driving a day`;
    case "shore":
      return `${figure} h of shore power a day`;
    default:
      return change satisfies never;
  }
}
