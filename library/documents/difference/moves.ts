import type { BoardUnit } from "../../model/length-unit.ts";
import { boardUnitOf } from "../../model/unit-of-plan.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { counted } from "../../rules/wording/format-number.ts";
import { shortLengthInUnit } from "../../rules/wording/lengths.ts";
import type { ChangedPair } from "./effects.ts";
import type { Subject } from "./subject.ts";

/** A part that moved, and the conductors whose lengths follow it. */
export interface Move {
  readonly subject: Subject;
  /** Between its two places, mm; undefined if it is on another surface, or at the end of a channel. */
  readonly distanceMm: number | undefined;
  /** In which people read it. */
  readonly unit: BoardUnit;
  /** Runs whose length is that of their way on both sides, and another one now. */
  readonly lengths: number;
}

/** @param changedRuns The runs of both plans, as pairs. */
export function movesBetween(before: Placed, after: Placed, pairs: readonly ChangedPair[]): readonly Move[] {
  const [was, is] = [placesByRecord(before), placesByRecord(after)];
  const lengthBefore = lengthsByRecord(before);
  const lengthAfter = lengthsByRecord(after);
  return pairs.flatMap(({ before: old, after: now }): readonly Move[] => {
    const [from, to] = [was.get(old.record ?? -1), is.get(now.record ?? -1)];
    if (!from?.place || !to?.place || isSame(from, to)) return [];
    const follow = pairs.filter(({ before: one, after: other }) => {
      if (!to.runs.has(other.record ?? -1)) return false;
      const [long, now] = [lengthBefore.get(one.record ?? -1), lengthAfter.get(other.record ?? -1)];
      return long !== undefined && now !== undefined && long !== now;
    });
    return [
      {
        subject: now,
        distanceMm: distance(from, to),
        unit: boardUnitOf(after.placement!.layout),
        lengths: follow.length,
      },
    ];
  });
}

type Placed = Pick<JudgedPlan, "placement" | "circuits">;

/** "moved 80 mm, 12 lengths follow". */
export function moveInWords({ distanceMm, unit, lengths }: Move): string {
  const moved =
    distanceMm === undefined ? "moved to another place" : `moved ${shortLengthInUnit(distanceMm, unit)}`;
  if (lengths === 0) return `${moved}, no length follows`;
  return `${moved}, ${counted(lengths, "length")} ${lengths === 1 ? "follows" : "follow"}`;
}

type PlacedBody = NonNullable<ReturnType<ReturnType<typeof placesByRecord>["get"]>>;

function placesByRecord({ placement }: Placed) {
  const { bodies = [], leads = [], surfaces = [], channels = [] } = placement?.layout ?? {};
  return new Map(
    bodies.map(({ record, index, place }) => {
      const there =
        place?.kind === "on surface"
          ? surfaces[place.surface]!.name
          : place && `the end of ${channels[place.channel]!.name}`;
      const runs = new Set(
        leads.flatMap(({ from, to, record: run }) => (from.body === index || to.body === index ? [run] : [])),
      );
      return [record, { place, there, runs }] as const;
    }),
  );
}

/** Of runs whose length is that of their way, m. */
function lengthsByRecord({ circuits }: Placed): ReadonlyMap<number, number> {
  return new Map(
    circuits.flatMap(({ circuit: { record, lengthsFrom, positiveM, negativeM } }) =>
      lengthsFrom === "way" && positiveM !== undefined && negativeM !== undefined
        ? [[record, positiveM + negativeM] as const]
        : [],
    ),
  );
}

function isSame(one: PlacedBody, other: PlacedBody): boolean {
  return (
    one.there === other.there && distance(one, other) === (one.place?.kind === "on surface" ? 0 : undefined)
  );
}

function distance(
  { place: one, there }: PlacedBody,
  { place: other, there: then }: PlacedBody,
): number | undefined {
  if (one?.kind !== "on surface" || other?.kind !== "on surface" || there !== then) return undefined;
  return Math.hypot(other.outline.x - one.outline.x, other.outline.y - one.outline.y);
}
