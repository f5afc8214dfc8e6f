import { endsAt } from "../../analysis/network/topology/ends-at.ts";
import { bestRating, protectionRangeOfPart } from "../../analysis/protection-range.ts";
import { repairSizing } from "../../analysis/repair-sizing.ts";
import { opensWithinSurge, type SupplyLoad, supplyLoads } from "../../analysis/supply-current.ts";
import type { DcDcChargerPart, InverterPart } from "../../model/network.ts";
import { isDevice, lowestVoltage } from "../../model/part-roles.ts";
import { lowestCellVoltage } from "../../standards/device-practice.ts";
import { isAbove } from "../current-through.ts";
import type { At } from "../finding.ts";
import {
  atProperty,
  type Found,
  inNetwork,
  type JudgedNetwork,
  type JudgedPlan,
  type JudgedRun,
} from "../rule.ts";
import { formatDistinctWithUnit, formatExact, formatRounded, withUnit } from "../wording/format-number.ts";
import { partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";
import { sizePath } from "../wording/property-paths.ts";
import { ampacitySourceInWords, sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";
import { type Device, devicesOf, ratingFix, theDevice, whyNoRating } from "./judged-devices.ts";
import { placedPart } from "./placed-device.ts";
import { fixesOfRun, sizeInWords, whyNoSize } from "./sized-fix.ts";

/**
 * Constant-power devices draw more current at a lower voltage. These are the findings on the runs that supply such a device at
 * its minimum voltage: conductors too thin, and devices that open.
 */
export function supplyFindings<Part extends InverterPart | DcDcChargerPart>(
  plan: JudgedPlan,
  {
    parts,
    takes,
    surges,
  }: {
    readonly parts: (judged: JudgedNetwork) => readonly Part[];
    /** The maximum current it takes, A: at the lowest voltage at which it works. */
    readonly takes: (part: Part) => number;
    /** The surge current for seconds at the same voltage, A. */
    readonly surges?: (part: Part) => number | undefined;
  },
): Found<SupplyValues>[] {
  const runs = new Map(plan.circuits.map((run) => [run.circuit.record, run]));
  return inNetwork(plan, (judged) =>
    parts(judged).flatMap((part) => {
      const { voltageV: atV, isStated } = lowestVoltage(part);
      const taking: Taking = { currentA: takes(part), atV, isEstimated: !isStated };
      const loads = supplyLoads(judged, part, taking.currentA);
      const lasting = [
        ...worstOfEachRun(runs, judged, loads).flatMap(({ run, load }) =>
          findingsOn(plan, run, { judged, part, taking, load }),
        ),
        ...findingsOnDevices({ judged, part, taking }, loads),
      ];
      const surgeA = surges?.(part);
      if (surgeA === undefined) return lasting;
      const surging = worstOfEachRun(runs, judged, supplyLoads(judged, part, surgeA)).flatMap(
        ({ run, load }) =>
          surgeFindingsOn(run, { judged, part, taking: { ...taking, currentA: surgeA }, load }),
      );
      // A device that opens at the lasting current needs no advice about seconds.
      return [...lasting, ...surging.filter(({ at }) => !lasting.some((other) => isSamePlace(other.at, at)))];
    }),
  );
}

interface Taking {
  readonly currentA: number;
  readonly atV: number;
  /** The plan does not state that voltage. */
  readonly isEstimated: boolean;
}

export interface SupplyValues {
  /** "the inverter kettle". */
  readonly device: string;
  readonly taking: Taking;
  /** The current here, with all else that is on, A. */
  readonly hereA: number;
  /** Share of the device's current, 0 to 1. */
  readonly share: number;
  /** `in "everything on"`, if other currents flow here too. */
  readonly scenario?: string;
  readonly limit: Limit;
  readonly wayOut: string;
}

type Limit =
  | { readonly of: "conductor"; readonly size: string; readonly ampacityA: number; readonly source: string }
  | { readonly of: "device"; readonly device: Device }
  | { readonly of: "surge"; readonly device: Device; readonly afterS: number; readonly source: string };

export function supplyMessage({ device, taking, hereA, share, scenario, limit, wayOut: way }: SupplyValues) {
  const limitA = limit.of === "conductor" ? limit.ampacityA : limit.device.ratingA;
  const [here, allowed] = formatDistinctWithUnit(hereA, limitA, "A");
  const all = withUnit(taking.currentA, "A");
  const flows =
    scenario !== undefined
      ? `${all}, which makes ${here} here ${scenario}`
      : share < wholeShare
        ? `${all}, ${here} of it here`
        : here;
  const source = taking.isEstimated ? ` (estimated: ${sourceInWords(lowestCellVoltage.source)})` : "";
  const surge = limit.of === "surge" ? " for seconds" : "";
  return `At ${formatExact(taking.atV)} V${source} ${device} takes ${flows}${surge}; ${limitInWords(limit, allowed)}: ${way}.`;
}

function limitInWords(limit: Limit, allowed: string): string {
  if (limit.of === "conductor") return `${limit.size} may carry ${allowed} (${limit.source})`;
  const device = theDevice(limit.device).replace(/^The /, "the ");
  return limit.of === "device"
    ? `${device} opens`
    : `${device} may open after ${formatRounded(limit.afterS)} s (${limit.source})`;
}

/** Batteries that share evenly to within rounding count as one. */
const wholeShare = 1 - 1e-6;

function isSamePlace(one: At, other: At): boolean {
  return (
    "record" in one &&
    "record" in other &&
    one.record === other.record &&
    one.path.join(".") === other.path.join(".")
  );
}

/** Both conductors of a circuit are one run: judged by the one that carries more. */
function worstOfEachRun(
  runs: ReadonlyMap<number, JudgedRun>,
  { network }: JudgedNetwork,
  loads: readonly SupplyLoad[],
) {
  const worst = new Map<JudgedRun, SupplyLoad>();
  for (const load of loads) {
    const run = runs.get(network.conductors[load.conductor]?.record ?? -1);
    if (run && load.currentA > (worst.get(run)?.currentA ?? 0)) worst.set(run, load);
  }
  return [...worst].map(([run, load]) => ({ run, load }));
}

interface On {
  readonly judged: JudgedNetwork;
  readonly part: InverterPart | DcDcChargerPart;
  readonly taking: Taking;
  readonly load: SupplyLoad;
}

function findingsOn(plan: JudgedPlan, run: JudgedRun, on: On): Found<SupplyValues>[] {
  const { circuit, result } = run;
  const { ampacity } = result;
  const { currentA } = on.load;
  const fixes = fixesOfRun(circuit, repairSizing(plan));
  const found: Found<SupplyValues>[] = [];
  const rest = { subject: circuit.name, related: [relatedPart(on.part)], fixes };
  if (ampacity.judged && isAbove(currentA, ampacity.ampacityA)) {
    const limit: Limit = {
      of: "conductor",
      size: sizeInWords(circuit.conductor),
      ampacityA: ampacity.ampacityA,
      source: ampacitySourceInWords(ampacity),
    };
    const way = wayOut(fixes, whyNoSize(circuit, "no standard size is enough; set parallel"));
    found.push({ ...rest, at: atProperty(circuit, ...sizePath(circuit)), values: valuesOf(on, limit, way) });
  }
  for (const { device, protection, at } of devicesOf(run)) {
    if (!isAbove(currentA, device.ratingA)) continue;
    const way = wayOut(fixes, whyNoRating(circuit, result, protection));
    found.push({ ...rest, at, values: valuesOf(on, { of: "device", device }, way) });
  }
  return found;
}

/** On the devices on the supply path that are parts of their own. */
function findingsOnDevices(on: Omit<On, "load">, loads: readonly SupplyLoad[]): Found<SupplyValues>[] {
  const { network } = on.judged;
  const devices = network.parts.filter(isDevice);
  const byConductor = new Map(loads.map((load) => [network.conductors[load.conductor], load]));
  return devices.flatMap((device): Found<SupplyValues>[] => {
    // The one of several cables that carries the most: all of them together carry no less.
    const [load] = endsAt(network, device.terminals.load)
      .flatMap((conductor) => byConductor.get(conductor) ?? [])
      .sort((one, other) => other.currentA - one.currentA);
    const placed = load && placedPart(network, device);
    if (!placed || !isAbove(load.currentA, device.ratingA)) return [];
    const { aimA, maxA } = protectionRangeOfPart(on.judged, device);
    const ratingA = bestRating({ aimA: Math.max(aimA, load.currentA), maxA }, device.family);
    const fixes = ratingA === undefined ? [] : [ratingFix(placed, ratingA)];
    const way = wayOut(fixes, "use a higher rating, with conductors that it protects");
    const values = valuesOf({ ...on, load }, { of: "device", device: placed.device }, way);
    return [{ subject: device.name, at: placed.at, values, related: [relatedPart(on.part)], fixes }];
  });
}

/** Advice: the duration of a surge is unknown, and gates are wide. */
function surgeFindingsOn(run: JudgedRun, on: On): Found<SupplyValues>[] {
  return devicesOf(run).flatMap(({ device, protection, at }): Found<SupplyValues>[] => {
    const opens = opensWithinSurge(protection, on.load.currentA);
    if (!opens) return [];
    const limit: Limit = {
      of: "surge",
      device,
      afterS: opens.afterS,
      source: sourceInWords(opens.source),
    };
    const values = valuesOf(on, limit, "use a slower family, or a higher rating on a thicker conductor");
    return [{ subject: run.circuit.name, at, severity: "info", values, related: [relatedPart(on.part)] }];
  });
}

function valuesOf({ judged, part, taking, load }: On, limit: Limit, way: string): SupplyValues {
  const { scenario } = load;
  return {
    device: partInWords(part),
    taking,
    hereA: load.currentA,
    share: load.share,
    ...(scenario === undefined ? {} : { scenario: scenarioInWords(judged.network, scenario) }),
    limit,
    wayOut: way,
  };
}
