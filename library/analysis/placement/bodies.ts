import type { Network, NetworkConductor, Part } from "../../model/network.ts";
import type { Body, BodyOnSurface, Layout, Lead, Rectangle, Surface } from "../../model/placement/layout.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { NetworkTopology } from "../network/topology/network-topology.ts";

/** The facts that bodies on surfaces are judged by: their layout, and the network that they are part of if it could be read. */
export interface BoardFacts {
  readonly layout: Layout;
  readonly network?: { readonly network: Network; readonly sides: NetworkTopology["sides"] };
}

/** A body on a surface; its outline has no extent if its size is not stated. */
export interface MountedBody {
  readonly body: Body;
  readonly place: BodyOnSurface;
  readonly outline: Rectangle;
  readonly surface: Surface;
}

/** Every body on a surface, in the order of the plan. */
export const mountedBodies = workedOutOnce(({ surfaces, bodies }: Layout): readonly MountedBody[] =>
  bodies.flatMap((body) => {
    if (body.place?.kind !== "on surface") return [];
    const { place } = body;
    return [{ body, place, outline: place.outline, surface: surfaces[place.surface]! }];
  }),
);

/** Those with an outline of their own. */
export const withOutline = workedOutOnce((mounted: readonly MountedBody[]): readonly MountedBody[] =>
  mounted.filter(({ outline }) => outline.width > 0 && outline.height > 0),
);

/** Each pair on the same surface once, in the order of the plan; a device and the part that it is mounted on are no pair. */
export const pairsOf = workedOutOnce(
  (mounted: readonly MountedBody[]): readonly (readonly [MountedBody, MountedBody])[] =>
    mounted.flatMap((one, at) =>
      mounted
        .slice(at + 1)
        .filter((other) => other.surface === one.surface && !areMounted(one.body, other.body))
        .map((other) => [one, other] as const),
    ),
);

function areMounted(one: Body, other: Body): boolean {
  return one.mountedOn === other.index || other.mountedOn === one.index;
}

/** The part of the network that a body is; undefined if the network could not be read. */
export function partOf({ network }: BoardFacts, { record }: Body): Part | undefined {
  return network && partsByRecord(network.network).get(record);
}

export const partsByRecord = workedOutOnce(
  ({ parts }: Network): ReadonlyMap<number, Part> => new Map(parts.map((part) => [part.record, part])),
);

/** The conductor of the network that a lead is. */
export function conductorOf({ network }: BoardFacts, lead: Lead): NetworkConductor | undefined {
  return network && conductorsByKey(network.network).get(keyOf(lead));
}

const conductorsByKey = workedOutOnce(
  ({ conductors }: Network): ReadonlyMap<string, NetworkConductor> =>
    new Map(conductors.map((conductor) => [keyOf(conductor), conductor])),
);

function keyOf({ record, role }: Pick<Lead, "record" | "role">): string {
  return `${record} ${role}`;
}

/** Whether it gives off heat as far as is known: as stated, else if it converts with a loss. */
export function givesHeat(facts: BoardFacts, body: Body): boolean {
  if (body.heatW !== undefined) return body.heatW > 0;
  const part = partOf(facts, body);
  return part !== undefined && "efficiencyPercent" in part;
}
