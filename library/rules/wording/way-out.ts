import type { ProposedFix } from "../finding.ts";

/** The end of a message: the effect of the first fix, or the builder's options if none can be proposed. */
export function wayOut(fixes: readonly ProposedFix[], otherwise: string): string {
  const title = fixes[0]?.title;
  return title ? `${title.charAt(0).toLowerCase()}${title.slice(1)}` : otherwise;
}

/** A fix whose title is "Use 6 AWG", with the noun of it, "6 AWG", for a sentence in which something else is used too. */
export interface FixToUse extends ProposedFix {
  readonly noun: string;
}

/** The title of such a fix, and its noun. */
export function toUse(noun: string): Pick<FixToUse, "title" | "noun"> {
  return { title: `Use ${noun}`, noun };
}

/** If even the thickest made size is not enough. */
export const noSizeIsEnough = "no standard size is enough; split the load, or set parallel";

/** The builder's ways out of a drop that thicker conductors do not end, or not with good sense. */
export const otherLevers = "shorten the run, give it its own feed, use a higher system voltage";
