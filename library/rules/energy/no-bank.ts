import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";
import { listInWords } from "../wording/part-in-words.ts";

const bankNeeded = ownRequirement(
  "A period says how long a bank must last: the plan needs the bank, and the loads that are connected to it.",
);

export const energyNoBank = defineRule<Values>({
  id: "energy/no-bank",
  title: "Period without a bank to judge",
  severity: "warning",
  why: "A period that is not judged is easily taken for a good one.",
  sources: [bankNeeded],
  fixable: false,
  acceptable: false,
  // Needs the banks of each period, and the consumers without one: a bank counts if it feeds a load or is charged by the sun.
  // Silent beside a refused value of the bank: that has a finding of its own.
  check: ({ energy }) =>
    energy.flatMap(({ period, climate, banks, refusedParts, withoutBank }): Found<Values>[] =>
      climate === undefined || refusedParts.length > 0 || (banks.length > 0 && withoutBank.length === 0)
        ? []
        : [
            {
              subject: period.name,
              at: { record: period.record, path: [] },
              values: {
                period: period.name,
                leavesOut: banks.length > 0 ? withoutBank.map(({ name }) => name) : undefined,
              },
            },
          ],
    ),
  message: ({ period, leavesOut }) =>
    leavesOut
      ? `${period} leaves out ${listInWords(leavesOut)}: no bank of this plan feeds ${leavesOut.length === 1 ? "it" : "them"}. Connect ${leavesOut.length === 1 ? "it" : "them"} with a bank, or state notUsed.`
      : `${period} is not judged: the plan has no battery that feeds a load. Write the battery, and start its circuits at it with from and returnTo.`,
});

interface Values {
  readonly period: string;
  /** The consumers that no bank feeds; undefined if the plan has no bank at all. */
  readonly leavesOut: readonly string[] | undefined;
}
