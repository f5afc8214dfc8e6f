import type { Protection, Run } from "../../library/model/run.ts";
import { formatExact, withUnit } from "../../library/rules/wording/format-number.ts";

/** The load as the plan gives it, in amperes: rounded only if it was computed, from watts or from the network. */
export function loadInWords({ loadA, loadW, statesLoad, inNetwork }: Run): string {
  return loadW === undefined && statesLoad && !inNetwork ? `${formatExact(loadA)} A` : withUnit(loadA, "A");
}

/** "protected at 50 A", as the plan gives it. */
export function protectionInWords(protection: Protection | null): string {
  return protection ? `protected at ${formatExact(protection.ratingA)} A` : "no protection";
}
