import type { Circuit, Protection } from "../../library/model/circuit.ts";
import { asGiven, withUnit } from "../../library/rules/figures.ts";

/** The load as the plan gives it, in amperes: rounded only where it was worked out, from watts or from the network. */
export function loadInWords({ loadA, loadW, statesLoad, wired }: Circuit): string {
  return loadW === undefined && statesLoad && !wired ? `${asGiven(loadA)} A` : withUnit(loadA, "A");
}

/** "protected at 50 A", as the plan gives it. */
export function protectionInWords(protection: Protection | null): string {
  return protection ? `protected at ${asGiven(protection.ratingA)} A` : "no protection";
}
