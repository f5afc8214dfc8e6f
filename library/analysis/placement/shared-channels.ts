import type { Network } from "../../model/network.ts";
import type { Run } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { sharedChannel } from "../../standards/shared-channels.ts";
import { ampacityOf } from "../ampacity.ts";
import type { NetworkResult } from "../network-result.ts";
import { type ChannelSection, channelSections } from "./channel-sections.ts";
import type { Placement } from "./placement.ts";
import type { Stretch } from "./ways.ts";

/** The other conductors that lie in a channel with a conductor, and carry load together with it. */
export interface Bundle {
  /** Their greatest number in one scenario, parallel wires one by one; 0 without any. */
  readonly others: number;
  /** Index of the channel in which they lie together; absent without any. */
  readonly channel?: number;
}

/**
 * By lead index: the greatest number of other conductors with load, over a stretch of its way of at least 24 in through channels. Those
 * that pass on from one channel to the next without a stretch in the open stay together. A scenario without a solution counts all
 * conductors; one in which a motor starts counts none, because it does not last.
 */
export function bundlesOf(
  placement: Placement,
  network: Network,
  scenarios: NetworkResult["scenarios"],
): readonly Bundle[] {
  const { layout } = placement;
  const indexOf = new Map(network.conductors.map(({ record, role }, index) => [`${record} ${role}`, index]));
  const loads = scenarios
    .filter(({ scenario }) => !network.scenarios[scenario]!.momentary)
    .map((result) =>
      layout.leads.map(({ record, role }) => {
        const conductor = indexOf.get(`${record} ${role}`);
        if (conductor === undefined) return false;
        return result.state !== "solved" || Math.abs(result.conductorA[conductor]!) > leastA;
      }),
    );
  const known = knownBundles(placement);
  const key = JSON.stringify(loads);
  const bundles = known.get(key) ?? bundlesWith(placement, loads);
  // While somebody types, the same conductors carry load.
  if (known.size > mostKept) known.clear();
  known.set(key, bundles);
  return bundles;
}

const knownBundles = workedOutOnce((_: Placement) => new Map<string, readonly Bundle[]>());

/** Our choice: a plan needs one at a time. */
const mostKept = 4;

/** `loads`: by scenario and lead index, whether it carries load. */
function bundlesWith(placement: Placement, loads: readonly (readonly boolean[])[]): readonly Bundle[] {
  const { layout, ways } = placement;
  const sections = channelSections(placement);
  return layout.leads.map(({ index, wires }) => {
    const way = ways[index]!;
    if (way.state !== "found") return none;
    const together = piecesInChannels(way.stretches, sections);
    let most: Bundle = none;
    for (const hasLoad of loads) {
      if (!hasLoad[index]) continue;
      for (const pieces of together) {
        const counts = pieces.map(({ leads }) =>
          leads.reduce(
            (sum, lead) => sum + (hasLoad[lead] && lead !== index ? layout.leads[lead]!.wires : 0),
            wires - 1,
          ),
        );
        const found = greatestOver(pieces, counts);
        if (found.others > most.others) most = found;
      }
    }
    return most;
  });
}

/** A run that shares a channel, with the ampacity that the factor for conductors together gives. */
export interface SharedRun {
  readonly run: Run;
  /** Index of the channel. */
  readonly channel: number;
  /** See {@link Bundle.others}. */
  readonly others: number;
  readonly ampacityA: number;
  readonly bundledA: number;
  readonly loadA: number;
}

/** The runs whose ampacity the factor would lower, because it is judged by fewer conductors together than their way has. */
export function sharedRuns(
  { layout }: Placement,
  runs: readonly Run[],
  bundles: readonly Bundle[],
): readonly SharedRun[] {
  const greatest = new Map<number, Bundle>();
  for (const { index, record } of layout.leads) {
    const bundle = bundles[index]!;
    if (bundle.others > (greatest.get(record)?.others ?? 0)) greatest.set(record, bundle);
  }
  return runs.flatMap((run): readonly SharedRun[] => {
    const { others = 0, channel } = greatest.get(run.record) ?? {};
    if (channel === undefined || run.bundledWithStated || others <= run.bundledWith) return [];
    const [alone, bundled] = [ampacityOf(run), ampacityOf(bundledRun(run, others))];
    if (!alone.judged || !bundled.judged || bundled.ampacityA >= alone.ampacityA) return [];
    const { ampacityA } = alone;
    return [{ run, channel, others, ampacityA, bundledA: bundled.ampacityA, loadA: run.loadA }];
  });
}

/** A run as one of so many conductors together. The same object for the same run: results for it are taken over. */
export function bundledRun(run: Run, others: number): Run {
  const known = byNumber(run);
  const bundled = known.get(others) ?? { ...run, bundledWith: others };
  known.set(others, bundled);
  return bundled;
}

const byNumber = workedOutOnce((_: Run) => new Map<number, Run>());

const none: Bundle = { others: 0 };

/** A conductor with less carries no load, A: it warms none. */
const leastA = 0.001;

interface Piece {
  readonly channel: number;
  readonly lengthMm: number;
  readonly leads: readonly number[];
}

/** The sections along a way, in its order, for each part of it that is in channels without a stretch in the open. */
function piecesInChannels(
  stretches: readonly Stretch[],
  sections: readonly (readonly ChannelSection[])[],
): readonly (readonly Piece[])[] {
  const all: Piece[][] = [[]];
  for (const { channel, alongMm } of stretches) {
    if (channel === undefined || !alongMm) {
      all.push([]);
      continue;
    }
    const [fromMm, untilMm] = [Math.min(...alongMm), Math.max(...alongMm)];
    const within = sections[channel]!.filter((one) => one.fromMm >= fromMm && one.untilMm <= untilMm);
    const pieces = within.map((one) => ({ channel, lengthMm: one.untilMm - one.fromMm, leads: one.leads }));
    all.at(-1)!.push(...(alongMm[0] <= alongMm[1] ? pieces : pieces.reverse()));
  }
  return all;
}

/** The greatest number that holds over the least length that counts. */
function greatestOver(pieces: readonly Piece[], counts: readonly number[]): Bundle {
  let most: Bundle = none;
  for (let start = 0; start < pieces.length; start++) {
    let lengthMm = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let at = start; at < pieces.length && least > most.others; at++) {
      lengthMm += pieces[at]!.lengthMm;
      least = Math.min(least, counts[at]!);
      if (lengthMm < leastLengthMm - sameMm) continue;
      if (least > most.others) most = { others: least, channel: pieces[start]!.channel };
      break;
    }
  }
  return most;
}

const leastLengthMm = sharedChannel.leastLengthIn * 25.4;

/** Lengths in inches are rounded in their last binary digits. */
const sameMm = 1e-6;
