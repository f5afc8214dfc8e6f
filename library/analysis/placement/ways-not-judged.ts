import type { Network } from "../../model/network.ts";
import type { Layout } from "../../model/placement/layout.ts";
import { channelBends } from "./channel-bends.ts";
import { channelSections } from "./channel-sections.ts";
import { type CompartmentHeat, compartmentHeats } from "./compartment-heat.ts";
import type { Placement } from "./placement.ts";

/** The ways, channels and compartments that cannot be judged, because the plan does not state a figure. Each by its index. */
export interface WaysNotJudged {
  /** Conductors with a part that has no place; none if no part has one. */
  readonly leads: readonly number[];
  /** Channels whose fill is not known: without `inside`, `fillPercent` or the `outsideMm` of a conductor in them. */
  readonly fills: readonly number[];
  /** Channels whose bends are not known: without `bendRadiusMm` or the `outsideMm` of a conductor in them. */
  readonly bends: readonly number[];
  /** Compasses without a distance. */
  readonly compasses: readonly { readonly surface: number; readonly name: string }[];
  /** Compartments whose walls are not stated, or that have one without a published figure. */
  readonly heats: readonly CompartmentHeat[];
}

export function waysNotJudged(placement: Placement, network: Network | undefined): WaysNotJudged {
  const { layout, ways } = placement;
  const isAnyPlaced = layout.bodies.some(({ place }) => place);
  return {
    leads: isAnyPlaced
      ? layout.leads.filter(({ index }) => ways[index]!.state === "not placed").map(({ index }) => index)
      : [],
    fills: channelSections(placement).flatMap((sections, channel) => {
      const { way, inside, fillPercent } = layout.channels[channel]!;
      const hasInside = way === "trunking" || way === "conduit" || inside;
      const isKnown = inside && fillPercent !== undefined && !hasUnknown(sections, layout);
      return sections.length > 0 && hasInside && !isKnown ? [channel] : [];
    }),
    bends: channelBends(placement).notJudged,
    compasses: layout.surfaces.flatMap(({ fixtures }, surface) =>
      fixtures
        .filter(({ fixture, distanceMm }) => fixture === "compass" && distanceMm === undefined)
        .map(({ name }) => ({ surface, name })),
    ),
    heats: network ? compartmentHeats(placement, network).filter(({ rise }) => !rise) : [],
  };
}

function hasUnknown(sections: readonly { readonly leads: readonly number[] }[], { leads }: Layout): boolean {
  return sections.some((section) => section.leads.some((lead) => leads[lead]!.outsideMm === undefined));
}
