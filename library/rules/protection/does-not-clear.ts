import { ownRequirement } from "../own-requirement.ts";
import { atProperty, defineRule, perCircuit } from "../rule.ts";

export const doesNotClear = defineRule<Values>({
  id: "protection/does-not-clear",
  title: "A short further out may not blow it",
  severity: "warning",
  why: "What goes wrong in the real thing, in one sentence.",
  sources: [ownRequirement("Or the document, from library/standards.")],
  fixable: false,
  acceptable: true,
  // Needs: which results of which analysis.
  check: (plan) =>
    perCircuit(plan, ({ circuit }) => {
      const found = false;
      return found ? [{ at: atProperty(circuit), values: { loadA: circuit.loadA } }] : [];
    }),
  message: ({ loadA }) => `${loadA} A: what is wrong, what is allowed, the way out.`,
});

interface Values {
  readonly loadA: number;
}
