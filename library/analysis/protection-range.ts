import type { Network } from "../model/network.ts";
import type { DevicePart } from "../model/part-roles.ts";
import type { Protection, Run } from "../model/run.ts";
import { ratingBetweenLoadAndConductor } from "../standards/protection-rules.ts";
import { ampacityOf } from "./ampacity.ts";
import type { Ampacity, ProtectionRange } from "./circuit-result.ts";
import { certainCurrentThrough } from "./current-through.ts";
import { designCurrentA } from "./design-current.ts";
import { continuousMargin, ratingOver } from "./load-for-hours.ts";
import { machineLimitAtDevice } from "./machine-protection.ts";
import { type Family, smallestRatingBetween } from "./made-ratings.ts";
import { endsAt } from "./network/topology/ends-at.ts";
import type { NetworkResult } from "./network-result.ts";
import { permittedFuseAtDevice } from "./permitted-fuse.ts";
import { withoutDust } from "./rounding-dust.ts";

/**
 * Ratings that carry the load and protect the conductor.
 *
 *     I_design ≤ I_rating ≤ I_max;   aim: I_rating ≥ 1.25 · I_continuous + I_other, all in A
 *
 * Both bounds: IEC 60364-4-43, 433.1 (from memory), with the ampacity I_max after all factors. Stricter than 33 CFR
 * 183.455(c)(1), which allows 150 % of the table below 50 V. Aim: NFPA 70, 210.20(A) and 215.3; in a hot place more. No upper bound and no best rating
 * if the ampacity cannot be judged. No aim above the load in a conductor that leaves a machine without its own current limit: there
 * 33 CFR 183.460(b) holds the device to 120 % of the machine's rating, and no rating would satisfy both.
 * No aim above the largest fuse that the maker of the device permits.
 */
export function protectionRangeOf(
  circuit: Run,
  ampacity: Ampacity,
  device: Protection | null = circuit.protection,
): ProtectionRange {
  const maxA = ampacity.judged ? ampacity.ampacityA : undefined;
  const placeC = device?.ambientC ?? statedPlaceC([circuit]);
  return rangeOf(circuit, { maxA, family: device?.family, placeC });
}

/**
 * The same for a device that is a part of its own: from the maximum current through it, up to the least ampacity of the conductors
 * that end at it.
 */
export function protectionRangeOfPart(
  { network, result }: { readonly network: Network; readonly result: NetworkResult },
  device: DevicePart,
): ProtectionRange {
  const { line, load } = device.terminals;
  const runs = [...endsAt(network, line), ...endsAt(network, load)].map(({ run }) => run);
  const ampacities = runs.map(ampacityOf);
  const least = Math.min(...ampacities.map((one) => (one.judged ? one.ampacityA : Number.NaN)));
  const { currentA: lowVoltageA = 0, estimate } = certainCurrentThrough(result, device) ?? {};
  const forHours = result.parts[device.index]?.forHours;
  const maxA = Number.isFinite(least) ? least : undefined;
  const machineMaxA = machineLimitAtDevice(network, device)?.maxA;
  const maxFuseA = permittedFuseAtDevice(network, device);
  return rangeOf(
    {
      loadA: forHours?.currentA ?? 0,
      ...(forHours && { forHours }),
      lowVoltageA,
      ...(estimate && { estimate }),
      continuous: device.continuous,
      machineMaxA,
      ...(maxFuseA !== undefined && { maxFuseA }),
    },
    { maxA, family: device.family, placeC: device.ambientC ?? statedPlaceC(runs) },
  );
}

function rangeOf(
  load: Pick<Run, "loadA" | "forHours" | "lowVoltageA" | "estimate" | "continuous" | "maxFuseA"> & {
    readonly machineMaxA?: number | undefined;
  },
  at: {
    readonly maxA: number | undefined;
    readonly family: Family | undefined;
    readonly placeC: number | undefined;
  },
): ProtectionRange {
  const minA = withoutDust(designCurrentA(load));
  // Batteries that are nearly empty do not stay so for hours: the headroom is over the load at their usual voltage.
  const { currentA, continuousA } = load.forHours ?? { currentA: load.loadA, continuousA: load.loadA };
  const forHours = { currentA: withoutDust(currentA), continuousA: withoutDust(continuousA) };
  const { maxA, family, placeC } = at;
  const margin = continuousMargin(placeC);
  const aimsAbove = load.continuous && load.machineMaxA === undefined;
  const { maxFuseA = Number.POSITIVE_INFINITY } = load;
  const aimA = Math.max(minA, aimsAbove ? Math.min(maxFuseA, withoutDust(ratingOver(forHours, margin))) : 0);
  const bestRatingA = bestRating({ aimA, maxA }, family);
  const { estimate } = load;
  return {
    minA,
    forHours,
    ...(estimate && { estimate }),
    maxA,
    aimA,
    margin,
    bestRatingA,
    source: ratingBetweenLoadAndConductor,
  };
}

/** The stated temperature of the air around the conductors of a device, °C; if it differs, that of the coolest. */
function statedPlaceC(runs: readonly Pick<Run, "ambientC" | "ambientStated">[]): number | undefined {
  if (runs.length === 0 || runs.some(({ ambientStated }) => !ambientStated)) return undefined;
  return Math.min(...runs.map(({ ambientC }) => ambientC));
}

/**
 * The smallest made rating that reaches the aim and protects the conductor, A, of one family or of any. Undefined:
 * there is none.
 */
export function bestRating(
  range: Pick<ProtectionRange, "aimA" | "maxA">,
  family?: Family,
): number | undefined {
  return range.maxA === undefined ? undefined : smallestRatingBetween(range.aimA, range.maxA, family);
}
