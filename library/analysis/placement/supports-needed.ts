import { descriptorOfWord } from "../../model/parts/index.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { supports } from "../../standards/conductor-ways.ts";
import { channelSections } from "./channel-sections.ts";
import type { Placement } from "./placement.ts";
import type { Stretch } from "./ways.ts";

/** A stretch of conductors that needs supports: a bundle, or one in the open. */
export interface SupportedStretch {
  /** Index of the channel; absent in the open. */
  readonly channel?: number;
  /** Index of a conductor in it: one from a battery to its disconnect, if there is one. */
  readonly lead: number;
  readonly lengthMm: number;
  /** The greatest distance of its supports, mm. */
  readonly everyMm: number;
  /** It is the smaller distance of conductors from a battery to their disconnect. */
  readonly toDisconnect: boolean;
  /** Their distance as the plan states it; absent in the open, and for a bundle without it. */
  readonly statedMm?: number;
  /** The number of supports at the greatest distance, or at a smaller stated one. */
  readonly needed: number;
}

/**
 * The supports of bundles and of stretches in the open. Trunking and conduit support their conductors throughout, and a hole holds them.
 *
 *     n = ⌈L / d⌉ − 1      in the open: between a terminal or channel at each end, L length, d greatest distance
 *     n = ⌈L / d⌉ + 1      of a bundle, with one at each of its ends
 *
 * Conductors that take the same path in the open share their supports.
 */
export const supportsNeeded = workedOutOnce((placement: Placement): readonly SupportedStretch[] => {
  const { layout } = placement;
  const strict = leadsToDisconnect(placement);
  const limitOf = (leads: readonly number[]) => {
    const decisive = leads.find((lead) => strict.has(lead));
    const { everyMm } = decisive === undefined ? supports : supports.toDisconnect;
    return { lead: decisive ?? leads[0]!, everyMm, toDisconnect: decisive !== undefined };
  };
  const bundles = channelSections(placement).flatMap((sections, channel): readonly SupportedStretch[] => {
    const { way, supportsEveryMm } = layout.channels[channel]!;
    if (way !== "bundle" || sections.length === 0) return [];
    const limit = limitOf(sections.flatMap(({ leads }) => leads));
    const lengthMm = sections.at(-1)!.untilMm - sections[0]!.fromMm;
    const distanceMm = Math.min(limit.everyMm, supportsEveryMm ?? limit.everyMm);
    return [
      {
        ...{ channel, lengthMm, ...limit },
        ...(supportsEveryMm !== undefined && { statedMm: supportsEveryMm }),
        needed: supportsBetween(lengthMm, distanceMm) + 2,
      },
    ];
  });
  const open = openStretches(placement).flatMap(({ lengthMm, leads }): readonly SupportedStretch[] => {
    const limit = limitOf(leads);
    const needed = supportsBetween(lengthMm, limit.everyMm);
    return needed > 0 ? [{ lengthMm, ...limit, needed }] : [];
  });
  return [...bundles, ...open];
});

/** The stretches in the open, each with the conductors along it. */
function openStretches({ layout, ways }: Placement) {
  const open = new Map<string, { readonly lengthMm: number; readonly leads: number[] }>();
  ways.forEach((way, lead) => {
    if (way.state !== "found") return;
    for (const stretch of way.stretches) {
      if (stretch.channel !== undefined) continue;
      const key = keyOf(stretch) ?? `${layout.leads[lead]!.record}`;
      const known = open.get(key) ?? { lengthMm: stretch.lengthMm, leads: [] };
      known.leads.push(lead);
      open.set(key, known);
    }
  });
  return [...open.values()];
}

/** Between two ends that are held. */
function supportsBetween(lengthMm: number, everyMm: number): number {
  return Math.max(0, Math.ceil(lengthMm / everyMm - sameShare) - 1);
}

/** Lengths in inches are rounded in their last binary digits. */
const sameShare = 1e-9;

/** Equal for conductors along the same path, in either direction; undefined beyond the free end of a channel. */
function keyOf({ surface, path }: Stretch): string | undefined {
  if (surface === undefined || !path) return undefined;
  const points = path.map(({ x, y }) => `${x},${y}`);
  const [first, last] = [points[0]!, points.at(-1)!];
  return `${surface} ${(first <= last ? points : points.reverse()).join(" ")}`;
}

/** The conductors between the positive terminal of a battery and a disconnect, through fuses and breakers between them. */
function leadsToDisconnect({ layout: { leads, bodies } }: Placement): ReadonlySet<number> {
  const at = new Map<number, number[]>();
  for (const { index, from, to } of leads)
    for (const { body } of [from, to]) {
      const known = at.get(body) ?? [];
      known.push(index);
      at.set(body, known);
    }
  const strict = new Set<number>();
  const follow = (body: number, way: readonly number[]) => {
    for (const index of at.get(body) ?? []) {
      if (way.includes(index)) continue;
      const { from, to } = leads[index]!;
      const [here, there] = from.body === body ? [from, to] : [to, from];
      if (way.length === 0 && here.terminal !== "positive") continue;
      const { word } = bodies[there.body]!;
      if (word === "disconnect") for (const lead of [...way, index]) strict.add(lead);
      else if (word !== "circuit" && descriptorOfWord(word).protects && way.length < mostInARow)
        follow(there.body, [...way, index]);
    }
  };
  for (const { index, word } of bodies) if (word === "battery") follow(index, []);
  return strict;
}

/** A fuse and a breaker one behind the other are rare, and more of them never end at a disconnect. */
const mostInARow = 3;
