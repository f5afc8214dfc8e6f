import type { Layout, Lead, LeadEnd, Rectangle, TerminalSpot } from "../../model/placement/layout.ts";
import type { Conductor } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { bendByDiameter, bendingSpace } from "../../standards/placement-bending-space.ts";
import { crossSectionMm2 } from "../copper-area.ts";
import { type BoardFacts, conductorOf, type MountedBody, mountedBodies, withOutline } from "./bodies.ts";
import type { BodyFault, ObstacleOfLug } from "./body-fault.ts";
import { across, down, isLess, passesThrough } from "./rectangles.ts";

/** The terminals before which a conductor has no room to bend, and the ends of conductors that cannot be judged. */
export const lugRoom = workedOutOnce((facts: BoardFacts): LugRoom => {
  const mounted = mountedBodies(facts.layout);
  const faults: BodyFault[] = [];
  const notJudged: LeadEnd[] = [];
  for (const { lead, end, spot, needed } of bendingEnds(facts)) {
    const on = mounted.find(({ body }) => body.index === end.body);
    if (!on) continue;
    if (!needed || !spot?.leaves) {
      notJudged.push(end);
      continue;
    }
    if (spot.leaves === "front" || isStraight(facts.layout, lead, end, spot)) continue;
    const ahead = freeAhead(spot, on, mounted);
    if (!isLess(ahead.isMm, needed.mm)) continue;
    faults.push({
      kind: "lug room",
      ...{ body: end.body, lead: lead.index, terminal: end.terminal, ...ahead, needsMm: needed.mm },
      byDiameter: needed.byDiameter,
    });
  }
  return { faults, notJudged };
});

/** An end of a conductor that needs room to bend, whether or not its part has a place. */
interface BendingEnd {
  readonly lead: Lead;
  readonly end: LeadEnd;
  /** Absent if the plan does not state it. */
  readonly spot?: TerminalSpot | undefined;
  /** Absent if it is not known. */
  readonly needed?: { readonly mm: number; readonly byDiameter: boolean } | undefined;
}

export function bendingEnds(facts: BoardFacts): readonly BendingEnd[] {
  const { layout } = facts;
  return layout.leads.flatMap((lead) => {
    const conductor = conductorOf(facts, lead);
    const needed = conductor && roomNeeded(conductor, lead.outsideMm);
    if (!conductor || needed === "none") return [];
    return [lead.from, lead.to].map((end) => ({ lead, end, spot: spotOf(layout, end), needed }));
  });
}

export interface LugRoom {
  readonly faults: readonly BodyFault[];
  readonly notJudged: readonly LeadEnd[];
}

type Needed = { readonly mm: number; readonly byDiameter: boolean } | "none" | undefined;

/** "none" for sizes up to 10 AWG, from which no room is asked; undefined if the size has no row and no diameter is stated. */
function roomNeeded(conductor: Conductor, outsideMm: number | undefined): Needed {
  if (crossSectionMm2(conductor) <= tenAwgMm2) return "none";
  const row = conductor.system === "awg" && bendingSpace.rows.find(({ awg }) => awg.includes(conductor.awg));
  if (row && row.oneWireIn !== null) {
    const inches = conductor.parallel > 1 ? (row.twoWiresIn ?? row.oneWireIn) : row.oneWireIn;
    return { mm: inches * mmPerInch, byDiameter: false };
  }
  if (outsideMm === undefined) return undefined;
  return { mm: outsideMm * bendByDiameter.timesDiameter, byDiameter: true };
}

const tenAwgMm2 = crossSectionMm2({ system: "awg", awg: 10, parallel: 1 });
const mmPerInch = 25.4;

function spotOf({ bodies }: Layout, { body, terminal, stud }: LeadEnd): TerminalSpot | undefined {
  const spots = bodies[body]?.terminals[terminal] ?? [];
  return spots.length === 1 ? spots[0] : spots[stud];
}

/** A conductor that leads straight to a terminal ahead does not bend. */
function isStraight(layout: Layout, lead: Lead, end: LeadEnd, spot: TerminalSpot): boolean {
  const far = end === lead.from ? lead.to : lead.from;
  if (layout.bodies[far.body]?.place?.kind !== "on surface") return false;
  const other = spotOf(layout, far);
  if (!other?.leaves || surfaceOf(layout, far) !== surfaceOf(layout, end)) return false;
  const [x, y] = directions[spot.leaves as Direction];
  const [alongMm, asideMm] =
    x !== 0 ? [(other.x - spot.x) * x, other.y - spot.y] : [(other.y - spot.y) * y, other.x - spot.x];
  return alongMm > 0 && !isLess(0, Math.abs(asideMm));
}

function surfaceOf({ bodies }: Layout, { body }: LeadEnd): number | undefined {
  const place = bodies[body]?.place;
  return place?.kind === "on surface" ? place.surface : undefined;
}

type Direction = "left" | "right" | "up" | "down";

const directions: Readonly<Record<Direction, readonly [number, number]>> = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, -1],
  down: [0, 1],
};

/** The distance straight ahead to the first body, place kept free or edge of the surface. */
function freeAhead(
  spot: TerminalSpot,
  { body, surface }: MountedBody,
  mounted: readonly MountedBody[],
): { readonly isMm: number; readonly obstacle: ObstacleOfLug } {
  const direction = spot.leaves as Direction;
  const distanceTo = (area: Rectangle) => ahead(spot, direction, area);
  const edge = {
    left: spot.x,
    right: surface.width - spot.x,
    up: spot.y,
    down: surface.height - spot.y,
  }[direction];
  let nearest: { isMm: number; obstacle: ObstacleOfLug } = {
    isMm: Math.max(0, edge),
    obstacle: { kind: "edge" },
  };
  const meet = (area: Rectangle, obstacle: ObstacleOfLug) => {
    const isMm = distanceTo(area);
    if (isMm !== undefined && isMm < nearest.isMm) nearest = { isMm, obstacle };
  };
  for (const other of withOutline(mounted))
    if (other.surface === surface && other.body !== body)
      meet(other.outline, { kind: "body", body: other.body.index });
  for (const [index, area] of surface.keepFree.entries()) meet(area, { kind: "kept free", area: index });
  return nearest;
}

/** The distance from a point to a rectangle ahead of it, mm; undefined if the ray passes by. */
function ahead(spot: TerminalSpot, direction: Direction, area: Rectangle): number | undefined {
  const [x, y] = directions[direction];
  const far = { x: spot.x + x * farMm, y: spot.y + y * farMm };
  if (!passesThrough(spot, far, area)) return undefined;
  const near = { left: across(area).to, right: across(area).from, up: down(area).to, down: down(area).from };
  return Math.max(0, x === 0 ? (near[direction] - spot.y) * y : (near[direction] - spot.x) * x);
}

/** Beyond any surface. */
const farMm = 100_000;
