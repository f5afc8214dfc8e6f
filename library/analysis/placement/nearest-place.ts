import type { Body, BodyOnSurface, Layout, QuarterTurn, Rectangle } from "../../model/placement/layout.ts";
import { besideHeat, fromPetrol, fuelAboveBattery, spanner } from "../../standards/placement-distances.ts";
import { type BoardFacts, mountedBodies, withOutline } from "./bodies.ts";
import { type BodyFault, keyOfFault } from "./body-fault.ts";
import { bodyFaults } from "./body-faults.ts";
import { trunkingLegs } from "./channel-legs.ts";
import { movedBy, turnedTo, withBody } from "./moved-body.ts";
import { across, down, type Span } from "./rectangles.ts";

/** A place of a body that mends a fault, and has no other fault that was not there. */
export interface NearestPlace {
  /** In the unit of the plan. */
  readonly left: number;
  readonly top: number;
  readonly movedMm: { readonly right: number; readonly down: number };
}

/** The grid of new places, mm: 5 mm, or a quarter of an inch. */
const gridMm = { mm: 5, in: 6.35 } as const;
const mmPerInch = 25.4;

/** The number of places that are tried. */
const mostPlaces = 200;

/**
 * The nearest place on the grid at which a body no longer has a fault. Places tried are those at the edges of all that is on its
 * surface, with the distances that are asked there. Undefined if none of them mends it.
 */
export function nearestPlace(facts: BoardFacts, fault: BodyFault): NearestPlace | undefined {
  const body = facts.layout.bodies[fault.body];
  if (body?.place?.kind !== "on surface") return undefined;
  const { outline, statedIn } = body.place;
  if (!statedIn) return undefined;
  const known = new Set(bodyFaults(facts).map(keyOfFault));
  known.delete(keyOfFault(fault));
  for (const { x, y } of placesNear(facts.layout, body, body.place, fault)) {
    const moved = movedBy(body, x - outline.x, y - outline.y);
    const after = bodyFaults({ ...facts, layout: withBody(facts.layout, moved) });
    if (!after.every((one) => known.has(keyOfFault(one)))) continue;
    const written = (mm: number) => (statedIn === "mm" ? mm : Number((mm / mmPerInch).toFixed(6)));
    return {
      left: written(x),
      top: written(y),
      movedMm: { right: x - outline.x, down: y - outline.y },
    };
  }
  return undefined;
}

/** The quarter turns, at the same left and top edge, that mend a fault and bring no other one. */
export function mendingTurns(facts: BoardFacts, fault: BodyFault): readonly QuarterTurn[] {
  const body = facts.layout.bodies[fault.body];
  if (body?.place?.kind !== "on surface" || !body.place.statedIn) return [];
  const known = new Set(bodyFaults(facts).map(keyOfFault));
  known.delete(keyOfFault(fault));
  const { turnedDeg } = body.place;
  return ([0, 90, 270, 180] as const).filter((turn) => {
    if (turn === turnedDeg) return false;
    const turned = turnedTo(facts.layout, body, turn);
    const after = bodyFaults({ ...facts, layout: withBody(facts.layout, turned) });
    return after.every((one) => known.has(keyOfFault(one)));
  });
}

function placesNear(
  layout: Layout,
  body: Body,
  place: BodyOnSurface,
  fault: BodyFault,
): readonly { readonly x: number; readonly y: number }[] {
  const { outline, statedIn = "mm" } = place;
  const surface = layout.surfaces[place.surface]!;
  const others = withOutline(mountedBodies(layout)).filter(
    (other) => other.surface === surface && other.body !== body,
  );
  const obstacles: readonly Rectangle[] = [
    ...others.map((other) => other.outline),
    ...surface.keepFree,
    ...surface.outOfReach,
    ...surface.fixtures,
    ...layout.channels.flatMap((channel) => trunkingLegs(channel, place.surface)),
  ];
  const gaps = [
    ...[0, besideHeat.leastMm, spanner.lengthMm, fromPetrol.leastFt * 12 * mmPerInch],
    fuelAboveBattery.withinIn * mmPerInch,
    ...[body, ...others.map((other) => other.body)].flatMap(({ air }) => Object.values(air)),
    ...surface.fixtures.flatMap(({ distanceMm }) => distanceMm ?? []),
  ];
  const lacksMm = "needsMm" in fault ? fault.needsMm - fault.isMm : 0;
  const edges = (axis: typeof across, length: number, raisedMm: number) => {
    const own = axis(outline);
    return distinct([
      own.from,
      ...[own.from - lacksMm, own.from - raisedMm].map((at) => onGrid(at, statedIn, Math.floor)),
      onGrid(own.from + lacksMm, statedIn, Math.ceil),
      ...[axis === across ? surface.width : surface.height].map((end) =>
        onGrid(end - length, statedIn, Math.floor),
      ),
      0,
      ...obstacles.flatMap((obstacle) => beside(axis(obstacle), length, new Set(gaps), statedIn)),
    ]).filter((at) => at >= 0);
  };
  const raisedMm = fault.kind === "bilge water" ? fault.byMm : 0;
  const lefts = edges(across, outline.width, 0);
  const tops = edges(down, outline.height, raisedMm);
  const distance = ({ x, y }: { readonly x: number; readonly y: number }) =>
    Math.hypot(x - outline.x, y - outline.y);
  return lefts
    .flatMap((x) => tops.map((y) => ({ x, y })))
    .filter((at) => distance(at) > 0)
    .sort((one, other) => distance(one) - distance(other) || one.x - other.x || one.y - other.y)
    .slice(0, mostPlaces);
}

/** Just before and just behind an obstacle, with each gap. */
function beside(
  { from, to }: Span,
  length: number,
  gaps: ReadonlySet<number>,
  unit: "mm" | "in",
): readonly number[] {
  return [...gaps].flatMap((gap) => [
    onGrid(from - gap - length, unit, Math.floor),
    onGrid(to + gap, unit, Math.ceil),
  ]);
}

/** Rounding of binary fractions is taken off first: 3 × 6.35 is on the grid. */
function onGrid(mm: number, unit: "mm" | "in", rounded: (steps: number) => number): number {
  const steps = Number((mm / gridMm[unit]).toFixed(6));
  return Number((rounded(steps) * gridMm[unit]).toFixed(6));
}

function distinct(numbers: readonly number[]): readonly number[] {
  return [...new Set(numbers)];
}
