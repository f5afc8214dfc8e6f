import { groupedBy } from "../../analysis/grouped-by.ts";
import { acceptingIn } from "../../model/accepting.ts";
import type { Finding } from "../finding.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, type JudgedPlan } from "../rule.ts";
import { listInWords } from "../wording/part-in-words.ts";

export const needlessAccept = defineRule<Values>({
  id: "plan/needless-accept",
  title: "Accepted finding that is not there",
  severity: "info",
  why: "A reason for a finding that was mended, or that was never there, silences the next one of its kind unseen.",
  sources: [ownRequirement("A plan accepts only findings that it has.")],
  fixable: false,
  acceptable: false,
  afterOthers: true,
  // Needs the findings of all other rules. Silent if a part of the plan could not be judged, because the finding may be in it.
  check(plan, others = []) {
    if (!isJudgedWhole(plan)) return [];
    const found = groupedBy(others, ({ at }) => ("record" in at ? at.record : undefined));
    const stated = acceptances(plan);
    const isMet = ({ record, rule }: Acceptance) =>
      (found.get(record) ?? []).some((finding) => finding.rule === rule);
    // One object with reasons may be shared by many circuits, and cover a finding at some of them.
    const keyOf = ({ rule, reason }: Acceptance) => JSON.stringify([rule, reason]);
    const met = new Set(stated.filter(isMet).map(keyOf));
    return stated
      .filter((one) => one.reason !== "" && !met.has(keyOf(one)))
      .map(({ record, subject, rule }): Found<Values> => {
        const there = (found.get(record) ?? []).filter(isOpen).map((finding) => finding.rule);
        return {
          subject,
          at: { record, path: ["accept", rule] },
          values: { accepted: rule, found: [...new Set(there)] },
        };
      });
  },
  message({ accepted, found }) {
    const instead = found.length === 0 ? "" : `; found here: ${listInWords(found, 3)}`;
    return `There is no finding of ${accepted} here, so its reason accepts none${instead}. Take the line out.`;
  },
});

interface Values {
  /** The rule of the accepted finding. */
  readonly accepted: string;
  /** The rules with a finding there that is not accepted. */
  readonly found: readonly string[];
}

interface Acceptance {
  readonly record: number;
  readonly subject: string;
  readonly rule: string;
  readonly reason: string;
}

function acceptances({ model }: JudgedPlan): readonly Acceptance[] {
  return acceptingIn(model).flatMap(({ record, name, accept }) =>
    Object.entries(accept).map(([rule, reason]) => ({
      record,
      subject: name,
      rule,
      reason: reason.trim(),
    })),
  );
}

function isJudgedWhole({ model, network, problems }: JudgedPlan): boolean {
  return (
    problems.length === 0 &&
    model.invalid.every(({ serves }) => serves === "lists") &&
    !model.networkUnread &&
    (network?.result.scenarios ?? []).every(({ state }) => state === "solved")
  );
}

function isOpen({ severity, accepted }: Finding): boolean {
  return accepted === undefined && severity !== "hint";
}
