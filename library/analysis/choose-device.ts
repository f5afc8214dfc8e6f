import { type DeviceFamily, deviceFamilies } from "../standards/device-ratings.ts";
import { type Family, isMadeRating } from "./made-ratings.ts";

/** What a protective device must be: its rating, A; the voltage of its circuit, V; the current it must interrupt, A. */
export interface DeviceNeed {
  readonly ratingA: number;
  readonly systemV: number;
  readonly interruptA: number;
}

export interface ChosenDevice {
  readonly ratingA: number;
  readonly family: Family;
  /** Where not every device of the family is made for the voltage: the marking to look for, V. */
  readonly ratedV?: number;
  /** Where the family's standard is not enough: the marking to look for, A. */
  readonly interruptingA?: number;
}

/**
 * A fuse that suits: of the first family whose standard says so (`prefer`, then the smaller forms first), else a Class T
 * fuse marked for what is needed, which that family is made for. Undefined: none is made in that rating.
 */
export function chooseDevice(need: DeviceNeed, prefer?: Family): ChosenDevice | undefined {
  const { ratingA, systemV, interruptA } = need;
  const suitable = allFamilies.filter((family) => suits(family, need));
  const family = prefer && suitable.includes(prefer) ? prefer : suitable[0];
  if (family) {
    const ratedV = voltageToState(family, systemV);
    return { ratingA, family, ...(typeof ratedV === "number" && { ratedV }) };
  }
  if (!isMadeRating(ratingA, marked)) return undefined;
  return {
    ratingA,
    family: marked,
    interruptingA: markingFor(interruptA),
    ...(systemV > leastRatedV && { ratedV: systemV }),
  };
}

/** A marking to ask for, A: what is needed, up to the next thousand, for no fuse is marked to the ampere. */
export function markingFor(interruptA: number): number {
  return Math.ceil(interruptA / 1000) * 1000;
}

/**
 * Whether every device of a family suits by the family's standard, but for a voltage to look for. Never so where voltage or
 * breaking capacity stands only on the device (breakers, Class T).
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
 * The voltage that a device of this family must be marked with on such a circuit, V; undefined where every device of the
 * family is made for so much, or where its standard leaves the voltage to the marking. "none": not made for so much.
 */
export function voltageToState(family: Family, systemV: number): number | "none" | undefined {
  const { ratedVoltagesV } = families[family];
  const [least] = ratedVoltagesV;
  if (least === undefined || least >= systemV) return undefined;
  return ratedVoltagesV.find((voltage) => voltage >= systemV) ?? "none";
}

/** What the standard of a family says of all its devices. */
export function familyData(family: Family): DeviceFamily {
  return families[family];
}

const families: Readonly<Record<Family, DeviceFamily>> = deviceFamilies;
const allFamilies = Object.keys(families) as Family[];
const marked: Family = "UL 248-15 Class T";

/** What every family of fuses is made for whose standard names a voltage, V. */
export const leastRatedV = Math.min(
  ...Object.values(families).flatMap(({ ratedVoltagesV }) => ratedVoltagesV),
);
