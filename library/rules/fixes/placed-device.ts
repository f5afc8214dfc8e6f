import { ampacityOf } from "../../analysis/ampacity.ts";
import { isAccepted } from "../../analysis/sizing.ts";
import {
  type ConductorEnd,
  conductorWith,
  deviceInPart,
  type Network,
  type NetworkConductor,
  type ProtectiveDevice,
} from "../../model/network.ts";
import { type DevicePart, isDevice } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { Conductor, Run } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { RuleId } from "../../plan/rule-id.ts";
import type { PropertyAt, ProposedFix, Related } from "../finding.ts";
import type { JudgedPlan } from "../rule.ts";
import { atStart, conductorInWords, partInWords } from "../wording/part-in-words.ts";
import { farEndRatingPath, ratingPath } from "../wording/property-paths.ts";
import { toUse } from "../wording/way-out.ts";
import { type Device, type End, ratingFix, statedWithUnit } from "./judged-devices.ts";
import { deviceKind, sizedFixes, sizingFor } from "./sized-fix.ts";

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
  const placed = placedDevices(network);
  const protection = network.devices[index];
  if (!protection || placed.has(index)) return placed.get(index);
  const conductor = conductorWith(network, protection);
  const made = conductor ? inConductor(conductor, protection) : asPart(network, protection);
  placed.set(index, made);
  return made;
}

/** By index of the device, filled on demand. */
const placedDevices = workedOutOnce((_: Network) => new Map<number, PlacedDevice | undefined>());

/** A part that is a device. */
export function placedPart(network: Network, { index }: DevicePart): PlacedDevice | undefined {
  const device = deviceInPart(network, index);
  return device && asPart(network, device);
}

function inConductor(conductor: NetworkConductor, protection: ProtectiveDevice): PlacedDevice {
  const { record, run } = conductor;
  const end = conductor.near?.index === protection.index ? "near" : "far";
  return {
    conductor,
    part: undefined,
    ...{ subject: conductor.name, systemV: run.systemV, protection },
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
    conductor: undefined,
    part,
    ...{ subject: name, systemV, protection },
    device: { ratingA: protection.ratingA, kind: deviceKind(protection), end: undefined },
    at: { record, path: ["ratingA"] },
    properties: { record, path: [] },
  };
}

/** In a position of a fuse panel: at the end of a conductor there, or mounted on it. */
export function isInPanel(network: Network, placed: PlacedDevice): boolean {
  const at = terminalOf(placed);
  return at !== undefined && isPanelBranch(network, at);
}

/** At a bus, panel or switch, where another device may help it with a short. */
export function isAtBranch({ parts, terminals }: Network, placed: PlacedDevice): boolean {
  const part = parts[terminals[terminalOf(placed) ?? -1]?.part ?? -1];
  return part !== undefined && descriptorOf(part).role === "passes current on";
}

/** The terminal that a device is at: at the end of its conductor there, or mounted on it. */
function terminalOf({ conductor, part, device }: PlacedDevice): number | undefined {
  return conductor ? (device.end === "protect" ? conductor.from : conductor.to) : part?.mountedOn;
}

/** The branches of a fuse panel. */
export function isPanelBranch({ terminals, parts }: Network, terminal: number): boolean {
  const { part, name } = terminals[terminal]!;
  return parts[part]?.kind === "fusePanel" && name === "branch";
}

/** The property that states the device at an end of a conductor. */
export const propertyOf: Readonly<Record<ConductorEnd, End>> = {
  near: "protect",
  far: "protectFarEnd",
};

/** "the 50 A fuse in the cable feed", "the 200 A fuse in the fuse holder F1", "the 200 A main fuse", "the 30 A breaker pump", "the 30 A pump breaker". */
export function placedInWords({ device, conductor, part, subject }: PlacedDevice): string {
  const rating = `the ${statedWithUnit(device.ratingA, "A")}`;
  const it = `${rating} ${device.kind}`;
  if (conductor) return `${it} in ${conductorInWords(conductor)}`;
  if (part?.kind === "fuseHolder")
    return namesFuse.test(subject) ? `${rating} ${subject}` : `${it} in ${partInWords(part)}`;
  const isSaid = part && descriptorOf(part).called.saidBy.test(subject);
  return isSaid ? `${rating} ${subject}` : `${it} ${subject}`;
}

/** "main fuse", but not "100 A fuse", whose rating is said already. */
const namesFuse = /^(?!.*\d\s?A\b).*\bfuse$/i;

/**
 * The repair of a run that a device elsewhere does not protect: the size that the run gets, the rating that the device gets, or both if
 * neither is enough alone. Empty if they are no repair.
 */
export function matchingFixes(
  plan: JudgedPlan,
  run: Run,
  { protection, conductor, subject, ...placed }: PlacedDevice,
  rule: RuleId,
): ProposedFix[] {
  const sizing = sizingFor(plan, isAccepted(run, rule));
  const sized = sizing.ofRun(run);
  const carriesA = (size: Conductor) => {
    const ampacity = ampacityOf({ ...run, conductor: size });
    return ampacity.judged ? ampacity.ampacityA : 0;
  };
  const [nowA, thenA] = [carriesA(run.conductor), carriesA(sized?.conductor ?? run.conductor)];
  if (protection.ratingA <= thenA) return sizedFixes(run, sized);
  const ratingA = sizing.ratingOf(protection);
  if (ratingA === undefined || ratingA > thenA || ratingA >= protection.ratingA) return [];
  const [size] = ratingA <= nowA ? [] : sizedFixes(run, sized);
  const [device] = conductor
    ? sizedFixes(conductor.run, sizing.ofRun(conductor.run))
    : [ratingFix({ ...placed, protection }, ratingA)];
  if (!device) return [];
  const lesser = / at the far end$/.test(device.noun)
    ? `${device.noun} of ${subject}`
    : `${device.noun} for ${subject}`;
  if (!size) return [{ ...device, ...toUse(lesser) }];
  const both = toUse(`${size.noun} here and ${lesser}`);
  return [{ ...both, kind: "repair", changes: [...size.changes, ...device.changes] }];
}

export function relatedDevice(placed: PlacedDevice, is = ""): Related {
  return { at: placed.at, text: atStart(`${placedInWords(placed)} ${is}`.trim()) };
}
