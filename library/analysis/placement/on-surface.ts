import { descriptorOfWord } from "../../model/parts/index.ts";
import type { Body, Fixture, Layout, Rectangle, Side, Surface } from "../../model/placement/layout.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { fromPetrol, fuelAboveBattery } from "../../standards/placement-distances.ts";
import { type BoardFacts, type MountedBody, partOf } from "./bodies.ts";
import type { BodyFault } from "./body-fault.ts";
import { trunkingLegs } from "./channel-legs.ts";
import { across, commonOf, distanceBetween, down, isLess, overlap, spansMeet } from "./rectangles.ts";

/** The faults of a body with its surface: edges, places, fixtures, water. */
export function faultsOnSurface(facts: BoardFacts, mounted: MountedBody): readonly BodyFault[] {
  const hasOutline = mounted.outline.width > 0;
  // The corner of a part without a size is stated, and all of it is on the right of it and below.
  const isStated = hasOutline || mounted.body.mountedOn === undefined;
  return [
    ...(isStated ? [...outside(mounted), ...inPlacesKeptFree(mounted)] : []),
    ...(hasOutline ? overChannels(facts, mounted) : []),
    ...outOfReach(mounted),
    ...notPermitted(mounted),
    ...inBilgeWater(facts, mounted),
    ...nearFixtures(facts, mounted),
    ...(hasOutline ? batteryAtFuel(facts, mounted) : []),
    ...exposed(facts, mounted),
  ];
}

function outside({ body, outline, surface }: MountedBody): readonly BodyFault[] {
  const beyond = beyondEdge(outline, surface);
  return beyond ? [{ kind: "outside", body: body.index, ...beyond }] : [];
}

/** The edge of a surface beyond which a rectangle or point reaches farthest. */
export function beyondEdge(
  outline: Rectangle,
  surface: Surface,
): { readonly side: Side; readonly byMm: number } | undefined {
  const beyond: Readonly<Record<Side, number>> = {
    left: -outline.x,
    right: outline.x + outline.width - surface.width,
    top: -outline.y,
    bottom: outline.y + outline.height - surface.height,
  };
  const sides = (["left", "right", "top", "bottom"] as const).filter((side) => isLess(0, beyond[side]));
  const [side] = sides.toSorted((one, other) => beyond[other] - beyond[one]);
  return side && { side, byMm: beyond[side] };
}

function inPlacesKeptFree({ body, outline, surface }: MountedBody): readonly BodyFault[] {
  return surface.keepFree.flatMap((area, index) =>
    overlap(outline, area) ? [{ kind: "kept free" as const, body: body.index, area: index }] : [],
  );
}

/** By the lesser of width and height of the place that both have. */
function overChannels({ layout }: BoardFacts, { body, outline, place }: MountedBody): readonly BodyFault[] {
  return trunkingOn(layout)[place.surface]!.flatMap(({ channel, legs }) => {
    const byMm = legs.map((leg) =>
      Math.min(commonOf(across(outline), across(leg)), commonOf(down(outline), down(leg))),
    );
    const most = Math.max(0, ...byMm);
    return isLess(0, most) ? [{ kind: "over channel" as const, body: body.index, channel, byMm: most }] : [];
  });
}

/** By surface: the trunking on it, with the index of the channel. */
const trunkingOn = workedOutOnce(({ surfaces, channels }: Layout) =>
  surfaces.map((_, surface) =>
    channels.flatMap((one, channel) => {
      const legs = trunkingLegs(one, surface);
      return legs.length > 0 ? [{ channel, legs }] : [];
    }),
  ),
);

function outOfReach({ body, outline, surface }: MountedBody): readonly BodyFault[] {
  if (!hasDevice(body)) return [];
  return surface.outOfReach.some((area) => overlap(outline, area))
    ? [{ kind: "reach", body: body.index }]
    : [];
}

/** It is a fuse or breaker, or has some in it. */
function hasDevice({ word }: Body): boolean {
  if (word === "circuit") return false;
  const { protects, holdsDevices } = descriptorOfWord(word);
  return protects === true || holdsDevices === true;
}

function notPermitted({ body, place }: MountedBody): readonly BodyFault[] {
  const { mountingPositions } = body;
  return mountingPositions && !mountingPositions.includes(place.position)
    ? [{ kind: "position", body: body.index }]
    : [];
}

/** Pumps, lamps and other consumers may be made for water: the plan does not state it. */
function inBilgeWater(facts: BoardFacts, { body, outline, surface }: MountedBody): readonly BodyFault[] {
  const { bilgeWaterMm = 0, orientation, height } = surface;
  if (!staysDry(facts, body) || orientation === "ceiling") return [];
  const aboveBottomMm = orientation === "floor" ? 0 : height - down(outline).to;
  if (!isLess(aboveBottomMm, bilgeWaterMm)) return [];
  return [{ kind: "bilge water", body: body.index, byMm: bilgeWaterMm - aboveBottomMm }];
}

export function staysDry(facts: BoardFacts, body: Body): boolean {
  const part = partOf(facts, body);
  return part !== undefined && !part.isConsumer;
}

function nearFixtures(facts: BoardFacts, { body, outline, surface }: MountedBody): readonly BodyFault[] {
  return surface.fixtures.flatMap((fixture) => {
    const needsMm = distanceFrom(facts, body, fixture);
    const isMm = distanceBetween(outline, fixture);
    const isOn = overlap(outline, fixture);
    if (!isOn && !isLess(isMm, needsMm)) return [];
    return [{ kind: "fixture" as const, body: body.index, fixture: fixture.index, isMm, needsMm, isOn }];
  });
}

/** As stated; else 2 ft from petrol vapour. The other published distances are those of conductors. */
export function distanceFrom(facts: BoardFacts, body: Body, { fixture, distanceMm }: Fixture): number {
  if (distanceMm !== undefined) return distanceMm;
  return fixture === "petrol engine" && partOf(facts, body) ? fromPetrol.leastFt * mmPerFoot : 0;
}

const mmPerFoot = 304.8;
const mmPerInch = 25.4;

function batteryAtFuel(facts: BoardFacts, { body, outline, surface }: MountedBody): readonly BodyFault[] {
  if (partOf(facts, body)?.kind !== "battery") return [];
  return surface.fixtures.flatMap((fixture): readonly BodyFault[] => {
    if (fixture.fixture !== "fuel tank" && fixture.fixture !== "fuel line") return [];
    const found = { kind: "fuel", body: body.index, fixture: fixture.index } as const;
    if (surface.orientation !== "vertical")
      return overlap(outline, fixture) && fixture.fixture === "fuel tank" ? [{ ...found, how: "over" }] : [];
    if (fixture.fixture === "fuel tank" && spansMeet(across(outline), across(fixture)))
      return [{ ...found, how: down(outline).from < down(fixture).from ? "above" : "below" }];
    const isAboveTop = isLess(down(fixture).from, down(outline).from);
    const near = distanceBetween(outline, fixture);
    return isAboveTop && isLess(near, fuelAboveBattery.withinIn * mmPerInch)
      ? [{ ...found, how: "near its top" }]
      : [];
  });
}

function exposed(facts: BoardFacts, { body, surface }: MountedBody): readonly BodyFault[] {
  if (body.terminalsCovered || !(surface.bareMetal || surface.openAbove)) return [];
  const part = partOf(facts, body);
  // The terminals of a consumer count only if the plan states that they are bare: most have leads.
  if (!part || (part.isConsumer && body.terminalsCovered === undefined)) return [];
  return part.sides.includes("positive") ? [{ kind: "exposed", body: body.index }] : [];
}
