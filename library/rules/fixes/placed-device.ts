import type { DevicePlace } from "../../analysis/network/topology/network-topology.ts";
import type { Network, NetworkConductor } from "../../model/network.ts";
import type { Protection } from "../../model/run.ts";
import type { At, Related } from "../finding.ts";
import { atConductor, atStart, conductorInWords } from "../wording/part-in-words.ts";
import { farEndRatingPath, ratingPath } from "../wording/property-paths.ts";
import { type Device, type End, statedWithUnit } from "./protected-ends.ts";
import { deviceKind } from "./sized-fix.ts";

/** A protective device at its place in a network. */
export interface PlacedDevice {
  readonly conductor: NetworkConductor;
  readonly protection: Protection;
  readonly device: Device;
  /** The place of its rating in the plan. */
  readonly at: At;
}

/** Undefined: there is none at that end. */
export function placedDevice(
  network: Network,
  { conductor: index, end }: DevicePlace,
): PlacedDevice | undefined {
  const conductor = network.conductors[index];
  const protection = end === "near" ? conductor?.near : conductor?.far;
  if (!conductor || !protection) return undefined;
  const { run } = conductor;
  const path = end === "near" ? ratingPath(run) : farEndRatingPath(run);
  return {
    conductor,
    protection,
    device: { ratingA: protection.ratingA, kind: deviceKind(protection), end: propertyOf[end] },
    at: atConductor(conductor, ...path),
  };
}

/** The property that states the device at an end of a conductor. */
export const propertyOf: Readonly<Record<DevicePlace["end"], End>> = {
  near: "protect",
  far: "protectFarEnd",
};

/** "the 50 A fuse in the cable feed". */
export function placedInWords({ device, conductor }: PlacedDevice): string {
  return `the ${statedWithUnit(device.ratingA, "A")} ${device.kind} in ${conductorInWords(conductor)}`;
}

export function relatedDevice(placed: PlacedDevice, is = ""): Related {
  return { at: placed.at, text: atStart(`${placedInWords(placed)} ${is}`.trim()) };
}
