import type { Channel, Compartment, Layout, Surface } from "./layout.ts";

/** The surfaces, channels and compartments of a layout: each has a record of its own, and may accept findings. */
export function thingsOfLayout(layout: Layout | undefined): readonly (Surface | Channel | Compartment)[] {
  return layout ? [...layout.surfaces, ...layout.channels, ...layout.compartments] : [];
}
