import type { Rule } from "./rule.ts";

/** Every rule there is, by id. `new-rule.mjs` adds a line above and a line below; a test compares both with the folders. */
export const rules: readonly Rule<unknown>[] = [];

export function ruleById(id: string): Rule<unknown> | undefined {
  return rules.find((rule) => rule.id === id);
}
