import type { Conductor } from "../model/run.ts";

/**
 * The conductors of the same system and number of parallel wires in every made size, thinnest first.
 * 3 AWG is left out: the tables have it, but it is not commonly made.
 */
export function madeSizes(like: Conductor): readonly Conductor[] {
  const { parallel, system } = like;
  const key = `${system} ${parallel}`;
  const known = conductorsMade.get(key);
  if (known) return known;
  const made: readonly Conductor[] =
    system === "awg"
      ? awgSizes.map((awg) => ({ parallel, system, awg }))
      : mm2Sizes.map((mm2) => ({ parallel, system, mm2 }));
  conductorsMade.set(key, made);
  return made;
}

/** The made sizes from this conductor up, itself first. */
export function sizesFrom(conductor: Conductor): readonly Conductor[] {
  return madeSizes(conductor).slice(placeAmongSizes(conductor));
}

/** How many made sizes the conductor is above another of its system: 0 for the same size, negative if thinner. */
export function sizesAbove(conductor: Conductor, other: Conductor): number {
  return placeAmongSizes(conductor) - placeAmongSizes(other);
}

/** 0 for the thinnest made size of the system, and so on upward. */
function placeAmongSizes(conductor: Conductor): number {
  return conductor.system === "awg" ? awgSizes.indexOf(conductor.awg) : mm2Sizes.indexOf(conductor.mm2);
}

type Awg = Extract<Conductor, { system: "awg" }>["awg"];
type Mm2 = Extract<Conductor, { system: "metric" }>["mm2"];

const awgSizes: readonly Awg[] = [18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0", "2/0", "3/0", "4/0"];

const mm2Sizes: readonly Mm2[] = [0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150];

/** Cache of the lists: sizing requests them for every circuit, and plans use few numbers of parallel wires. */
const conductorsMade = new Map<string, readonly Conductor[]>();
