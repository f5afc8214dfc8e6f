import type { InvalidValue } from "../../model/circuit.ts";
import type { ProposedFix } from "../finding.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

export const invalidValue = defineRule<Values>({
  id: "plan/invalid-value",
  title: "Value that cannot be used",
  severity: "error",
  why: "A circuit with a value that makes no sense is judged on less than you think, or not at all.",
  sources: [ownRequirement("What each property may hold is said in its own documentation.")],
  fixable: true,
  acceptable: false,
  // Needs what the model could not read.
  check: ({ model }) =>
    model.invalid.map((invalid) => ({
      subject: invalid.name,
      at: { record: invalid.record, path: invalid.path },
      values: {
        property: invalid.path.join("."),
        wrong: invalid.wrong,
        given: invalid.given,
        allowed: invalid.allowed,
        nearest: invalid.nearest,
      },
      fixes: corrections(invalid),
    })),
  message({ property, wrong, given, allowed, nearest }) {
    const what = [property, wrong].filter(Boolean).join(" ");
    const instead = nearest === undefined ? "" : ` Did you mean ${nearest}?`;
    return `${what}${given === undefined ? "" : `: ${given}`}. Allowed: ${allowed}.${instead}`;
  },
});

interface Values {
  /** As written, `protect.ratingA`; empty for the whole argument. */
  readonly property: string;
  readonly wrong: string;
  readonly given: string | undefined;
  readonly allowed: string;
  readonly nearest: string | undefined;
}

/** A misspelt property gets its right name. A suggestion: only the builder knows what was meant. */
function corrections({ record, path, wrong, nearest }: InvalidValue): ProposedFix[] {
  if (nearest === undefined || !wrong.startsWith("is not a property")) return [];
  return [
    {
      title: `Rename to ${nearest}`,
      kind: "suggestion",
      changes: [{ do: "rename", record, path, to: nearest }],
    },
  ];
}
