import type { Placement } from "../../analysis/placement/placement.ts";
import type { Way } from "../../analysis/placement/ways.ts";
import type { Body, Channel, Lead, Point, Surface } from "../../model/placement/layout.ts";
import type { JudgedPlan } from "../../rules/rule.ts";

/** Everything that the front view of a surface shows, in mm. */
export interface SurfaceContent {
  /** Index in the surfaces of the layout. */
  readonly index: number;
  readonly surface: Surface;
  readonly bodies: readonly BodyHere[];
  readonly channels: readonly ChannelHere[];
  /** The places where a channel leads away from this surface. */
  readonly openings: readonly Opening[];
  readonly leads: readonly LeadHere[];
  /** Parts of the plan that have no place anywhere. */
  readonly unplaced: readonly Body[];
}

export interface BodyHere {
  readonly body: Body;
  readonly place: Extract<NonNullable<Body["place"]>, { readonly kind: "on surface" }>;
}

export interface ChannelHere {
  /** Index in the channels of the layout. */
  readonly index: number;
  readonly channel: Channel;
  readonly path: readonly Point[];
  /** How many conductors are in it; wires side by side count each. */
  readonly conductors: number;
}

export interface Opening {
  /** Index in the channels of the layout. */
  readonly index: number;
  readonly channel: Channel;
  readonly at: Point;
  readonly lengthMm: number;
  /** The name of the surface at its other end; absent at a free end. */
  readonly to?: string;
  /** The names of the parts at its free end. */
  readonly ends: readonly string[];
  readonly conductors: number;
}

export interface LeadHere {
  readonly lead: Lead;
  readonly way: Way;
  /** Side by side. */
  readonly wires: number;
}

/** Undefined if the plan has no such surface. */
export function surfaceContent(plan: JudgedPlan, index: number): SurfaceContent | undefined {
  const { placement } = plan;
  const surface = placement?.layout.surfaces[index];
  if (!placement || !surface) return undefined;
  const { layout, ways } = placement;
  const counts = conductorsInChannels(plan, placement);
  const wiresOf = wiresByRecord(plan);
  const bodies = layout.bodies.flatMap((body): readonly BodyHere[] =>
    body.place?.kind === "on surface" && body.place.surface === index ? [{ body, place: body.place }] : [],
  );
  return {
    ...{ index, surface, bodies },
    channels: layout.channels.flatMap((channel, at): readonly ChannelHere[] => {
      const { course } = channel;
      if (course.kind !== "along" || course.surface !== index) return [];
      return [{ index: at, channel, path: course.path, conductors: counts[at]! }];
    }),
    openings: layout.channels.flatMap((channel, at) =>
      openingsOf(channel, at, index, placement, counts[at]!),
    ),
    leads: layout.leads.flatMap((lead): readonly LeadHere[] => {
      const way = ways[lead.index]!;
      if (way.state !== "found" || !way.stretches.some((stretch) => stretch.surface === index)) return [];
      return [{ lead, way, wires: wiresOf.get(lead.record) ?? 1 }];
    }),
    unplaced: layout.bodies.filter(({ place }) => !place),
  };
}

function openingsOf(
  channel: Channel,
  index: number,
  surface: number,
  { layout }: Placement,
  conductors: number,
): readonly Opening[] {
  const { course } = channel;
  if (course.kind !== "between") return [];
  const { from, to, lengthMm } = course;
  const ends = layout.bodies.flatMap(({ place, name }) =>
    place?.kind === "at end" && place.channel === index ? [name] : [],
  );
  const shared = { index, channel, lengthMm, ends, conductors };
  const nameOf = (at: number) => layout.surfaces[at]!.name;
  return [
    ...(from.surface === surface
      ? [{ ...shared, at: { x: from.x, y: from.y }, ...(to && { to: nameOf(to.surface) }) }]
      : []),
    ...(to?.surface === surface ? [{ ...shared, at: { x: to.x, y: to.y }, to: nameOf(from.surface) }] : []),
  ];
}

/** By channel index: how many conductors go through it, wires side by side each; those without a way are in none. */
export function conductorsInChannels(plan: JudgedPlan, { layout, ways }: Placement): readonly number[] {
  const wiresOf = wiresByRecord(plan);
  const counts = layout.channels.map(() => 0);
  for (const { index, record } of layout.leads) {
    const way = ways[index]!;
    if (way.state !== "found") continue;
    const used = new Set(way.stretches.flatMap(({ channel }) => channel ?? []));
    for (const channel of used) counts[channel]! += wiresOf.get(record) ?? 1;
  }
  return counts;
}

/** The number of wires side by side of each run. */
function wiresByRecord({ circuits }: JudgedPlan): ReadonlyMap<number, number> {
  return new Map(circuits.map(({ circuit }) => [circuit.record, circuit.conductor.parallel]));
}
