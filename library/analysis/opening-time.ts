import type { OpeningTimes, Protection } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { type Gate, type TimeCurrentGates, timeCurrentGates } from "../standards/time-current-gates.ts";
import { withoutDust } from "./rounding-dust.ts";

/** The figures that determine the opening time of a device. */
export type TimedDevice = Pick<Protection, "ratingA" | "family" | "opening" | "letThroughA2s">;

/** How long a protective device may take to open at a current. */
export type OpeningTime =
  | {
      readonly judged: true;
      /** It must have opened by then, s. */
      readonly openingS: number;
      /** The gate that {@link openingS} was taken from, % of the rating. */
      readonly atPercent: number;
      readonly source: Citation;
    }
  | {
      readonly judged: false;
      /**
       * The plan names no family; no gates are known for the family, or none for so great a rating; or the current is so
       * small that it need not open at all.
       */
      readonly why: "no-family" | "no-gates" | "need-not-open";
      /** Source of the gate that was used; undefined if there is none. */
      readonly source: Citation | undefined;
    };

/**
 * From the family's time-current gates, without interpolation: the greatest time of the greatest multiple of the rating at or
 * below the current.
 */
export function openingTime(device: TimedDevice, currentA: number): OpeningTime {
  const table = gatesFor(device);
  if (!table) {
    return { judged: false, why: device.family ? "no-gates" : "no-family", source: undefined };
  }
  const percent = percentOfRating(device, currentA);
  const reached = table.gates.findLast((gate) => gate.percentOfRating <= percent);
  if (!reached || reached.maxS === null)
    return { judged: false, why: "need-not-open", source: sourceOf(reached ?? table.gates[0], table) };
  return {
    judged: true,
    openingS: reached.maxS,
    atPercent: reached.percentOfRating,
    source: sourceOf(reached, table),
  };
}

/** Of one gate: some of a table were read, others recalled. */
export function sourceOf(gate: Gate | undefined, { source }: OpeningTimes): Citation {
  return gate ? { ...source, confirmed: gate.confirmed } : source;
}

/**
 * Minimum time before a device opens: the least time of the smallest multiple of the rating at or above the current.
 * Beyond the last multiple it falls with the square of the current, as melting does without time for heat to escape
 * (from memory). Undefined if no gate gives it.
 */
export function earliestOpening(
  device: TimedDevice,
  currentA: number,
): { readonly notBeforeS: number; readonly source: Citation } | undefined {
  const table = gatesFor(device);
  const percent = percentOfRating(device, currentA);
  const gate = table?.gates.find(({ percentOfRating }) => percentOfRating >= percent) ?? table?.gates.at(-1);
  if (!table || !gate || gate.minS === null) return undefined;
  const beyond = Math.max(1, percent / gate.percentOfRating);
  return { notBeforeS: gate.minS / beyond ** 2, source: sourceOf(gate, table) };
}

/**
 * The middle of the times that the gates permit, on the scale of their logarithms, with straight lines between the gates: the time of an
 * ordinary device, for want of its curve. Undefined if the gates at the current lack a least or a greatest time.
 */
export function middleOpening(
  device: TimedDevice,
  currentA: number,
): { readonly openingS: number; readonly source: Citation } | undefined {
  const table = gatesFor(device);
  return table && middleIn(table, percentOfRating(device, currentA));
}

function middleIn(
  table: OpeningTimes,
  percent: number,
): { readonly openingS: number; readonly source: Citation } | undefined {
  const next = table.gates.findIndex(({ percentOfRating }) => percentOfRating >= percent);
  const gate = table.gates.at(next);
  const middleS = gate && middleOf(gate);
  if (!gate || middleS === undefined) return undefined;
  const source = sourceOf(gate, table);
  const beyond = percent / gate.percentOfRating;
  // Beyond the last gate as in `earliestOpening`.
  if (beyond >= 1) return { openingS: middleS / beyond ** 2, source };
  const before = table.gates[next - 1];
  const beforeS = before && middleOf(before);
  if (!before || beforeS === undefined) return undefined;
  const slope = Math.log(middleS / beforeS) / Math.log(gate.percentOfRating / before.percentOfRating);
  return { openingS: middleS * beyond ** slope, source };
}

/**
 * The middle of the times of the slowest family, for a fuse whose own gates do not reach the current: no ordinary one is slower. Undefined
 * at currents for which a family has no such times.
 */
export function slowestMiddle(
  device: Pick<Protection, "ratingA">,
  currentA: number,
): { readonly openingS: number; readonly source: Citation } | undefined {
  const percent = percentOfRating(device, currentA);
  const middles = completeTables.map((table) => middleIn(table, percent));
  return middles.reduce((one, other) =>
    one && other && one.openingS < other.openingS ? other : one && other,
  );
}

/** Those that give a least and a greatest time at the multiples of a start. */
const completeTables: readonly TimeCurrentGates[] = timeCurrentGates.filter(({ gates }) => {
  const ofStarts = gates.filter(({ percentOfRating }) => percentOfRating >= 200);
  return ofStarts.length > 1 && ofStarts.every((gate) => middleOf(gate) !== undefined);
});

function middleOf({ minS, maxS }: Gate): number | undefined {
  return minS !== null && maxS !== null ? Math.sqrt(minS * maxS) : undefined;
}

/** The gates that the plan states for a device, else those of its family at its rating; undefined if none are known. */
export function gatesFor({ ratingA, family, opening }: TimedDevice): OpeningTimes | undefined {
  if (opening) return opening;
  if (!family) return undefined;
  return timeCurrentGates.find(
    ({ families, ratingsA: [above, upTo] }: TimeCurrentGates) =>
      families.includes(family) && above < ratingA && ratingA <= upTo,
  );
}

/** Without the dust of binary fractions: 135 % of 7.5 A is exactly 135 % of it. */
export function percentOfRating({ ratingA }: Pick<Protection, "ratingA">, currentA: number): number {
  return withoutDust((100 * currentA) / ratingA);
}
