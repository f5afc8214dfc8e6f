import type { Network, NetworkConductor, Part } from "../../model/network.ts";
import { isConsumer } from "../../model/part-roles.ts";
import type { Body, BodyOnSurface, Layout, Lead, Rectangle, Surface } from "../../model/placement/layout.ts";
import type { Conductor } from "../../model/run.ts";
import { keptIfEqual } from "../../model/same-plain-data.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { NetworkTopology } from "../network/topology/network-topology.ts";

/**
 * The facts by which bodies on surfaces are judged: their layout, and the facts about their parts and conductors if the network could be
 * read. Plain data, without currents: an edit that changes none of them leaves the same object, and all that was found for it.
 */
export interface BoardFacts {
  readonly layout: Layout;
  readonly network?: {
    /** By body; undefined for one that the network is without. */
    readonly parts: readonly (PartFacts | undefined)[];
    /** By lead. */
    readonly conductors: readonly (Conductor | undefined)[];
  };
}

interface PartFacts {
  readonly kind: Part["kind"];
  readonly isConsumer: boolean;
  /** It converts with a loss. */
  readonly converts: boolean;
  readonly isFlooded: boolean;
  /** By terminal. */
  readonly sides: NetworkTopology["sides"];
}

/** The same object as before if no fact has changed. `network`: absent if it could not be read. */
export function boardFacts(
  layout: Layout,
  network: { readonly network: Network; readonly sides: NetworkTopology["sides"] } | undefined,
): BoardFacts {
  if (!network) return keptFacts(layout, { layout });
  const [parts, conductors] = [partsByRecord(network.network), conductorsByKey(network.network)];
  const factsOf = (part: Part): PartFacts => ({
    kind: part.kind,
    isConsumer: isConsumer(part),
    converts: "efficiencyPercent" in part,
    isFlooded: part.kind === "battery" && part.chemistry === "flooded lead-acid",
    sides: Object.values(part.terminals as object).map((terminal: number) => network.sides[terminal]!),
  });
  return keptFacts(layout, {
    layout,
    network: {
      parts: layout.bodies.map(({ record }) => {
        const part = parts.get(record);
        return part && factsOf(part);
      }),
      conductors: layout.leads.map((lead) => conductors.get(keyOf(lead))?.run.conductor),
    },
  });
}

const keptFacts = keptIfEqual<Layout, BoardFacts>();

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

/** The facts about the part that a body is; undefined if the network could not be read. */
export function partOf({ network }: BoardFacts, { index }: Body): PartFacts | undefined {
  return network?.parts[index];
}

export const partsByRecord = workedOutOnce(
  ({ parts }: Network): ReadonlyMap<number, Part> => new Map(parts.map((part) => [part.record, part])),
);

/** The size of a lead; undefined if the network could not be read. */
export function conductorOf({ network }: BoardFacts, { index }: Lead): Conductor | undefined {
  return network?.conductors[index];
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
  return partOf(facts, body)?.converts ?? false;
}
