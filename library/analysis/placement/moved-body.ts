import type { Body, BodyOnSurface, Layout, Point, QuarterTurn } from "../../model/placement/layout.ts";
import { positionOf, turnedAir, turnedLeaving, turnedPoint } from "../../model/placement/turned.ts";

/* Bodies at other places of their layout, with the places of their terminals. */

/** The layout with a body in another place, or without one; devices that have their place from it move along. */
export function withBody(layout: Layout, moved: Body): Layout {
  const [was, is] = [layout.bodies[moved.index]!.place, moved.place];
  const bodies = layout.bodies.map((body) => {
    if (body.index === moved.index) return moved;
    const follows =
      body.mountedOn === moved.index && body.place?.kind === "on surface" && !body.place.statedIn;
    if (!follows || was?.kind !== "on surface") return body;
    return is?.kind === "on surface" ? movedWith(body, was, is) : withoutPlace(body);
  });
  return { ...layout, bodies };
}

/** Along surfaces, as another body moves. */
export function movedWith(body: Body, was: BodyOnSurface, is: BodyOnSurface): Body {
  const moved = movedBy(body, is.outline.x - was.outline.x, is.outline.y - was.outline.y);
  if (moved.place?.kind !== "on surface") return moved;
  return { ...moved, place: { ...moved.place, surface: is.surface } };
}

export function withoutPlace({ place: _, ...body }: Body): Body {
  return body;
}

/** Along its surface, mm. */
export function movedBy(body: Body, right: number, downwards: number): Body {
  if (body.place?.kind !== "on surface") return body;
  return {
    ...body,
    place: { ...body.place, outline: shifted(body.place.outline, right, downwards) },
    terminals: shiftedTerminals(body, right, downwards),
  };
}

/** A body without a place, with one on a surface: upright, and then turned. */
export function placedAt(
  layout: Layout,
  body: Body,
  { surface, x, y, turnedDeg }: Pick<BodyOnSurface, "surface" | "turnedDeg"> & Point,
): Body {
  const { width = 0, height = 0 } = body.size ?? {};
  const place: BodyOnSurface = {
    ...{ kind: "on surface", surface, outline: { x, y, width, height }, turnedDeg: 0 },
    position: positionOf(layout.surfaces[surface]!, 0, body.word),
    statedIn: layout.surfaces[surface]!.writtenIn,
  };
  return turnedTo(layout, { ...body, place, terminals: shiftedTerminals(body, x, y) }, turnedDeg);
}

function shifted<At extends Point>(at: At, right: number, downwards: number): At {
  return { ...at, x: at.x + right, y: at.y + downwards };
}

function shiftedTerminals({ terminals }: Body, right: number, downwards: number): Body["terminals"] {
  return Object.fromEntries(
    Object.entries(terminals).map(([name, spots]) => [
      name,
      spots.map((spot) => shifted(spot, right, downwards)),
    ]),
  );
}

/** The same part at the same left and top edge, turned to another quarter. */
export function turnedTo(layout: Layout, body: Body, turnedDeg: QuarterTurn): Body {
  if (body.place?.kind !== "on surface") return body;
  const { outline, surface } = body.place;
  const by = ((turnedDeg - body.place.turnedDeg + 360) % 360) as QuarterTurn;
  const isOnSide = by === 90 || by === 270;
  return {
    ...body,
    place: {
      ...body.place,
      turnedDeg,
      position: positionOf(layout.surfaces[surface]!, turnedDeg, body.word),
      outline: {
        ...outline,
        width: isOnSide ? outline.height : outline.width,
        height: isOnSide ? outline.width : outline.height,
      },
    },
    air: turnedAir(body.air, by),
    terminals: Object.fromEntries(
      Object.entries(body.terminals).map(([name, spots]) => [
        name,
        spots.map((spot) => {
          const own = turnedPoint({ x: spot.x - outline.x, y: spot.y - outline.y }, outline, by);
          const leaves = spot.leaves && turnedLeaving(spot.leaves, by);
          return { x: outline.x + own.x, y: outline.y + own.y, ...(leaves && { leaves }) };
        }),
      ]),
    ),
  };
}
