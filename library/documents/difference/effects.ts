import { isAbove } from "../../rules/current-through.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import type { ChangedProperty } from "./changed-properties.ts";
import type { Pair } from "./match.ts";
import { type Limit, type Measured, measuredIn } from "./measured.ts";
import type { Subject } from "./subject.ts";

/** A figure of a subject that both plans have, and that came out visibly different. */
export interface Effect {
  readonly subject: Subject;
  readonly what: Measured["what"];
  readonly words: string;
  readonly unit: Measured["unit"];
  readonly before: number;
  readonly after: number;
  readonly limitBefore: Limit | undefined;
  readonly limitAfter: Limit | undefined;
  /** It went past its limit, or came back within it. */
  readonly crossed: "past" | "back" | undefined;
  /** Less is left to the limit than before; undefined where there is none. */
  readonly worse: boolean | undefined;
  /** It is of a subject that was itself changed; false: that is what a change does elsewhere. */
  readonly own: boolean;
}

export interface ChangedPair extends Pair {
  readonly changes: readonly ChangedProperty[];
}

/**
 * What the changes do: every figure that differs by more than three figures show, and is not told as the change itself already.
 * What crossed a limit comes first, then what came nearest to its own.
 */
export function effectsOf(before: JudgedPlan, after: JudgedPlan, pairs: readonly ChangedPair[]): Effect[] {
  const [old, now] = [measuredIn(before), measuredIn(after)];
  return pairs
    .flatMap((pair) => {
      const earlier = new Map(old(pair.before).map((measured) => [measured.what, measured]));
      const effects = now(pair.after).flatMap((measured) => {
        const was = earlier.get(measured.what);
        return was ? effectOf(pair, was, measured) : [];
      });
      return toldOnce(effects);
    })
    .sort(
      (one, other) =>
        crossings.indexOf(one.crossed) - crossings.indexOf(other.crossed) ||
        weight(other) - weight(one) ||
        relative(other) - relative(one),
    );
}

const crossings: readonly Effect["crossed"][] = ["past", "back", undefined];

/** How much of the limit is used, if it is more than before; else how much of it was given back, which matters less. */
function weight(effect: Effect): number {
  const { after, limitAfter, worse } = effect;
  if (!limitAfter) return -1;
  const used = limitAfter.is === "most" ? after / limitAfter.value : limitAfter.value / after;
  return worse ? 1 + used : used / 1e3;
}

function relative({ before, after }: Effect): number {
  return Math.abs(after - before) / Math.max(Math.abs(before), Math.abs(after), Number.MIN_VALUE);
}

function effectOf({ after: subject, changes }: ChangedPair, was: Measured, is: Measured): Effect[] {
  const limitMoved = moved(was.limit?.value, is.limit?.value);
  const toldAsLimit = changes.some(({ id }) => id === is.limit?.statedBy || id === was.limit?.statedBy);
  const crossed = crossing(was, is);
  if (!crossed && !moved(was.value, is.value) && (!limitMoved || toldAsLimit)) return [];
  // A circuit that draws more because its load was changed says so once.
  const texts = [`${formatRounded(was.value)} ${was.unit}`, `${formatRounded(is.value)} ${is.unit}`];
  if (!crossed && changes.some(({ before, after }) => before === texts[0] && after === texts[1])) return [];
  return [
    {
      ...{ subject, what: is.what, words: is.words, unit: is.unit, before: was.value, after: is.value },
      ...{ limitBefore: was.limit, limitAfter: is.limit, crossed, own: changes.length > 0 },
      worse: worse(was, is),
    },
  ];
}

/** Three figures differ, and not only because both stand at the edge where one rounds up and the other down. */
function moved(before: number | undefined, after: number | undefined): boolean {
  if (before === undefined || after === undefined) return before !== after;
  if (Number.isNaN(before) || Number.isNaN(after)) return false;
  const apart = Math.abs(after - before) / Math.max(Math.abs(before), Math.abs(after), leastShown);
  return formatRounded(before) !== formatRounded(after) && apart > leastShare;
}

/** Half a unit of the third figure, at most. */
const leastShare = 5e-4;
/** A, V or %: below this, the solver's answer for what carries nothing is dust. */
const leastShown = 1e-3;

function crossing(was: Measured, is: Measured): Effect["crossed"] {
  const [before, after] = [isPast(was), isPast(is)];
  if (before === undefined || after === undefined || before === after) return undefined;
  return after ? "past" : "back";
}

function isPast({ value, limit }: Pick<Measured, "value" | "limit">): boolean | undefined {
  if (!limit || Number.isNaN(value)) return undefined;
  return limit.is === "most" ? isAbove(value, limit.value) : isAbove(limit.value, value);
}

function worse(was: Measured, is: Measured): boolean | undefined {
  const [before, after] = [shareLeft(was.value, was.limit), shareLeft(is.value, is.limit)];
  return before === undefined || after === undefined ? undefined : after < before;
}

/** How much of the limit is left, in percent of the limit; negative beyond it. */
export function shareLeft(value: number, limit: Limit | undefined): number | undefined {
  if (!limit) return undefined;
  const left = limit.is === "most" ? limit.value - value : value - limit.value;
  return (100 * left) / limit.value;
}

/**
 * One change in one conductor shows in the drop of the circuit, in the drop from the bank, in the voltage at the device and in
 * what a short draws. Told is the nearest to its limit of the drops, the voltage where the device needs one, and a short where
 * its device could be asked too much; whatever crossed its limit is told always.
 */
function toldOnce(effects: readonly Effect[]): Effect[] {
  const of = (what: Measured["what"]) => effects.find((effect) => effect.what === what);
  const [drop, fromBank] = [of("dropPercent"), of("dropFromBankPercent")];
  const lesserDrop = drop && fromBank && (weight(drop) > weight(fromBank) ? fromBank : drop);
  return effects.filter((effect) => {
    if (effect.crossed) return true;
    if (effect === lesserDrop) return false;
    if (effect.what === "farFaultA") return effect.own;
    // It flows in the conductors to the device, and is told there.
    if (effect.what === "takesA" && !effect.own && !effect.limitAfter) return false;
    return effect.limitAfter !== undefined || !["lowestV", "faultA"].includes(effect.what);
  });
}
