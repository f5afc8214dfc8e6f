import {
  type ConductorEnd,
  conductorWith,
  type Network,
  type NetworkConductor,
  type ProtectiveDevice,
} from "../../model/network.ts";
import { type DevicePart, isDevice } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { PropertyAt, Related } from "../finding.ts";
import { atStart, conductorInWords, partInWords } from "../wording/part-in-words.ts";
import { farEndRatingPath, ratingPath } from "../wording/property-paths.ts";
import { type Device, type End, statedWithUnit } from "./judged-devices.ts";
import { deviceKind } from "./sized-fix.ts";

/** A protective device at its place in a network. */
export interface PlacedDevice {
  /** The conductor that it is in; undefined for a part of its own. */
  readonly conductor: NetworkConductor | undefined;
  readonly part: DevicePart | undefined;
  /** The name of the conductor or part, for findings. */
  readonly subject: string;
  readonly systemV: number;
  readonly protection: ProtectiveDevice;
  readonly device: Device;
  /** The place of its rating in the plan. */
  readonly at: PropertyAt;
  /** The place of the device itself, under which its other properties are. */
  readonly properties: PropertyAt;
}

/** By its index in the network's devices. Undefined: there is no such device. */
export function placedDevice(network: Network, index: number): PlacedDevice | undefined {
  const protection = network.devices[index];
  if (!protection) return undefined;
  const conductor = conductorWith(network, protection);
  return conductor ? inConductor(conductor, protection) : asPart(network, protection);
}

/** A part that is a device. */
export function placedPart(network: Network, { index }: DevicePart): PlacedDevice | undefined {
  const device = network.devices.find(({ place }) => place.at === "part" && place.part === index);
  return device && asPart(network, device);
}

function inConductor(conductor: NetworkConductor, protection: ProtectiveDevice): PlacedDevice {
  const { record, run } = conductor;
  const end = conductor.near?.index === protection.index ? "near" : "far";
  return {
    ...{ conductor, part: undefined, subject: conductor.name, systemV: run.systemV, protection },
    device: { ratingA: protection.ratingA, kind: deviceKind(protection), end: propertyOf[end] },
    at: { record, path: end === "near" ? ratingPath(run) : farEndRatingPath(run) },
    properties: { record, path: [propertyOf[end]] },
  };
}

function asPart({ parts }: Network, protection: ProtectiveDevice): PlacedDevice | undefined {
  const part = protection.place.at === "part" ? parts[protection.place.part] : undefined;
  if (!part || !isDevice(part)) return undefined;
  const { record, name, systemV } = part;
  return {
    ...{ conductor: undefined, part, subject: name, systemV, protection },
    device: { ratingA: protection.ratingA, kind: deviceKind(protection), end: undefined },
    at: { record, path: ["ratingA"] },
    properties: { record, path: [] },
  };
}

/** The property that states the device at an end of a conductor. */
export const propertyOf: Readonly<Record<ConductorEnd, End>> = {
  near: "protect",
  far: "protectFarEnd",
};

/** "the 50 A fuse in the cable feed", "the 200 A fuse in the fuse holder main", "the 30 A breaker pump", "the 30 A pump breaker". */
export function placedInWords({ device, conductor, part, subject }: PlacedDevice): string {
  const rating = `the ${statedWithUnit(device.ratingA, "A")}`;
  const it = `${rating} ${device.kind}`;
  if (conductor) return `${it} in ${conductorInWords(conductor)}`;
  if (part?.kind === "fuseHolder") return `${it} in ${partInWords(part)}`;
  const isSaid = part && descriptorOf(part).called.saidBy.test(subject);
  return isSaid ? `${rating} ${subject}` : `${it} ${subject}`;
}

export function relatedDevice(placed: PlacedDevice, is = ""): Related {
  return { at: placed.at, text: atStart(`${placedInWords(placed)} ${is}`.trim()) };
}
