import type { Lacking } from "../../analysis/energy/flows-at-bank.ts";
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
  // A circuit that could not be read has a finding of its own, and so have hours that are refused.
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
        values: {
          names: [first, ...others].map(({ name }) => name),
          lacking: [...new Set([first, ...others].map(({ lacks = "use" }) => lacks))],
        },
        related: others
          .slice(0, mostRelated)
          .map(({ record, name }) => ({ at: { record, path: [] }, text: name })),
      },
    ];
  },
  message({ names, lacking }) {
    const statements = lacking.flatMap((one) => (one === "transfer" ? [] : [statementOf[one]]));
    const state =
      statements.length > 0
        ? `state ${listInWords(statements)}. Until then every`
        : "the charge that is passed on all the time is in no balance. Every";
    return `The plan does not say how long ${listInWords(names)} ${names.length === 1 ? "runs" : "run"}: ${state} verdict on a period is "at best".`;
  },
});

interface Values {
  /** Never empty. */
  readonly names: readonly string[];
  /** Each once, never empty. */
  readonly lacking: readonly Lacking[];
}

const statementOf = {
  use: "use",
  idleW: "the idleW of the inverter",
  devices: "the devices of the inverter",
} as const satisfies Record<Exclude<Lacking, "transfer">, string>;

const mostRelated = 16;
