import type { Layout } from "../../model/placement/layout.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { type NoWay, type Way, waysOf } from "./ways.ts";

/** Where things are, and the way of each conductor. */
export interface Placement {
  readonly layout: Layout;
  /** By lead index. */
  readonly ways: readonly (Way | NoWay)[];
}

export const placementOf = workedOutOnce((layout: Layout): Placement => ({ layout, ways: waysOf(layout) }));
