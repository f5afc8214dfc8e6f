import { type BankEnergy, isAtBest, type PeriodEnergy } from "../../analysis/energy/energy-result.ts";
import { type LeastChanges, leastChangesOf } from "../../analysis/energy/least-changes.ts";
import type { Lever } from "../../analysis/energy/levers.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import type { Table } from "../table.ts";
import { forPeople, forPrograms, numbers, tableOf, words } from "../table-of.ts";

/**
 * One change at a time, and the least of it with which the bank keeps up. None for a bank that is not judged. It costs up to 50 balances:
 * only documents that somebody asks for have it.
 */
export function leastChangesTable({ period }: PeriodEnergy, bank: BankEnergy, of: string): Table[] {
  if (bank.months.every(({ verdict }) => verdict === "not judged")) return [];
  const answer = leastChangesOf(bank);
  return [
    tableOf<Lever>(
      {
        id: `least-changes${of}`,
        title: `${period.name}: the least that keeps up`,
        notes: notesOf(answer, bank),
      },
      [
        words("change", "One change", ({ change }) => leverWords[change].name),
        forPeople(numbers("nowText", "Now", (lever) => sizeInWords(lever, lever.now))),
        forPeople(numbers("leastText", "Least", leastInWords)),
        forPrograms(numbers("now", "Now", ({ now }) => ({ value: now, text: formatRounded(now) }))),
        forPrograms(
          numbers("least", "Least", ({ least }) =>
            least === undefined ? null : { value: least, text: formatRounded(least) },
          ),
        ),
        forPrograms(words("unit", "Unit", ({ change }) => leverWords[change].unit)),
        forPeople(words("stepText", "Rounded up to", stepInWords)),
        forPrograms(numbers("step", "Step", ({ step }) => ({ value: step, text: formatRounded(step) }))),
        forPrograms(words("stepIs", "Step is", ({ stepIs }) => stepIs)),
      ],
      answer.levers,
    ),
  ];
}

/** A change in words: its name, its size now, the least that keeps up, and the step. */
export interface LeastChangeInWords {
  readonly change: string;
  readonly now: string;
  readonly least: string;
  readonly step: string;
}

/** The answer for the view: its rows, and sentences about all of them. */
export function leastChangesInWords(
  answer: LeastChanges,
  bank: BankEnergy,
): { readonly notes: readonly string[]; readonly rows: readonly LeastChangeInWords[] } {
  return {
    notes: notesOf(answer, bank),
    rows: answer.levers.map((lever) => ({
      change: leverWords[lever.change].name,
      now: sizeInWords(lever, lever.now),
      least: leastInWords(lever),
      step: stepInWords(lever),
    })),
  };
}

/** The trade's word for each, its unit, and the plan's own part of which there may be more. */
export const leverWords = {
  bank: { name: "Bank", unit: "Ah", part: "batteries" },
  array: { name: "Solar array", unit: "W", part: "modules" },
  "array and controller": { name: "Solar array with a controller to match", unit: "W", part: "modules" },
  controller: { name: "Output current of the solar controller", unit: "A", part: "" },
  driving: { name: "Driving", unit: "h a day", part: "" },
  shore: { name: "Shore power", unit: "h a day", part: "" },
} as const satisfies Record<Lever["change"], object>;

function sizeInWords({ change }: Lever, size: number): string {
  return `${formatRounded(size)} ${leverWords[change].unit}`;
}

function leastInWords(lever: Lever): string {
  return lever.least === undefined
    ? `not even ${sizeInWords(lever, lever.most)}`
    : sizeInWords(lever, lever.least);
}

function stepInWords(lever: Lever): string {
  const step = sizeInWords(lever, lever.step);
  return lever.stepIs === "own" ? `the plan's own ${leverWords[lever.change].part}, ${step}` : step;
}

function notesOf({ isEnough, levers }: LeastChanges, bank: BankEnergy): string[] {
  const mends = levers.some(({ least }) => least !== undefined);
  const has = (change: Lever["change"]) => levers.some((lever) => lever.change === change);
  return [
    `${isAtBest(bank) ? "At best: " : ""}${
      isEnough
        ? "everything else stays as it is, with the mean sun."
        : mends
          ? "each of them alone, with everything else as it is and the mean sun."
          : "no single change mends it: combine them, use less, or leave out the months that run short."
    }`,
    ...(has("array")
      ? ["A larger array alone stays on the plan's own controllers and conductors, which limit it."]
      : []),
    ...(has("driving") && has("shore") ? [] : [missingChargers(has("driving"), has("shore"))]),
  ];
}

function missingChargers(driving: boolean, shore: boolean): string {
  const kinds = [driving ? "" : "driving", shore ? "" : "shore power"].filter(Boolean).join(" or ");
  return `The plan has no charger that charges this bank with ${kinds}.`;
}
