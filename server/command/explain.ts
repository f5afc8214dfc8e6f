import { nearestName } from "../../library/model/nearest-name.ts";
import { rules } from "../../library/rules/registry.ts";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";

import { rulePage } from "./rule-page.ts";
import { UsageError } from "./usage.ts";

/** `loomwright explain <rule>`: the rule's page for the installed version, offline. Without a rule: a line for each. */
export const explain: Command = {
  name: "explain",
  usage: [
    {
      words: "<rule>",
      does: "a rule by its name or title: the check, the reason, and the sources of its numbers",
    },
    { words: "", does: "all rules, a line each" },
  ],
  takes: [],
  run: (names, _given, outside) => explainRule(names, outside),
};

async function explainRule(names: readonly string[], outside: Host): Promise<ExitCode> {
  const [id, ...rest] = names;
  if (rest.length > 0) throw new UsageError("explain takes one rule at a time.");
  if (id === undefined) {
    const width = Math.max(...rules.map((rule) => rule.id.length));
    for (const rule of rules)
      outside.out(`${rule.id.padEnd(width)}  ${rule.severity.padEnd(7)}  ${rule.title}\n`);
    return 0;
  }
  const rule = rules.find((candidate) => candidate.id === id) ?? ruleTitled(id);
  if (!rule) throw new UsageError(`there is no rule '${id}'.${meant(id)}`);
  outside.out(`${rulePage(rule.id)}\n`);
  return 0;
}

/** By its title, or by one that it had in an earlier version. */
function ruleTitled(title: string) {
  const asked = title.toLowerCase();
  return rules.find((rule) =>
    [rule.title, ...(rule.formerTitles ?? [])].some((known) => known.toLowerCase() === asked),
  );
}

/** For half of a rule's name, shows the rules that contain it; for a mistyped one, the rule that is nearest. */
function meant(typed: string): string {
  const half = typed.split("/").at(-1)!.toLowerCase();
  const ids = rules.map(({ id }) => id);
  const within = half.length > 2 ? ids.filter((id) => id.includes(half)) : [];
  const nearest = nearestName(typed, ids);
  const near = within.length > 0 || nearest === undefined ? within : [nearest];
  return near.length > 0 ? ` Did you mean ${near.join(" or ")}?` : " loomwright explain lists all.";
}
