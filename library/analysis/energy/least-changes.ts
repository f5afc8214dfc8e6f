import { workedOutOnce } from "../../model/worked-out-once.ts";
import { keepsUp } from "./bank-balance.ts";
import type { BankEnergy, HoursAtBank } from "./energy-result.ts";
import { type Lever, leversOf, type Tried, type TriedLever } from "./levers.ts";

/** See {@link leastChanges}. */
export interface LeastChanges {
  /** The bank keeps up as it is; the least sizes may then be smaller than the present ones. */
  readonly isEnough: boolean;
  readonly levers: readonly Lever[];
  /** Balances that were run, at most {@link mostBalances}. */
  readonly balances: number;
}

export const mostBalances = 50;

/**
 * The least change of each kind, by bisection on the hourly balance. It costs as much as several keystrokes, and is worked out only when
 * it is asked for. It pauses before each balance: who has waited in vain takes no further step.
 */
export function* leastChangesInSteps({ hours }: BankEnergy): Generator<undefined, LeastChanges> {
  let balances = 0;
  function* holds(tried: Tried): Generator<undefined, boolean> {
    if (balances >= mostBalances) return false;
    yield;
    balances++;
    return holdsWith(hours, tried);
  }
  const isEnough = yield* holds({});
  const levers: Lever[] = [];
  // Last, those that need another controller as well: an answer where the plan's own controllers leave none of a usual size.
  const inOrder = [...leversOf(hours)].sort((one, other) => Number(isLast(one)) - Number(isLast(other)));
  for (const { from, tried, ...lever } of inOrder) {
    const modules = levers.find(({ change }) => change === "array");
    if (isLast(lever) && modules?.least !== undefined && modules.least <= usualTimes * modules.now) continue;
    const least = yield* leastStep({ ...lever, from }, isEnough, (size) => holds(tried(size)));
    // Without a balance left, "not even the most" would be a guess.
    if (least === undefined && balances >= mostBalances) continue;
    // An array that fails even with a controller to match fails without one: one answer instead of two alike.
    if (isLast(lever) && modules && modules.least === undefined && least === undefined)
      levers.splice(levers.indexOf(modules), 1);
    levers.push({ ...lever, least });
  }
  return { isEnough, levers, balances };
}

function isLast({ change }: Pick<Lever, "change">): boolean {
  return change === "array and controller";
}

/** A bank or an array of more times its size is one that few builders would choose. Common practice, no source. */
export const usualTimes = 3;

/** For documents and fixes, which wait for it. */
export const leastChangesOf = workedOutOnce((bank: BankEnergy): LeastChanges => {
  const steps = leastChangesInSteps(bank);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
});

/** The balance of a bank with another size of it, or other sources. */
function holdsWith(hours: HoursAtBank, tried: Tried): boolean {
  const { bank = hours.bank, sunW: sourceW = hours.sunW, chargersW = hours.chargersW } = tried;
  const startWh = hours.run.startWh * (hours.bank.fullWh > 0 ? bank.fullWh / hours.bank.fullWh : 1);
  return keepsUp(bank, { loadW: hours.loadW, sourceW, chargersW }, { ...hours.run, startWh });
}

/**
 * The least multiple of the step that is enough. It is doubled from the present size, because a larger bank with a reserve in percent is
 * not better in every case; then by bisection. The size that is returned was tried.
 */
function* leastStep(
  { now, from, most, step }: Pick<TriedLever, "now" | "from" | "most" | "step">,
  isEnough: boolean,
  holds: (size: number) => Generator<undefined, boolean>,
): Generator<undefined, number | undefined> {
  const last = Math.floor(most / step + nearly);
  let enough = Math.ceil(now / step - nearly);
  let tooSmall = Math.ceil(from / step - nearly) - 1;
  if (!isEnough || enough > last) {
    tooSmall = Math.min(last - 1, Math.floor(now / step + nearly));
    for (let size = Math.max(1, tooSmall); ; tooSmall = size) {
      if (size >= last) return undefined;
      size = Math.min(last, 2 * size);
      if (!(yield* holds(size * step))) continue;
      enough = size;
      break;
    }
  }
  while (enough - tooSmall > 1) {
    const middle = Math.floor((enough + tooSmall) / 2);
    if (yield* holds(middle * step)) enough = middle;
    else tooSmall = middle;
  }
  return enough * step;
}

/** Rounding of a size over its step. */
const nearly = 1e-9;
