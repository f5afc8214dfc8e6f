import type { ConductorEnd, Network, NetworkConductor, ProtectiveDevice } from "../../model/network.ts";
import type { PropertyAt, Related } from "../finding.ts";
import { atStart, conductorInWords } from "../wording/part-in-words.ts";
import { farEndRatingPath, ratingPath } from "../wording/property-paths.ts";
import { type Device, type End, statedWithUnit } from "./judged-devices.ts";
import { deviceKind } from "./sized-fix.ts";

/** A protective device at its place in a network. */
export interface PlacedDevice {
  readonly conductor: NetworkConductor;
  readonly protection: ProtectiveDevice;
  readonly device: Device;
  /** The place of its rating in the plan. */
  readonly at: PropertyAt;
  /** The place of the device itself, under which its other properties are. */
  readonly properties: PropertyAt;
}

/** By its index in the network's devices. Undefined: there is no such device. */
export function placedDevice({ conductors, devices }: Network, index: number): PlacedDevice | undefined {
  const protection = devices[index];
  const conductor = protection && conductors[protection.place.conductor];
  if (!conductor) return undefined;
  const { end } = protection.place;
  const { run } = conductor;
  const path = end === "near" ? ratingPath(run) : farEndRatingPath(run);
  return {
    conductor,
    protection,
    device: { ratingA: protection.ratingA, kind: deviceKind(protection), end: propertyOf[end] },
    at: { record: conductor.record, path },
    properties: { record: conductor.record, path: [propertyOf[end]] },
  };
}

/** The property that states the device at an end of a conductor. */
export const propertyOf: Readonly<Record<ConductorEnd, End>> = {
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
