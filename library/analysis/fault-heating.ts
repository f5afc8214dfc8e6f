import type { Network, NetworkConductor } from "../model/network.ts";
import type { Protection, Run } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { adiabaticCopper } from "../standards/short-circuit-copper.ts";
import { ampacityOf } from "./ampacity.ts";
import { withstandOf } from "./fault-withstand.ts";
import { firstIndex } from "./first-index.ts";
import { groupedBy } from "./grouped-by.ts";
import { letThrough } from "./let-through.ts";
import { sharesShorts } from "./network/faults/fed-at-device.ts";
import type { DeviceFault, NetworkResult, ReturnFault } from "./network-result.ts";
import { gatesFor, percentOfRating, sourceOf, type TimedDevice } from "./opening-time.ts";

/** A short that heats a conductor beyond its withstand before a device opens. */
interface FaultHeating {
  readonly device: DeviceFault;
  readonly range: ShortRange;
  /** The range follows from an internal resistance that is not stated. */
  readonly estimated: boolean;
  readonly heat: TooMuchHeat;
}

/** The currents of the shorts that a conductor can have, A. */
export interface ShortRange {
  readonly leastA: number;
  readonly greatestA: number;
}

/** The heat of a short, expressed as durations of its current. */
interface TooMuchHeat extends TimedShort {
  /** Maximum time until the device has opened, s: its let-through, divided by the square of the current. */
  readonly lastsS: number;
  /** Time until the conductor reaches the temperature its insulation withstands for a moment, s. */
  readonly bearsS: number;
  /** °C: the insulation's limit in use, and its limit for a moment. */
  readonly initialC: number;
  readonly finalC: number;
}

/** The maximum let-through of a device at one current. */
interface TimedShort {
  readonly currentA: number;
  readonly letThroughA2s: number;
  /**
   * "at a gate": its standard states the time at this very current. "between": the time is that of the gate below, because the
   * standard states none nearer.
   */
  readonly where: "at a gate" | "between" | "beyond the gates";
  /** The current is that of the next gate, whose own time is shorter: the short is just below it. */
  readonly justUnder?: true;
  readonly source: Citation;
}

/** The judged plan's network, with its results. */
interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/**
 * The worst heat of any short in a conductor, of the devices that protect it: of the shorts that are certain to heat it too far
 * if there are any. A device rated above the conductor's ampacity is no protection for it, and left out. Undefined if the
 * conductor withstands every short, or if no time to open is known.
 *
 * @param returns The shorts that return through the conductor.
 */
function worstHeating(
  judged: Judged,
  conductor: NetworkConductor,
  index: number,
  returns: readonly ReturnFault[],
): FaultHeating | undefined {
  const own = judged.result.faults.conductors[index];
  const faults = [
    ...(own?.greatestA === undefined ? [] : [{ ...own, greatestA: own.greatestA }]),
    ...returns,
  ];
  const found = faults.flatMap((fault) => heatingsIn(judged, conductor.run, fault));
  return found.sort((one, other) => rank(one) - rank(other) || excess(other) - excess(one))[0];
}

/**
 * The heatings of a network. Of both conductors of a circuit, which are alike, the first one; of those that no confirmed gate
 * carries, the worst one of each device, which represents all conductors behind it.
 */
export function faultHeatings(judged: Judged): readonly ConductorHeating[] {
  const found = new Map<Run, ConductorHeating>();
  const returns = groupedBy(judged.result.faults.returns, ({ conductor }) => conductor);
  judged.network.conductors.forEach((conductor, index) => {
    const heating = found.has(conductor.run)
      ? undefined
      : worstHeating(judged, conductor, index, returns.get(index) ?? []);
    if (heating) found.set(conductor.run, { ...heating, conductor });
  });
  const worst = new Map<number, ConductorHeating>();
  for (const heating of found.values()) {
    const known = worst.get(heating.device.device);
    if (!isCarried(heating.heat) && (!known || excess(heating) > excess(known)))
      worst.set(heating.device.device, heating);
  }
  return [...found.values()].filter(
    (heating) => isCarried(heating.heat) || worst.get(heating.device.device) === heating,
  );
}

export interface ConductorHeating extends FaultHeating {
  readonly conductor: NetworkConductor;
}

/** Whether a gate that was read carries a verdict at its own current, or one that the builder states. */
export function isCarried({ where, source }: Pick<TimedShort, "where" | "source">): boolean {
  if (source.confirmed === "memory") return false;
  // The time of a breaker beyond its last gate is at most that gate's: an assumption, also if the builder states the gate.
  if (where === "beyond the gates") return false;
  return where === "at a gate" || source.authority === "stated in the plan";
}

function rank({ heat }: FaultHeating): number {
  return isCarried(heat) ? 0 : 1;
}

function heatingsIn(
  judged: Judged,
  run: Run,
  fault: {
    readonly greatestA: number;
    readonly leastA?: number;
    readonly estimated: boolean;
    readonly protectedBy: readonly number[];
  },
): FaultHeating[] {
  const { network, result } = judged;
  const ampacity = ampacityOf(run);
  return worstOf(judged, fault.protectedBy, fault.greatestA).flatMap((at): FaultHeating[] => {
    const device = result.faults.devices[at];
    const protection = device && network.devices[device.device];
    if (!device || !protection || (ampacity.judged && protection.ratingA > ampacity.ampacityA)) return [];
    const greatestA = Math.min(fault.greatestA, device.greatestA);
    // Of a short that several devices share, only the greatest share is known.
    const shares = sharesShorts(network, device.device);
    const leastA = shares ? greatestA : Math.min(greatestA, fault.leastA ?? greatestA);
    const range = { leastA, greatestA };
    const heat = tooMuchHeat(run, protection, range);
    return heat ? [{ device, range, estimated: fault.estimated, heat }] : [];
  });
}

/**
 * From the devices that protect a conductor, those that include the worst one, in their order. A few are all checked. Among
 * many, as the fuses of thousands of batteries on one bus, devices of one rating and family differ only in the current. Their
 * let-through grows with it, up to the next multiple of the rating for which the gates give a shorter time.
 */
function worstOf(judged: Judged, protectedBy: readonly number[], greatestA: number): readonly number[] {
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
function kindsOf({ network, result }: Judged, protectedBy: readonly number[]): readonly DevicesOfAKind[] {
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
      const protection = device && network.devices[device.device];
      if (!device || !protection) continue;
      const key = `${protection.ratingA} ${protection.family ?? ""} ${protection.opening ? at : ""}`;
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

/** The worst of the shorts in a range that heat a conductor too far; undefined if there are none, or if no time is known. */
function tooMuchHeat(
  run: Pick<Run, "conductor" | "insulationC">,
  device: TimedDevice,
  range: ShortRange,
): TooMuchHeat | undefined {
  const { withstandA2s, initialC, finalC } = withstandOf(run);
  const [worst] = timedShorts(device, range)
    .filter(({ letThroughA2s }) => letThroughA2s > withstandA2s)
    .sort(
      (one, other) =>
        Number(isCarried(other)) - Number(isCarried(one)) || other.letThroughA2s - one.letThroughA2s,
    );
  if (!worst) return undefined;
  return {
    ...worst,
    lastsS: worst.letThroughA2s / worst.currentA ** 2,
    bearsS: withstandA2s / worst.currentA ** 2,
    initialC,
    finalC,
  };
}

/**
 * The shorts of a range at which the let-through of a device is greatest: at each of its gates, just below the next one, and at
 * the greatest current. Times above 5 s are left out: the heat of a short that lasts longer escapes.
 */
function timedShorts(device: TimedDevice, { leastA, greatestA }: ShortRange): TimedShort[] {
  const table = gatesFor(device);
  const gates = table?.gates ?? [];
  const ampere = (percent: number) => (device.ratingA * percent) / 100;
  const shorts = gates.flatMap((gate, index): TimedShort[] => {
    const { percentOfRating: percent, maxS } = gate;
    const next = gates[index + 1];
    if (!table || !next || maxS === null || maxS > adiabaticCopper.validUpToS) return [];
    const [gateA, nextA] = [ampere(percent), ampere(next.percentOfRating)];
    const upToA = Math.min(greatestA, nextA);
    if (upToA < gateA || nextA <= leastA) return [];
    const source = sourceOf(gate, table);
    const at = (currentA: number, where: TimedShort["where"]): TimedShort => ({
      currentA,
      letThroughA2s: currentA ** 2 * maxS,
      where,
      source,
    });
    const between = at(upToA, "between");
    return [
      ...(gateA >= leastA ? [at(gateA, "at a gate")] : []),
      upToA === nextA ? { ...between, justUnder: true } : between,
    ];
  });
  return [...shorts, ...beyondGates(device, { leastA, greatestA })];
}

/** From the last gate on, and of a device whose let-through the builder states. */
function beyondGates(device: TimedDevice, { leastA, greatestA }: ShortRange): TimedShort[] {
  const lastPercent = gatesFor(device)?.gates.at(-1)?.percentOfRating;
  const lastA = lastPercent === undefined ? 0 : (device.ratingA * lastPercent) / 100;
  if (greatestA < lastA || greatestA <= 0) return [];
  const through = letThrough(device, greatestA);
  if (!through.judged || through.openingS > adiabaticCopper.validUpToS) return [];
  const { letThroughA2s, source } = through;
  // The let-through stays the same from the last gate on: that gate's own current shows it best.
  const isAtGate = lastA >= leastA && source.authority !== "stated in the plan";
  const isHeld = device.family === "circuit breaker" && device.letThroughA2s === undefined;
  return [
    isAtGate
      ? { currentA: lastA, letThroughA2s, where: "at a gate", source }
      : { currentA: greatestA, letThroughA2s, where: isHeld ? "beyond the gates" : "between", source },
  ];
}

function excess({ heat }: FaultHeating): number {
  return heat.lastsS / heat.bearsS;
}

/** Whether a device is known to open before any short of a range heats a conductor too far. */
export function standsShorts(
  run: Pick<Run, "conductor" | "insulationC">,
  device: TimedDevice,
  range: ShortRange,
): boolean {
  return timedShorts(device, range).length > 0 && tooMuchHeat(run, device, range) === undefined;
}
