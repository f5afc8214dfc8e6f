import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";
import { listInWords } from "../wording/part-in-words.ts";

const hoursNeeded = ownRequirement(
  "Each load that a bank feeds states how long it runs, and each inverter its idle power.",
);

export const energyHoursMissing = defineRule<Values>({
  id: "energy/hours-missing",
  title: "Loads without hours of use",
  severity: "info",
  why: "A load that the balance leaves out makes the bank look larger than it is.",
  sources: [hoursNeeded],
  fixable: false,
  acceptable: true,
  // Needs the consumers of each bank. One finding names all: a plan that just got its first period has many.
  // A circuit that could not be read has a finding of its own.
  check({ energy }): Found<Values>[] {
    const byName = new Map(
      energy
        .flatMap(({ banks }) => banks.flatMap(({ withoutHours }) => withoutHours))
        .filter(({ isInvalid }) => !isInvalid)
        .map((consumer) => [`${consumer.record} ${consumer.name}`, consumer]),
    );
    const [first, ...others] = byName.values();
    if (!first) return [];
    return [
      {
        subject: "the plan",
        at: { record: first.record, path: [] },
        values: { names: [first, ...others].map(({ name }) => name) },
        related: others
          .slice(0, mostRelated)
          .map(({ record, name }) => ({ at: { record, path: [] }, text: name })),
      },
    ];
  },
  message: ({ names }) =>
    `The plan does not say how long ${listInWords(names)} ${names.length === 1 ? "runs" : "run"}: state use, the idleW of an inverter and its devices. Until then every verdict on a period is "at best".`,
});

interface Values {
  /** Never empty. */
  readonly names: readonly string[];
}

const mostRelated = 16;
