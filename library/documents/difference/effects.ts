import { isAbove } from "../../rules/current-through.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import type { ChangedProperty } from "./changed-properties.ts";
import type { Pair } from "./match.ts";
import { type Limit, type Measured, measuredIn } from "./measured.ts";
import type { Subject } from "./subject.ts";

/** A figure of a subject that both plans have, with a visible difference. */
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
  /** Less is left to the limit than before; undefined without a limit. */
  readonly worse: boolean | undefined;
  /** Its subject was itself changed; false: a change elsewhere caused it. */
  readonly own: boolean;
}

export interface ChangedPair extends Pair {
  readonly changes: readonly ChangedProperty[];
}

/**
 * The effects of the changes: every figure with a visible difference that the change itself does not already report. Those that
 * crossed a limit come first, then those nearest to their own.
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

/** The used share of the limit; it counts for far less if the figure did not become worse. */
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
  // A circuit that draws more because its load was changed reports that once.
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

/** Three figures differ, and not only because one value rounds up and the other down at the same edge. */
function moved(before: number | undefined, after: number | undefined): boolean {
  if (before === undefined || after === undefined) return before !== after;
  if (Number.isNaN(before) || Number.isNaN(after)) return false;
  const apart = Math.abs(after - before) / Math.max(Math.abs(before), Math.abs(after), leastShown);
  return formatRounded(before) !== formatRounded(after) && apart > leastShare;
}

/** Half a unit of the third figure, at most. */
const leastShare = 5e-4;
/** A, V or %: below this, the solver's result for a part without current is only rounding. */
const leastShown = 1e-3;

function crossing(was: Measured, is: Measured): Effect["crossed"] {
  const [before, after] = [isPast(was), isPast(is)];
  if (before === undefined || after === undefined || before === after) return undefined;
  return after ? "past" : "back";
}

function isPast({ value, limit }: Pick<Measured, "value" | "limit">): boolean | undefined {
  if (!limit || Number.isNaN(value)) return undefined;
  return limit.is === "most" ? isAbove(value, limit.metUpTo ?? limit.value) : isAbove(limit.value, value);
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
 * The figure crossed no limit, and neither it nor its limit moved by a tenth of that limit; a figure without a limit moved by less
 * than a tenth of itself.
 */
export function isSmall({ before, after, limitBefore, limitAfter, crossed }: Effect): boolean {
  if (crossed || Number.isNaN(before) || Number.isNaN(after)) return false;
  if (Boolean(limitBefore) !== Boolean(limitAfter)) return false;
  const scale = limitAfter?.value ?? Math.max(Math.abs(before), Math.abs(after));
  const limitMoved = (limitAfter?.value ?? 0) - (limitBefore?.value ?? 0);
  return Math.max(Math.abs(after - before), Math.abs(limitMoved)) < scale / 10;
}

/**
 * One change in one conductor shows in the drop of the circuit, in the drop from the bank, in the voltage at the device and in
 * the fault current. Reported: the drop closest to its limit, the device voltage if it has a minimum, and fault currents that may
 * exceed the device; also every figure that crossed its limit.
 */
function toldOnce(effects: readonly Effect[]): Effect[] {
  const of = (what: Measured["what"]) => effects.find((effect) => effect.what === what);
  const [drop, fromBank] = [of("dropPercent"), of("dropFromBankPercent")];
  const lesserDrop = drop && fromBank && (weight(drop) > weight(fromBank) ? fromBank : drop);
  return effects.filter((effect) => {
    if (effect.crossed) return true;
    if (effect === lesserDrop) return false;
    if (effect.what === "farFaultA") return effect.own;
    // It flows in the conductors to the device, and is reported there.
    if (effect.what === "takesA" && !effect.own && !effect.limitAfter) return false;
    return effect.limitAfter !== undefined || !["lowestV", "faultA"].includes(effect.what);
  });
}
