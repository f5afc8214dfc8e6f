import type { Leaving } from "../../plan/place.ts";
import type { CircuitValues } from "../circuit-properties.ts";
import type { LoadOfCircuit, PartDraft } from "../draft-part.ts";
import { nearestName } from "../nearest-name.ts";
import type { NetworkRecords } from "../network-records.ts";
import { longMillimetres, millimetres, pointOf, sizeOf } from "./in-millimetres.ts";
import type { Body, BodyPlace, Point, Surface, TerminalSpot } from "./layout.ts";
import { type LayoutContext, referred } from "./layout-context.ts";
import { middleOf } from "./middle-of.ts";
import { positionOf, turnedAir, turnedLeaving, turnedPoint } from "./turned.ts";

/** Every part of the network as a body, in its order. */
export function readBodies(
  found: NetworkRecords,
  surfaces: readonly Surface[],
  context: LayoutContext,
): readonly Body[] {
  const ofCircuit = new Map(found.circuits.map(({ record, values }) => [record, values]));
  const bodies = found.parts.map((draft) =>
    draft.word === "circuit"
      ? loadBody(draft, ofCircuit.get(draft.record), surfaces, context)
      : partBody(draft, surfaces, context),
  );
  return bodies.map((body) => mounted(body, found, bodies));
}

type Written = Pick<PartDraft["values"], "size" | "at">;

function loadBody(
  { index, record, name }: LoadOfCircuit,
  values: CircuitValues | undefined,
  surfaces: readonly Surface[],
  context: LayoutContext,
): Body {
  const size = sizeOf(values?.size);
  const place = placeOf(values ?? {}, size, { record, name, word: "circuit" }, surfaces, context);
  return {
    word: "circuit",
    ...{ record, name, index, air: {}, keepCool: false, terminals: {} },
    ...(size && { size }),
    ...(place && { place }),
  };
}

function partBody(draft: PartDraft, surfaces: readonly Surface[], context: LayoutContext): Body {
  const { index, record, name, word, values } = draft;
  const size = sizeOf(values.size);
  const place = placeOf(values, size, draft, surfaces, context);
  const { mountingPositions, heatW, keepCool = false, massKg, terminalsCovered } = values;
  const turn = place?.kind === "on surface" ? place.turnedDeg : 0;
  return {
    word,
    ...{ record, name, index },
    ...(size && { size }),
    ...(place && { place }),
    air: turnedAir(airOf(values.air), turn),
    ...(mountingPositions && { mountingPositions }),
    ...(heatW !== undefined && { heatW }),
    keepCool,
    ...(massKg !== undefined && { massKg }),
    ...(terminalsCovered !== undefined && { terminalsCovered }),
    terminals: spotsOf(draft, size, place, context),
  };
}

function placeOf(
  { at }: Written,
  size: Body["size"],
  { record, name, word }: Pick<Body, "record" | "name" | "word">,
  surfaces: readonly Surface[],
  context: LayoutContext,
): BodyPlace | undefined {
  if (!at) return undefined;
  if (at.endOf) {
    const channel = referred(at.endOf, "channel", { record, name, path: ["at", "endOf"] }, context);
    if (channel === undefined) return undefined;
    return { kind: "at end", channel, beyondMm: longMillimetres(at, "beyond") ?? 0 };
  }
  const surface = referred(at.on, "surface", { record, name, path: ["at", "on"] }, context);
  const point = pointOf(at);
  if (surface === undefined || !point) return undefined;
  const turnedDeg = at.turnedDeg ?? 0;
  const isOnSide = turnedDeg === 90 || turnedDeg === 270;
  const { width = 0, height = 0 } = size ?? {};
  return {
    kind: "on surface",
    surface,
    outline: { width: isOnSide ? height : width, height: isOnSide ? width : height, ...point },
    turnedDeg,
    position: positionOf(surfaces[surface]!, turnedDeg, word),
    statedIn: "leftMm" in at && at.leftMm !== undefined ? "mm" : "in",
  };
}

function airOf(written: PartDraft["values"]["air"]): Body["air"] {
  const sides = (["left", "right", "top", "bottom"] as const).flatMap((side) => {
    const distance = millimetres(written, side);
    return distance === undefined ? [] : [[side, distance] as const];
  });
  return Object.fromEntries(sides);
}

/** The stated places of its terminals, as it is turned; in the coordinates of its surface if it is on one. */
function spotsOf(
  draft: PartDraft,
  size: Body["size"],
  place: BodyPlace | undefined,
  { refuse }: LayoutContext,
): Body["terminals"] {
  const { terminalsAt } = draft.values;
  if (!terminalsAt) return {};
  const names = [...(draft.terminals?.keys() ?? [])];
  const spots: Record<string, readonly TerminalSpot[]> = {};
  for (const [name, written] of Object.entries(terminalsAt)) {
    if (draft.terminals && !draft.terminals.has(name)) {
      const nearest = nearestName(name, names);
      const wrong = `is not a terminal of ${draft.name}`;
      const refusal = { path: ["terminalsAt", name], given: undefined, wrong, allowed: names.join(", ") };
      refuse(draft.record, draft.name, [{ ...refusal, ...(nearest !== undefined && { nearest }) }]);
      continue;
    }
    const list = Array.isArray(written) ? written : [written];
    spots[name] = list.flatMap((one): readonly TerminalSpot[] => {
      const point = pointOf(one);
      return point ? [spotOn(point, one.leaves, size, place)] : [];
    });
  }
  return spots;
}

function spotOn(
  point: Point,
  leaves: Leaving | undefined,
  size: Body["size"],
  place: BodyPlace | undefined,
): TerminalSpot {
  if (place?.kind !== "on surface") return { ...point, ...(leaves && { leaves }) };
  const { outline, turnedDeg } = place;
  const own = turnedPoint(point, size ?? { width: 0, height: 0 }, turnedDeg);
  const towards = leaves && turnedLeaving(leaves, turnedDeg);
  return { x: outline.x + own.x, y: outline.y + own.y, ...(towards && { leaves: towards }) };
}

/** A device that states no place is where the terminal is on which it is mounted. */
function mounted(body: Body, { mountedOn, terminals }: NetworkRecords, bodies: readonly Body[]): Body {
  const terminal = terminals[mountedOn.get(body.record) ?? -1];
  const holder = bodies[terminal?.part ?? -1];
  if (!terminal || !holder) return body;
  const onIt: Body = { ...body, mountedOn: holder.index };
  if (body.place || holder.place?.kind !== "on surface") return onIt;
  const [spot] = holder.terminals[terminal.name] ?? [];
  const { surface, outline, position } = holder.place;
  const point = spot ?? middleOf(outline);
  return {
    ...onIt,
    place: {
      ...{ kind: "on surface", surface, turnedDeg: 0, position },
      outline: { x: point.x, y: point.y, width: 0, height: 0 },
    },
  };
}
