import type { Circuit, Protection } from "../model/circuit.ts";
import type { Network } from "../model/network.ts";
import type { Citation } from "../standards/citation.ts";
import { ampacityOf } from "./ampacity.ts";
import { faultWithstand } from "./fault-withstand.ts";
import type { DeviceFault, NetworkResult } from "./network-result.ts";

/** A short that heats a conductor beyond what it stands before a device opens. */
export interface FaultHeating {
  readonly device: DeviceFault;
  readonly heat: TooMuchHeat;
}

/** The heat of a short, as times for which its current may flow. */
interface TooMuchHeat {
  readonly currentA: number;
  /** Until the device has opened, at most, s: what it lets through, divided by the square of the current. */
  readonly lastsS: number;
  /** Until the conductor is as hot as its insulation bears for a moment, s. */
  readonly bearsS: number;
  /** °C: as warm as its insulation may be in use, and what it bears for a moment. */
  readonly initialC: number;
  readonly finalC: number;
  readonly openingSource: Citation;
}

/**
 * The worst of the devices that protect a conductor, for the greatest short in it that flows through the device. A device
 * rated above what the conductor may carry is no protection for it, and left out. Undefined: the conductor stands it, or the
 * time to open is not known.
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
  const found = fault.protectedBy.flatMap((at): FaultHeating[] => {
    const device = result.faults.devices[at];
    const holder = device && network.conductors[device.conductor];
    const protection = device?.end === "near" ? holder?.near : holder?.far;
    if (!device || !protection || (ampacity.judged && protection.ratingA > ampacity.ampacityA)) return [];
    const heat = tooMuchHeat(conductor.run, protection, Math.min(greatestA, device.greatestA));
    return heat ? [{ device, heat }] : [];
  });
  return found.sort((one, other) => excess(other) - excess(one))[0];
}

/** Undefined: it stands it, or nobody can tell. */
function tooMuchHeat(
  run: Pick<Circuit, "conductor" | "insulationC">,
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

/** Whether it is certain that the conductor stands it. */
export function standsShort(
  run: Pick<Circuit, "conductor" | "insulationC">,
  device: Pick<Protection, "ratingA" | "family">,
  currentA: number,
): boolean {
  const judged = faultWithstand(run, device, currentA);
  return judged.judged && judged.withstands;
}
