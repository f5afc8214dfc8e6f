import { movedWith, withBody, withoutPlace } from "../../analysis/placement/moved-body.ts";
import type { Placement } from "../../analysis/placement/placement.ts";
import { lengthOfPath } from "../../analysis/placement/rectangles.ts";
import { waysOf } from "../../analysis/placement/ways.ts";
import type { BoardUnit } from "../../model/length-unit.ts";
import type { Body, BodyPlace, Channel, Layout, PlaceOnSurface } from "../../model/placement/layout.ts";
import { boardUnitOf } from "../../model/unit-of-plan.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { counted } from "../../rules/wording/format-number.ts";
import { shortLengthInUnit } from "../../rules/wording/lengths.ts";
import { differ } from "./changed-properties.ts";
import type { ChangedPair } from "./effects.ts";
import type { Subject } from "./subject.ts";

/** A part or a channel that moved, and the runs whose lengths follow it. */
export interface Move {
  readonly subject: Subject;
  /**
   * Between its two places, mm; undefined for a part that is on another surface or at the end of a channel, and for a channel with
   * another course.
   */
  readonly distanceMm: number | undefined;
  /** In which people read it. */
  readonly unit: BoardUnit;
  /**
   * Runs whose length is that of their way on both sides, another one now, and would again be another one if this alone had stayed:
   * those that end at it, lead through it, or pass around it. Of very many moves in a large plan, only those that end at it or lead
   * through it.
   */
  readonly lengths: number;
}

/** @param pairs The subjects that both plans have. */
export function movesBetween(before: Placed, after: Placed, pairs: readonly ChangedPair[]): readonly Move[] {
  const [was, is] = [before.placement?.layout, after.placement?.layout];
  if (!was || !is) return [];
  const earlier = new EarlierPlaces(was, is, pairs);
  const changed = runsOfOtherLength(before, after, pairs);
  const all = pairs.flatMap(({ before: old, after: subject }) => {
    const moved =
      subject.kind === "channel"
        ? movedChannel(earlier, of(was.channels, old), of(is.channels, subject))
        : movedPart(earlier, of(was.bodies, old), of(is.bodies, subject));
    return moved ? [{ ...moved, subject }] : [];
  });
  const follow = all.length * changed.size <= mostTries ? followers : touching;
  return all.map(({ subject, ...moved }) => {
    const runs = new Set(follow(changed, after.placement!, moved));
    return { subject, distanceMm: moved.distanceMm, unit: boardUnitOf(is), lengths: runs.size };
  });
}

/** Moves times runs of another length: each run is laid again for each move, for some ten seconds at this number. */
const mostTries = 10_000;

type Placed = Pick<JudgedPlan, "placement" | "circuits">;

/** "moved 80 mm, 12 lengths follow". */
export function moveInWords({ subject, distanceMm, unit, lengths }: Move): string {
  const elsewhere = subject.kind === "channel" ? "has another course" : "moved to another place";
  const moved = distanceMm === undefined ? elsewhere : `moved ${shortLengthInUnit(distanceMm, unit)}`;
  if (lengths === 0) return `${moved}, no length follows`;
  return `${moved}, ${counted(lengths, "length")} ${lengths === 1 ? "follows" : "follow"}`;
}

function of<Thing extends { readonly record: number }>(
  things: readonly Thing[],
  { record }: Subject,
): Thing | undefined {
  return things.find((thing) => thing.record === record);
}

/** Places of the earlier layout in the later one, which has its own list of surfaces and channels. */
class EarlierPlaces {
  /** The later layout, with the earlier surfaces behind its own: a place on one that is gone is still a place. */
  readonly layout: Layout;
  readonly #surfaces: readonly number[];
  readonly #channels: readonly (number | undefined)[];

  constructor(was: Layout, is: Layout, pairs: readonly ChangedPair[]) {
    const laterOf = new Map(pairs.map(({ before, after }) => [before.record, after.record]));
    const indexIn = (things: readonly { readonly record: number }[], record: number) => {
      const index = things.findIndex((thing) => thing.record === laterOf.get(record));
      return index < 0 ? undefined : index;
    };
    this.layout = { ...is, surfaces: [...is.surfaces, ...was.surfaces] };
    this.#surfaces = was.surfaces.map(
      ({ record }, index) => indexIn(is.surfaces, record) ?? is.surfaces.length + index,
    );
    this.#channels = was.channels.map(({ record }) => indexIn(is.channels, record));
  }

  /** Undefined at the end of a channel that is gone. */
  place(place: BodyPlace): BodyPlace | undefined {
    if (place.kind === "on surface") return { ...place, surface: this.#surfaces[place.surface]! };
    const channel = this.#channels[place.channel];
    return channel === undefined ? undefined : { ...place, channel };
  }

  course(course: Channel["course"]): Channel["course"] {
    if (course.kind === "along") return { ...course, surface: this.#surfaces[course.surface]! };
    const { from, to } = course;
    return {
      ...{ ...course, from: { ...from, surface: this.#surfaces[from.surface]! } },
      ...(to && { to: { ...to, surface: this.#surfaces[to.surface]! } }),
    };
  }
}

interface Moved {
  readonly distanceMm: number | undefined;
  /** Indices in the later layout: the part, or the channel. */
  readonly body?: number;
  readonly channel?: number;
  /** The later layout, if this alone had stayed. */
  readonly stayed: Layout;
}

function movedPart(earlier: EarlierPlaces, old: Body | undefined, now: Body | undefined): Moved | undefined {
  if (!old?.place || !now?.place) return undefined;
  const from = earlier.place(old.place);
  if (isSamePlace(from, now.place)) return undefined;
  const stayed =
    from?.kind === "on surface" && now.place.kind === "on surface"
      ? movedWith(now, now.place, from)
      : { ...withoutPlace(now), ...(from && { place: from }), terminals: old.terminals };
  const distanceMm = distanceBetween(from, now.place);
  return { distanceMm, body: now.index, stayed: withBody(earlier.layout, stayed) };
}

function isSamePlace(one: BodyPlace | undefined, other: BodyPlace): boolean {
  if (one?.kind === "at end" && other.kind === "at end")
    return one.channel === other.channel && isNothing(one.beyondMm - other.beyondMm);
  const distanceMm = distanceBetween(one, other);
  return distanceMm !== undefined && isNothing(distanceMm);
}

/** Undefined unless both are on one surface. */
function distanceBetween(one: BodyPlace | undefined, other: BodyPlace): number | undefined {
  if (one?.kind !== "on surface" || other.kind !== "on surface" || one.surface !== other.surface)
    return undefined;
  return Math.hypot(other.outline.x - one.outline.x, other.outline.y - one.outline.y);
}

function movedChannel(
  earlier: EarlierPlaces,
  old: Channel | undefined,
  now: Channel | undefined,
): Moved | undefined {
  if (!old || !now) return undefined;
  const from = earlier.course(old.course);
  const distanceMm = distanceOfCourses(from, now.course);
  if (distanceMm !== undefined && isNothing(distanceMm)) return undefined;
  const { layout } = earlier;
  const channels = layout.channels.map((channel) =>
    channel === now ? { ...channel, course: from } : channel,
  );
  return { distanceMm, channel: layout.channels.indexOf(now), stayed: { ...layout, channels } };
}

/** Undefined unless both have the same shape, on the same surfaces, and each place is as far from the other one. */
function distanceOfCourses(one: Channel["course"], other: Channel["course"]): number | undefined {
  const [places, others] = [placesOf(one), placesOf(other)];
  if (one.kind !== other.kind || places.length !== others.length) return undefined;
  if (!isNothing(lengthOf(one) - lengthOf(other))) return undefined;
  const [first, ...rest] = places.map(({ surface, x, y }, at) => {
    const there = others[at]!;
    return surface === there.surface ? { x: there.x - x, y: there.y - y } : undefined;
  });
  if (!first || rest.some((by) => !by || !isNothing(Math.hypot(by.x - first.x, by.y - first.y))))
    return undefined;
  return Math.hypot(first.x, first.y);
}

function placesOf(course: Channel["course"]): readonly PlaceOnSurface[] {
  if (course.kind === "along") return course.path.map((point) => ({ ...point, surface: course.surface }));
  return course.to ? [course.from, course.to] : [course.from];
}

function lengthOf(course: Channel["course"]): number {
  return course.kind === "along" ? lengthOfPath(course.path) : course.lengthMm;
}

/** Of lengths in inches, the last binary digits are rounded. */
function isNothing(mm: number): boolean {
  return Math.abs(mm) < 1e-6;
}

/** Records of the runs in the later plan whose length is that of their way in both, and not the same. */
function runsOfOtherLength(
  before: Placed,
  after: Placed,
  pairs: readonly ChangedPair[],
): ReadonlySet<number> {
  const [was, is] = [lengthsByRecord(before), lengthsByRecord(after)];
  return new Set(
    pairs.flatMap(({ before: { record: old = -1 }, after: { record: now = -1 } }) => {
      const [one, other] = [was.get(old), is.get(now)];
      return one && other && differ(one, other) ? [now] : [];
    }),
  );
}

/** Of runs whose length is that of their way, m: of the positive and of the return. */
function lengthsByRecord({ circuits }: Placed): ReadonlyMap<number, readonly number[]> {
  return new Map(
    circuits.flatMap(({ circuit: { record, lengthsFrom, positiveM, negativeM } }) =>
      lengthsFrom === "way" && positiveM !== undefined && negativeM !== undefined
        ? [[record, [positiveM, negativeM]] as const]
        : [],
    ),
  );
}

/** Those runs that have another way if it had stayed. */
function followers(
  runs: ReadonlySet<number>,
  { layout, ways }: Placement,
  { stayed }: Moved,
): readonly number[] {
  if (runs.size === 0) return [];
  const leads = layout.leads.filter(({ record }) => runs.has(record));
  const otherWays = waysOf({ ...stayed, leads: leads.map((lead, index) => ({ ...lead, index })) });
  const follow = leads.filter((lead, index) => {
    const [one, two] = [ways[lead.index]!, otherWays[index]!];
    if (one.state !== "found" || two.state !== "found") return one.state !== two.state;
    return !isNothing(one.lengthMm - two.lengthMm);
  });
  return follow.map(({ record }) => record);
}

/** Those runs that end at it or at a part mounted on it, or lead through it. */
function touching(
  runs: ReadonlySet<number>,
  { layout, ways }: Placement,
  { body, channel }: Moved,
): readonly number[] {
  const isAt = (end: number) => end === body || layout.bodies[end]!.mountedOn === body;
  return layout.leads.flatMap(({ index, record, from, to }) => {
    if (!runs.has(record)) return [];
    const way = ways[index]!;
    const isThrough =
      channel !== undefined &&
      way.state === "found" &&
      way.stretches.some((stretch) => stretch.channel === channel);
    return isThrough || (body !== undefined && (isAt(from.body) || isAt(to.body))) ? [record] : [];
  });
}
