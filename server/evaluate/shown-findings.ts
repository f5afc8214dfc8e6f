import type { Severity } from "../../library/rules/finding.ts";

/**
 * The number of findings of one rule shown for one file. A builder fixes the first few and looks again; editors become slow
 * with tens of thousands. Only the display is limited: counts, exit codes, JSON, SARIF and fixes use all of them.
 */
export const mostShownOfRule = 100;

export interface Shown<Item> {
  /** In their own order. */
  readonly shown: readonly Item[];
  /** Those of one rule and file that are not shown, the worst first. */
  readonly leftOut: readonly (readonly [Item, ...Item[]])[];
}

/** Selects, for each rule and file, the worst findings, and among equally bad ones the first; counts the rest. */
export function shownFindings<Item>(items: readonly Item[], about: (item: Item) => ShownAs): Shown<Item> {
  const groups = new Map<string, { readonly item: Item; readonly rank: number }[]>();
  for (const item of items) {
    const { rule, file, severity, accepted } = about(item);
    const key = `${rule}\n${file}`;
    const one = { item, rank: accepted ? order.hint : order[severity] };
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  const hidden = new Set<Item>();
  const leftOut: [Item, ...Item[]][] = [];
  for (const group of groups.values()) {
    // One more is shown rather than a line "and 1 more".
    if (group.length <= mostShownOfRule + 1) continue;
    const [first, ...others] = group.sort((one, other) => one.rank - other.rank).slice(mostShownOfRule);
    const rest: [Item, ...Item[]] = [first!.item, ...others.map(({ item }) => item)];
    for (const item of rest) hidden.add(item);
    leftOut.push(rest);
  }
  return { shown: items.filter((item) => !hidden.has(item)), leftOut };
}

interface ShownAs {
  readonly rule: string;
  readonly file: string;
  readonly severity: Severity;
  readonly accepted: boolean;
}

const order: Record<Severity, number> = { error: 0, warning: 1, info: 2, hint: 3 };
