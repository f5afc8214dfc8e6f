import type { LengthUnit } from "../../model/length-unit.ts";
import type { Layout, Lead } from "../../model/placement/layout.ts";
import type { PlaceOnWay, WayLengths, Ways } from "../../model/placement/run-way.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { placementOf } from "./placement.ts";
import type { Stretch, Way } from "./ways.ts";

/** No conductor between two terminals is shorter, m: the least length that a plan may state, too. */
const leastM = 0.01;

/**
 * The way of each run whose conductors all have one: the lengths of its conductors, with the slack of the build, and the places that
 * they pass through. The slack lies in the way, so the current flows through it too.
 */
export function waysOfRuns(layout: Layout, slackPercent: number, unit: LengthUnit): Ways {
  const known = bySlack(layout);
  const key = `${slackPercent} ${unit}`;
  const ways = known.get(key) ?? findAll(layout, slackPercent, unit);
  known.set(key, ways);
  return ways;
}

/** By slack and unit. */
const bySlack = workedOutOnce((_: Layout) => new Map<string, Ways>());

/** The length of a conductor along its way, with the slack of the build, m. */
export function laidLengthM({ lengthMm }: Pick<Way, "lengthMm">, slackPercent: number): number {
  return Math.max(leastM, (lengthMm / 1_000) * (1 + slackPercent / 100));
}

function findAll(layout: Layout, slackPercent: number, unit: LengthUnit): Ways {
  const { ways } = placementOf(layout);
  const found = new Map<number, WayLengths>();
  const byRecord = new Map<number, Lead[]>();
  for (const lead of layout.leads) byRecord.set(lead.record, [...(byRecord.get(lead.record) ?? []), lead]);
  for (const [record, leads] of byRecord) {
    const own = leads.map(({ index }) => ways[index]!);
    if (!own.every((way): way is Way => way.state === "found")) continue;
    const [positiveM, negativeM = 0] = own.map((way) => laidLengthM(way, slackPercent));
    const stretches = own.flatMap(({ stretches }) => stretches);
    found.set(record, { positiveM: positiveM!, negativeM, unit, places: placesOn(stretches, layout) });
  }
  return found;
}

function placesOn(stretches: readonly Stretch[], layout: Layout): readonly PlaceOnWay[] {
  const places = stretches.flatMap(({ channel, surface }) => placeOf(channel, surface, layout) ?? []);
  return [...new Map(places.map((place) => [place.name, place])).values()];
}

function placeOf(
  channel: number | undefined,
  surface: number | undefined,
  { channels, surfaces }: Layout,
): PlaceOnWay | undefined {
  const place = channel === undefined ? surfaces[surface ?? -1] : channels[channel];
  if (!place) return undefined;
  const { name, ambientC, engineSpace } = place;
  return {
    name,
    ...(ambientC !== undefined && { ambientC }),
    ...(engineSpace !== undefined && { engineSpace }),
  };
}
