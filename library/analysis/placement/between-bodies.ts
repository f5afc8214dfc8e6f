import type { Body, Side } from "../../model/placement/layout.ts";
import { besideHeat, spanner } from "../../standards/placement-distances.ts";
import { type BoardFacts, givesHeat, type MountedBody, pairsOf, partOf, withOutline } from "./bodies.ts";
import type { BodyFault } from "./body-fault.ts";
import { across, commonOf, distanceBetween, down, isLess, overlap, spansMeet } from "./rectangles.ts";

/** The faults between two bodies on one surface. */
export function faultsBetweenBodies(
  facts: BoardFacts,
  mounted: readonly MountedBody[],
): readonly BodyFault[] {
  return pairsOf(withOutline(mounted)).flatMap(([one, other]) => {
    if (overlap(one.outline, other.outline)) return [overlapOf(one, other)];
    return [
      ...airNotKept(one, other),
      ...heatReaching(facts, one, other),
      ...heatReaching(facts, other, one),
      ...barsTooClose(facts, one, other),
      ...spillOnto(facts, one, other),
      ...spillOnto(facts, other, one),
    ];
  });
}

function overlapOf(one: MountedBody, other: MountedBody): BodyFault {
  const common = (axis: typeof across) => commonOf(axis(one.outline), axis(other.outline));
  return {
    kind: "overlap",
    body: other.body.index,
    other: one.body.index,
    acrossMm: common(across),
    downMm: common(down),
  };
}

/** Two bodies that face one another keep the larger of both distances. */
function airNotKept(one: MountedBody, other: MountedBody): readonly BodyFault[] {
  if (spansMeet(down(one.outline), down(other.outline)))
    return airAlong(across, ["right", "left"], one, other);
  if (spansMeet(across(one.outline), across(other.outline)))
    return airAlong(down, ["bottom", "top"], one, other);
  return [];
}

function airAlong(
  axis: typeof across,
  [after, before]: readonly [Side, Side],
  one: MountedBody,
  other: MountedBody,
): readonly BodyFault[] {
  const isOneFirst = axis(one.outline).from <= axis(other.outline).from;
  const [first, second] = isOneFirst ? [one, other] : [other, one];
  const isMm = Math.max(0, axis(second.outline).from - axis(first.outline).to);
  const [ofFirst, ofSecond] = [first.body.air[after] ?? 0, second.body.air[before] ?? 0];
  const needsMm = Math.max(ofFirst, ofSecond);
  if (!isLess(isMm, needsMm)) return [];
  // It is the finding of the body whose air is not kept.
  const [asking, near, side] = ofFirst >= ofSecond ? [first, second, after] : [second, first, before];
  return [{ kind: "air", body: asking.body.index, other: near.body.index, side, isMm, needsMm }];
}

/** The least distance that a body keeps from another one, mm, besides air; and whether it may hang above that one on a wall. */
export function demandsBetween(facts: BoardFacts, body: Body, other: Body): DemandsBetween {
  const staysCool = isWarmedBy(facts, body, other);
  return {
    leastMm: Math.max(
      staysCool || isWarmedBy(facts, other, body) ? besideHeat.leastMm : 0,
      areBarsWithinReach(facts, body, other) ? spanner.lengthMm : 0,
    ),
    notAbove: staysCool || canSpillOn(facts, body, other),
  };
}

export interface DemandsBetween {
  readonly leastMm: number;
  readonly notAbove: boolean;
}

function isWarmedBy(facts: BoardFacts, cool: Body, warm: Body): boolean {
  return cool.keepCool && givesHeat(facts, warm);
}

function heatReaching(facts: BoardFacts, cool: MountedBody, warm: MountedBody): readonly BodyFault[] {
  if (!isWarmedBy(facts, cool.body, warm.body)) return [];
  const isMm = distanceBetween(cool.outline, warm.outline);
  const isBelow =
    cool.surface.orientation === "vertical" &&
    spansMeet(across(cool.outline), across(warm.outline)) &&
    down(warm.outline).from > down(cool.outline).from;
  const found = { kind: "heat", body: cool.body.index, other: warm.body.index, isMm } as const;
  if (isBelow) return [{ ...found, how: "below" }];
  const isBeside =
    cool.surface.orientation !== "vertical" || spansMeet(down(cool.outline), down(warm.outline));
  return isBeside && isLess(isMm, besideHeat.leastMm) ? [{ ...found, how: "beside" }] : [];
}

function barsTooClose(facts: BoardFacts, one: MountedBody, other: MountedBody): readonly BodyFault[] {
  if (!areBarsWithinReach(facts, one.body, other.body)) return [];
  const isMm = distanceBetween(one.outline, other.outline);
  if (!isLess(isMm, spanner.lengthMm)) return [];
  const isBare = one.body.terminalsCovered === false && other.body.terminalsCovered === false;
  return [{ kind: "bus bars", body: other.body.index, other: one.body.index, isMm, isBare }];
}

/** Of a spanner that touches both: a positive and a negative bar, neither of which is stated to be covered. */
function areBarsWithinReach(facts: BoardFacts, one: Body, other: Body): boolean {
  if (one.terminalsCovered || other.terminalsCovered) return false;
  const sides = [polarityOfBar(facts, one), polarityOfBar(facts, other)];
  return sides.includes("positive") && sides.includes("negative");
}

function polarityOfBar(facts: BoardFacts, body: Body): string | undefined {
  const part = partOf(facts, body);
  return part?.kind === "busBar" ? part.sides[0] : undefined;
}

/** Acid runs down a wall; batteries of the same kind take it best. */
function spillOnto(facts: BoardFacts, battery: MountedBody, under: MountedBody): readonly BodyFault[] {
  if (battery.surface.orientation !== "vertical") return [];
  if (!canSpillOn(facts, battery.body, under.body)) return [];
  if (!spansMeet(across(battery.outline), across(under.outline))) return [];
  if (down(under.outline).from <= down(battery.outline).from) return [];
  return [{ kind: "spill", body: battery.body.index, other: under.body.index }];
}

function canSpillOn(facts: BoardFacts, battery: Body, under: Body): boolean {
  return partOf(facts, battery)?.isFlooded === true && partOf(facts, under)?.kind !== "battery";
}
