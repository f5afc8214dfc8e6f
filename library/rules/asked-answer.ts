import type { Finding } from "./finding.ts";
import { ruleById } from "./registry.ts";
import type { AskedAnswer } from "./rule.ts";

/** The answer of a finding's rule to somebody who asks for its fixes; empty for rules that propose theirs at once. */
export function askedAnswer({ rule, values }: Finding): AskedAnswer {
  return ruleById(rule)?.whenAsked?.(values) ?? noAnswer;
}

/** Whether a finding may have fixes, without working them out. */
export function mayHaveFixes({ rule, fixes }: Finding): boolean {
  return fixes.length > 0 || ruleById(rule)?.whenAsked !== undefined;
}

const noAnswer: AskedAnswer = { fixes: [] };
