import type { Finding } from "./finding.ts";
import { ruleById } from "./registry.ts";

/** The message of a finding, in the words of its rule. */
export function messageOf({
  rule,
  values,
  isUndivided,
}: Pick<Finding, "rule" | "values" | "isUndivided">): string {
  const message = ruleById(rule)?.message(values) ?? rule;
  return isUndivided ? `Not judged, a length is not known; at most: ${message}` : message;
}
