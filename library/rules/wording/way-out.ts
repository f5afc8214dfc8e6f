import type { ProposedFix } from "../finding.ts";

/** The end of a message: what the first fix does, or what is left to the builder where none can be proposed. */
export function wayOut(fixes: readonly ProposedFix[], otherwise: string): string {
  const title = fixes[0]?.title;
  return title ? `${title.charAt(0).toLowerCase()}${title.slice(1)}` : otherwise;
}

/** Where even the thickest made size is not enough. */
export const noSizeIsEnough = "no made size is enough; split the load, or set parallel";
