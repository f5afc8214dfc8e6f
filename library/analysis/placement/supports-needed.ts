import { workedOutOnce } from "../../model/worked-out-once.ts";
import { supports } from "../../standards/conductor-ways.ts";
import { channelSections } from "./channel-sections.ts";
import type { Placement } from "./placement.ts";
import type { Stretch } from "./ways.ts";

/** A bundle whose stated supports are too far apart. */
interface SparseBundle {
  /** Index in the channels of the layout. */
  readonly channel: number;
  readonly statedMm: number;
  readonly everyMm: number;
  /** A conductor from a battery to its disconnect, which asks for the smaller distance; absent if none is in it. */
  readonly toDisconnect?: number;
  readonly needed: number;
}

/** A stretch that needs supports of its own, in the open or in a bundle without stated supports. */
interface Unsupported {
  /** Index of the channel; absent in the open. */
  readonly channel?: number;
  /** Index of a conductor in it. */
  readonly lead: number;
  readonly lengthMm: number;
  readonly everyMm: number;
  readonly needed: number;
}

export interface SupportsNeeded {
  readonly sparse: readonly SparseBundle[];
  readonly unsupported: readonly Unsupported[];
  /** To buy, all together. */
  readonly count: number;
}

/**
 * The supports of bundles and of stretches in the open. Trunking and conduit support their conductors throughout, and a hole holds them.
 *
 *     n = ⌈L / d⌉ − 1      in the open: between a terminal or channel at each end, L length, d greatest distance
 *     n = ⌈L / d⌉ + 1      of a bundle, with one at each of its ends
 *
 * Conductors that take the same path in the open share their supports.
 */
export const supportsNeeded = workedOutOnce((placement: Placement): SupportsNeeded => {
  const { layout, ways } = placement;
  const strict = leadsToDisconnect(placement);
  const everyMm = (leads: readonly number[]) =>
    leads.some((lead) => strict.has(lead)) ? supports.toDisconnect.everyMm : supports.everyMm;
  const sparse: SparseBundle[] = [];
  const unsupported: Unsupported[] = [];
  let count = 0;
  channelSections(placement).forEach((sections, channel) => {
    const { way, supportsEveryMm } = layout.channels[channel]!;
    if (way !== "bundle" || sections.length === 0) return;
    const leads = sections.flatMap((section) => section.leads);
    const lengthMm = sections.at(-1)!.untilMm - sections[0]!.fromMm;
    const distance = everyMm(leads);
    const needed = supportsOver(lengthMm, Math.min(distance, supportsEveryMm ?? distance)) + 2;
    count += needed;
    const toDisconnect = leads.find((lead) => strict.has(lead));
    if (supportsEveryMm === undefined)
      unsupported.push({ channel, lead: leads[0]!, lengthMm, everyMm: distance, needed });
    else if (supportsEveryMm > distance)
      sparse.push({
        ...{ channel, statedMm: supportsEveryMm, everyMm: distance, needed },
        ...(toDisconnect !== undefined && { toDisconnect }),
      });
  });
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
  for (const { lengthMm, leads } of open.values()) {
    const distance = everyMm(leads);
    const needed = supportsOver(lengthMm, distance);
    if (needed > 0) unsupported.push({ lead: leads[0]!, lengthMm, everyMm: distance, needed });
    count += needed;
  }
  return { sparse, unsupported, count };
});

function supportsOver(lengthMm: number, everyMm: number): number {
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
      else if ((word === "fuseHolder" || word === "breaker") && way.length < mostInARow)
        follow(there.body, [...way, index]);
    }
  };
  for (const { index, word } of bodies) if (word === "battery") follow(index, []);
  return strict;
}

/** A fuse and a breaker one behind the other are rare, and more of them never end at a disconnect. */
const mostInARow = 3;
