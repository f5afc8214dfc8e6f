import type { Protection } from "../model/run.ts";
import { type DeviceFamily, deviceFamilies } from "../standards/device-ratings.ts";
import { type Family, isMadeRating, madeRatings } from "./made-ratings.ts";

/** Requirements on a protective device: its rating, A; the voltage of its circuit, V; the current it must interrupt, A. */
export interface DeviceNeed {
  readonly ratingA: number;
  readonly systemV: number;
  readonly interruptA: number;
}

export interface ChosenDevice {
  readonly ratingA: number;
  readonly family: Family;
  /** If not every device of the family is made for the voltage: the marking to look for, V. */
  readonly ratedV?: number;
  /** If the family's standard is not enough: the marking to look for, A. */
  readonly interruptingA?: number;
  /** True if it needs a marking that no device in the plan is known to have: the buyer must ensure it. */
  readonly demanded: boolean;
}

/**
 * A suitable fuse: of the first family whose standard is sufficient (`prefer`, then the smaller forms first), else a Class T
 * fuse with the necessary marking, which that family is made for. Undefined: none is made in that rating.
 */
export function chooseDevice(need: DeviceNeed, prefer?: Family): ChosenDevice | undefined {
  const { ratingA, systemV, interruptA } = need;
  const suitable = suitableDevices(need);
  const chosen = suitable.find(({ family }) => family === prefer) ?? suitable[0];
  if (chosen || !isMadeRating(ratingA, marked)) return chosen;
  return {
    ratingA,
    family: marked,
    interruptingA: markingFor(interruptA),
    ...(systemV > leastRatedV && { ratedV: systemV }),
    demanded: true,
  };
}

/** Every fuse that suits by the standard of its family, the smaller forms first. */
export function suitableDevices(need: DeviceNeed): readonly ChosenDevice[] {
  const { ratingA, systemV } = need;
  return allFamilies
    .filter((family) => suits(family, need))
    .map((family) => {
      const ratedV = voltageToState(family, systemV);
      return { ratingA, family, ...(typeof ratedV === "number" && { ratedV }), demanded: false };
    });
}

/**
 * The same for a range of ratings, both ends included: the least rating made in a family that suits by its standard. If that is
 * more than twice the least, a Class T fuse of a lesser rating is taken if there is one.
 */
export function chooseDeviceBetween(
  range: { readonly fromA: number; readonly toA: number },
  circuit: Omit<DeviceNeed, "ratingA">,
): ChosenDevice | undefined {
  const ratings = madeRatings().filter((ratingA) => ratingA >= range.fromA && ratingA <= range.toA);
  const chosen = ratings.flatMap((ratingA) => chooseDevice({ ratingA, ...circuit }) ?? []);
  const byStandard = chosen.find(({ demanded }) => !demanded);
  const byMarking = chosen.find(({ demanded }) => demanded);
  if (!byStandard || !byMarking) return byStandard ?? byMarking;
  const close = byStandard.ratingA <= Math.max(2 * range.fromA, byMarking.ratingA);
  return close ? byStandard : byMarking;
}

/**
 * A further device of the same family and markings, on a circuit of this voltage. Undefined if no family is stated, or if
 * the family is not made for the voltage.
 */
export function oneMoreLike(like: Protection, systemV: number): Omit<ChosenDevice, "ratingA"> | undefined {
  const { family, interruptingA } = like;
  if (!family) return undefined;
  const needed = voltageToState(family, systemV);
  if (needed === "none") return undefined;
  const known = like.ratedV !== undefined && like.ratedV >= systemV ? like.ratedV : needed;
  const demanded =
    known === undefined && families[family].ratedVoltagesV.length === 0 && systemV > leastRatedV;
  const ratedV = demanded ? systemV : known;
  return {
    family,
    ...(interruptingA !== undefined && { interruptingA }),
    ...(ratedV !== undefined && { ratedV }),
    demanded,
  };
}

/**
 * Interrupting rating of a device, A: as the plan states it, else the requirement of its family's standard. Undefined: unknown, also at
 * a voltage, V, that is above the one for which it is stated.
 */
export function interruptsA(
  { family, interruptingA, interruptingAtV = Number.POSITIVE_INFINITY }: Protection,
  voltageV = 0,
): number | undefined {
  if (voltageV > interruptingAtV) return undefined;
  return interruptingA ?? (family && families[family].breakingCapacityA) ?? undefined;
}

/** A marking to ask for, A: the required current rounded up to the next thousand, because no fuse is marked to the ampere. */
export function markingFor(interruptA: number): number {
  return Math.ceil(interruptA / 1000) * 1000;
}

/**
 * Whether every device of a family suits by the family's standard, except for a voltage to look for. False if voltage or
 * breaking capacity is marked only on the device (breakers, Class T).
 */
function suits(family: Family, { ratingA, systemV, interruptA }: DeviceNeed): boolean {
  const { breakingCapacityA } = families[family];
  return (
    isMadeRating(ratingA, family) &&
    breakingCapacityA !== null &&
    breakingCapacityA >= interruptA &&
    voltageToState(family, systemV) !== "none"
  );
}

/**
 * The voltage that a device of this family must be marked with on such a circuit, V. Undefined if every device of the family
 * is made for it, or if its standard leaves the voltage to the marking. "none": not made for so high a voltage.
 */
export function voltageToState(family: Family, systemV: number): number | "none" | undefined {
  const { ratedVoltagesV } = families[family];
  const [least] = ratedVoltagesV;
  if (least === undefined || least >= systemV) return undefined;
  return ratedVoltagesV.find((voltage) => voltage >= systemV) ?? "none";
}

/** The data in a family's standard that apply to all its devices. */
export function familyData(family: Family): DeviceFamily {
  return families[family];
}

const families: Readonly<Record<Family, DeviceFamily>> = deviceFamilies;
const allFamilies = Object.keys(families) as Family[];
const marked: Family = "UL 248-15 Class T";

/** The least voltage in the standards of the fuse families that name one, V: each of those families is made for it. */
export const leastRatedV = Math.min(
  ...Object.values(families).flatMap(({ ratedVoltagesV }) => ratedVoltagesV),
);
