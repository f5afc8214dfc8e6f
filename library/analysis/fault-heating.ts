import type { Network } from "../model/network.ts";
import type { Protection, Run } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { ampacityOf } from "./ampacity.ts";
import { faultWithstand } from "./fault-withstand.ts";
import { firstIndex } from "./first-index.ts";
import type { DevicePlace } from "./network/topology/network-topology.ts";
import type { DeviceFault, NetworkResult } from "./network-result.ts";
import { gatesFor, percentOfRating } from "./opening-time.ts";

/** A short that heats a conductor beyond its withstand before a device opens. */
export interface FaultHeating {
  readonly device: DeviceFault;
  readonly heat: TooMuchHeat;
}

/** The heat of a short, expressed as durations of its current. */
interface TooMuchHeat {
  readonly currentA: number;
  /** Maximum time until the device has opened, s: its let-through, divided by the square of the current. */
  readonly lastsS: number;
  /** Time until the conductor reaches the temperature its insulation withstands for a moment, s. */
  readonly bearsS: number;
  /** °C: the insulation's limit in use, and its limit for a moment. */
  readonly initialC: number;
  readonly finalC: number;
  readonly openingSource: Citation;
}

/**
 * The worst of the devices that protect a conductor, for the maximum fault in it that flows through the device. A device
 * rated above the conductor's ampacity is no protection for it, and left out. Undefined if the conductor withstands the
 * fault, or if the time to open is unknown.
 */
export function faultHeating(
  { network, result }: { readonly network: Network; readonly result: NetworkResult },
  index: number,
): FaultHeating | undefined {
  const conductor = network.conductors[index];
  const fault = result.faults.conductors[index];
  if (!conductor || fault?.greatestA === undefined) return undefined;
  const { greatestA } = fault;
  const ampacity = ampacityOf(conductor.run);
  const found = worstOf({ network, result }, fault.protectedBy, greatestA).flatMap((at): FaultHeating[] => {
    const device = result.faults.devices[at];
    const protection = device && protectionOf(network, device);
    if (!device || !protection || (ampacity.judged && protection.ratingA > ampacity.ampacityA)) return [];
    const heat = tooMuchHeat(conductor.run, protection, Math.min(greatestA, device.greatestA));
    return heat ? [{ device, heat }] : [];
  });
  return found.sort((one, other) => excess(other) - excess(one))[0];
}

function protectionOf(
  { conductors }: Network,
  { conductor, end }: DevicePlace,
): Protection | null | undefined {
  return end === "near" ? conductors[conductor]?.near : conductors[conductor]?.far;
}

/**
 * From the devices that protect a conductor, those that include the worst one, in their order. A few are all checked. Among
 * many, as the fuses of thousands of batteries on one bus, devices of one rating and family differ only in the current. Their
 * let-through grows with it, up to the next multiple of the rating for which the gates give a shorter time.
 */
function worstOf(
  judged: { readonly network: Network; readonly result: NetworkResult },
  protectedBy: readonly number[],
  greatestA: number,
): readonly number[] {
  if (protectedBy.length <= fewDevices) return protectedBy;
  const worst = new Set<number>();
  for (const { protection, devices } of kindsOf(judged, protectedBy)) {
    const gates = gatesFor(protection)?.gates ?? [];
    // All of these carry the whole current, and are alike.
    const whole = firstIndex(devices, (device) => device.greatestA < greatestA);
    for (const { percentOfRating: percent } of [{ percentOfRating: Number.POSITIVE_INFINITY }, ...gates]) {
      const greatest = firstIndex(
        devices,
        (device) => percentOfRating(protection, Math.min(greatestA, device.greatestA)) < percent,
      );
      const at = greatest < whole ? devices[whole - 1]!.firstAt : devices[greatest]?.at;
      if (at !== undefined) worst.add(at);
    }
  }
  return [...worst].sort((one, other) => one - other);
}

const fewDevices = 32;

/** Devices of one rating and family, from the greatest short to the least. */
interface DevicesOfAKind {
  readonly protection: Protection;
  readonly devices: readonly {
    readonly at: number;
    readonly greatestA: number;
    /** The least index of those up to this one. */
    readonly firstAt: number;
  }[];
}

/** Conductors of one zone have the same devices, in the same list: it is sorted once for all of them. */
function kindsOf(
  { network, result }: { readonly network: Network; readonly result: NetworkResult },
  protectedBy: readonly number[],
): readonly DevicesOfAKind[] {
  let ofNetwork = known.get(network);
  if (!ofNetwork) {
    ofNetwork = new Map();
    known.set(network, ofNetwork);
  }
  let kinds = ofNetwork.get(protectedBy);
  if (!kinds) {
    const byKind = new Map<
      string,
      { protection: Protection; devices: { at: number; greatestA: number }[] }
    >();
    for (const at of protectedBy) {
      const device = result.faults.devices[at];
      const protection = device && protectionOf(network, device);
      if (!device || !protection) continue;
      const key = `${protection.ratingA} ${protection.family ?? ""}`;
      const one = { at, greatestA: device.greatestA };
      const kind = byKind.get(key);
      if (kind) kind.devices.push(one);
      else byKind.set(key, { protection, devices: [one] });
    }
    kinds = [...byKind.values()].map(({ protection, devices }) => {
      let firstAt = Number.POSITIVE_INFINITY;
      return {
        protection,
        devices: devices
          .sort((one, other) => other.greatestA - one.greatestA || one.at - other.at)
          .map((device) => {
            firstAt = Math.min(firstAt, device.at);
            return { ...device, firstAt };
          }),
      };
    });
    ofNetwork.set(protectedBy, kinds);
  }
  return kinds;
}

const known = new WeakMap<Network, Map<readonly number[], readonly DevicesOfAKind[]>>();

/** Undefined if the conductor withstands the fault, or if this is unknown. */
function tooMuchHeat(
  run: Pick<Run, "conductor" | "insulationC">,
  device: Pick<Protection, "ratingA" | "family">,
  currentA: number,
): TooMuchHeat | undefined {
  const judged = faultWithstand(run, device, currentA);
  if (!judged.judged || judged.withstands) return undefined;
  return {
    currentA,
    lastsS: judged.letThroughA2s / currentA ** 2,
    bearsS: judged.withstandA2s / currentA ** 2,
    initialC: judged.initialC,
    finalC: judged.finalC,
    openingSource: judged.openingSource,
  };
}

function excess({ heat }: FaultHeating): number {
  return heat.lastsS / heat.bearsS;
}

/** Whether it is certain that the conductor withstands the short. */
export function standsShort(
  run: Pick<Run, "conductor" | "insulationC">,
  device: Pick<Protection, "ratingA" | "family">,
  currentA: number,
): boolean {
  const judged = faultWithstand(run, device, currentA);
  return judged.judged && judged.withstands;
}
