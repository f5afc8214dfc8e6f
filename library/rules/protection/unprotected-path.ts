import { ownRequirement } from "../own-requirement.ts";
import { atProperty, defineRule, perCircuit } from "../rule.ts";

export const unprotectedPath = defineRule<Values>({
  id: "protection/unprotected-path",
  title: "A source reaches this conductor past no fuse",
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
