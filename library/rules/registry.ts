import { ambient } from "./conductor/ambient.ts";
import { ampacity } from "./conductor/ampacity.ts";
import { insulationNotStated } from "./conductor/insulation-not-stated.ts";
import { minimumSize } from "./conductor/minimum-size.ts";
import { voltageDrop } from "./conductor/voltage-drop.ts";
import { acceptWithoutReason } from "./plan/accept-without-reason.ts";
import { cannotRun } from "./plan/cannot-run.ts";
import { invalidValue } from "./plan/invalid-value.ts";
import { tooSlow } from "./plan/too-slow.ts";
import { unitSuspect } from "./plan/unit-suspect.ts";
import { aboveConductor } from "./protection/above-conductor.ts";
import { belowLoad } from "./protection/below-load.ts";
import { bothEnds } from "./protection/both-ends.ts";
import { distance } from "./protection/distance.ts";
import { headroom } from "./protection/headroom.ts";
import { missing } from "./protection/missing.ts";
import { standardRating } from "./protection/standard-rating.ts";
import type { Rule } from "./rule.ts";

/** Every rule there is, by id. `new-rule.mjs` adds a line above and a line below; a test compares both with the folders. */
export const rules: readonly Rule<unknown>[] = [
  ambient,
  ampacity,
  insulationNotStated,
  minimumSize,
  voltageDrop,
  acceptWithoutReason,
  cannotRun,
  invalidValue,
  tooSlow,
  unitSuspect,
  aboveConductor,
  belowLoad,
  bothEnds,
  distance,
  headroom,
  missing,
  standardRating,
];

export function ruleById(id: string): Rule<unknown> | undefined {
  return rules.find((rule) => rule.id === id);
}
