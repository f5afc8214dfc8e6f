import { acceptingIn } from "../../model/accepting.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

export const acceptWithoutReason = defineRule<Values>({
  id: "plan/accept-without-reason",
  title: "Finding accepted without a reason",
  severity: "error",
  why: "Two years on, only the reason shows whether an accepted finding was considered or merely silenced.",
  sources: [ownRequirement("An accepted finding is listed in every report with its reason.")],
  // Only the builder can give a reason.
  fixable: false,
  acceptable: false,
  check: ({ model }) =>
    acceptingIn(model).flatMap(({ record, name, accept }) =>
      Object.entries(accept)
        .filter(([, reason]) => reason.trim() === "")
        .map(([accepted]) => ({
          subject: name,
          at: { record, path: ["accept", accepted] },
          values: { accepted },
        })),
    ),
  message: ({ accepted }) =>
    `The reason for ${accepted} is empty, so the finding is not accepted: write a reason, in a few words, or take the line out.`,
});

interface Values {
  /** The rule whose finding would be accepted. */
  readonly accepted: string;
}
