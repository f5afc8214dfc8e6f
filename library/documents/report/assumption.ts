import type { Citation } from "../../standards/citation.ts";
import { type SourceList, standingInWords } from "./sources.ts";

/** A default taken because the plan does not state the value. */
export interface Assumption {
  readonly what: string;
  readonly takenAs: string;
  /** Names of circuits and parts; all in full, because a reader checks the list with a pen. */
  readonly where: string;
  /** How it is known: a source, or words if it has none. */
  readonly source: Citation | string;
}

/** A citation with how it is known; words as they are. */
export function knownBy(source: Assumption["source"], sources: SourceList): string {
  if (typeof source === "string") return source;
  const standing = standingInWords(source);
  const cited = sources.cite(source);
  // The citation itself names common practice and unconfirmed figures as such.
  return cited.startsWith(standing) || cited.includes("unconfirmed") ? cited : `${cited}, ${standing}`;
}

/** "all 14 runs", or every name. */
export function namesOf(some: readonly { readonly name: string }[], all: number, what: string): string {
  if (some.length === all && all > 3) return `all ${all} ${what}`;
  return some.map(({ name }) => name).join("; ");
}
