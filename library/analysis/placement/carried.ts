import type { Body, Layout, Surface } from "../../model/placement/layout.ts";
import { mountedBodies } from "./bodies.ts";

/** A surface with more stated mass on it than it carries, kg. */
export interface Carried {
  readonly surface: Surface;
  /** Those that state their mass, the heaviest first. */
  readonly bodies: readonly Body[];
  readonly massKg: number;
  readonly limitKg: number;
  readonly withoutMass: number;
}

/** The surfaces that carry more than they may. */
export function carriedBy(layout: Layout): readonly Carried[] {
  const mounted = mountedBodies(layout);
  return layout.surfaces.flatMap((surface) => {
    const limitKg = surface.carriesKg;
    const on = mounted.filter((one) => one.surface === surface).map(({ body }) => body);
    const bodies = on
      .filter(({ massKg }) => massKg !== undefined)
      .sort((one, other) => other.massKg! - one.massKg!);
    const massKg = bodies.reduce((sum, body) => sum + body.massKg!, 0);
    if (limitKg === undefined || massKg <= limitKg * (1 + rounding)) return [];
    return [{ surface, bodies, massKg, limitKg, withoutMass: on.length - bodies.length }];
  });
}

/** A sum of decimal fractions differs from its exact value in the last binary digits. */
const rounding = 1e-9;
