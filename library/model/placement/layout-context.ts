import { withArticle } from "../describe-value.ts";
import type { PlacementWord, PlanRecord } from "../record.ts";
import type { Refusal } from "../run.ts";
import type { WrittenReference } from "../terminal-property.ts";

/** The plan around a surface, channel or part whose place is read. */
export interface LayoutContext {
  readonly records: readonly PlanRecord[];
  refuse(record: number, name: string, refusals: readonly Omit<Refusal, "serves">[]): void;
  /** By record: the index of each surface, channel and compartment that could be read. */
  readonly known: Readonly<Record<PlacementWord, Map<number, number>>>;
}

export interface Identity {
  readonly record: number;
  readonly name: string;
}

/** The index of a surface, channel or compartment that a record names; undefined for another part, which is reported. */
export function referred(
  written: WrittenReference | undefined,
  word: PlacementWord,
  at: Identity & { readonly path: readonly string[] },
  { records, known, refuse }: LayoutContext,
): number | undefined {
  if (!written) return undefined;
  const { kind, id } = written;
  const isOne = kind === word && records[id]?.word === word;
  if (!isOne) {
    const wrong =
      records[id]?.word === kind
        ? `is ${withArticle(kind)}, not a ${word}`
        : `is ${withArticle(kind)} that is not in this plan`;
    refuse(at.record, at.name, [
      { path: at.path, given: undefined, wrong, allowed: `a ${word} of this plan` },
    ]);
  }
  return isOne ? known[word].get(id) : undefined;
}
