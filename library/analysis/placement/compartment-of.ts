import type { Body, Layout } from "../../model/placement/layout.ts";

/** Index of the compartment that a body is in; undefined if it is in none, or its place is not known. */
export function compartmentOf({ place }: Body, { surfaces, channels }: Layout): number | undefined {
  if (!place) return undefined;
  return place.kind === "on surface"
    ? surfaces[place.surface]!.compartment
    : channels[place.channel]!.compartment;
}
