import { descriptorOfWord } from "../../model/parts/index.ts";
import type { Body, Layout, Lead } from "../../model/placement/layout.ts";
import type { Related } from "../finding.ts";
import { atStart, conductorInWords, listInWords } from "./part-in-words.ts";

/** How findings name the things of a layout, and their places in the plan. */

/** "the bus bar main", "the starter battery", "Fridge" for a load, as in `partInWords`. */
export function bodyInWords({ name, word }: Body): string {
  if (word === "circuit" || word === "load") return name;
  const { called } = descriptorOfWord(word as Parameters<typeof descriptorOfWord>[0]);
  return called.saidBy.test(name) ? `the ${name}` : `the ${called.word} ${name}`;
}

/** The place of a channel in the plan, or of one of its properties. */
export function atRecord({ record }: { readonly record: number }, ...path: string[]) {
  return { record, path };
}

/** Facts of a layout that are not judged, because the plan does not state a figure. */
export interface NotJudged {
  /** "the fill of". */
  readonly what: string;
  readonly names: readonly string[];
  /** The properties that would state it. */
  readonly without: string;
}

/** "Not stated, so not judged: the fill of trunking (inside, fillPercent or outsideMm)." */
export function notJudgedInWords(gaps: readonly NotJudged[]): string {
  const each = gaps.map(({ what, names, without }) => `${what} ${listInWords(names, 3)} (${without})`);
  return `Not stated, so not judged: ${each.join("; ")}.`;
}

/** Runs by name, each once. */
export function runNames(layout: Layout, leads: readonly number[]): readonly string[] {
  return [
    ...new Map(leads.map((lead) => layout.leads[lead]!).map(({ record, name }) => [record, name])).values(),
  ];
}

export function relatedLead(lead: Lead): Related {
  return { at: atRecord(lead), text: atStart(conductorInWords(lead)) };
}

export function relatedBody(body: Body): Related {
  return { at: atRecord(body), text: atStart(bodyInWords(body)) };
}
