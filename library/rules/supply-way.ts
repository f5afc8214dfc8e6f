import { thinnestSufficient } from "../analysis/sizing.ts";
import { type SupplyLoad, supplyLoads } from "../analysis/supply-current.ts";
import type { DcDcChargerPart, InverterPart } from "../model/network.ts";
import type { Citation } from "../standards/citation.ts";
import { isAbove } from "./current-through.ts";
import { asGiven, tellApartWithUnit, withUnit } from "./figures.ts";
import type { ProposedFix } from "./finding.ts";
import { partInWords, relatedPart, scenarioInWords } from "./part-in-words.ts";
import { type Device, protectedEnds, theDevice, whyNoRating } from "./protected-ends.ts";
import {
  atProperty,
  type Found,
  inNetwork,
  type JudgedCircuit,
  type JudgedNetwork,
  type JudgedPlan,
} from "./rule.ts";
import { sizedFixes, sizeInWords } from "./sized-fix.ts";
import { ampacitySourceInWords, sourceInWords } from "./source-in-words.ts";
import { wayOut } from "./way-out.ts";
import { sizePath } from "./written-at.ts";

/**
 * Devices with a constant power take the more current the lower their voltage is. These are the findings on the runs that
 * supply such a device when it runs at its least voltage: what is too thin, and what opens.
 */
export function supplyFindings<Part extends InverterPart | DcDcChargerPart>(
  plan: JudgedPlan,
  {
    parts,
    takes,
  }: {
    readonly parts: (judged: JudgedNetwork) => readonly Part[];
    /** The greatest current it takes, A, and the voltage at which it does. */
    readonly takes: (part: Part) => Taking;
  },
): Found<SupplyValues>[] {
  return inNetwork(plan, (judged) =>
    parts(judged).flatMap((part) => {
      const taking = takes(part);
      const loads = supplyLoads(judged, part, taking.currentA);
      return worstOfEachRun(plan, judged, loads).flatMap(({ run, load }) =>
        findingsOn(run, { judged, part, taking, load }),
      );
    }),
  );
}

export interface Taking {
  readonly currentA: number;
  readonly atV: number;
  readonly atVSource: Citation;
}

export interface SupplyValues {
  /** "the inverter kettle". */
  readonly device: string;
  readonly taking: Omit<Taking, "atVSource"> & { readonly source: string };
  /** What flows here, with all else that is on, A. */
  readonly hereA: number;
  /** Of the device's current, 0 to 1. */
  readonly share: number;
  /** `in "everything on"`, where other currents flow here too. */
  readonly scenario?: string;
  readonly limit: Limit;
  readonly wayOut: string;
}

type Limit =
  | { readonly of: "conductor"; readonly size: string; readonly ampacityA: number; readonly source: string }
  | { readonly of: "device"; readonly device: Device };

/** About the run on which the finding sits; the caller puts before it when the device takes so much. */
export function supplyMessage({ device, taking, hereA, share, scenario, limit, wayOut: way }: SupplyValues) {
  const limitA = limit.of === "conductor" ? limit.ampacityA : limit.device.ratingA;
  const [here, allowed] = tellApartWithUnit(hereA, limitA, "A");
  const all = withUnit(taking.currentA, "A");
  const flows =
    scenario !== undefined
      ? `${all}, which makes ${here} here ${scenario}`
      : share < wholeShare
        ? `${all}, ${here} of it here`
        : here;
  const is =
    limit.of === "conductor"
      ? `${limit.size} may carry ${allowed} (${limit.source})`
      : `${theDevice(limit.device).replace(/^The /, "the ")} opens`;
  const source = taking.source ? ` (${taking.source})` : "";
  return `At ${asGiven(taking.atV)} V${source} ${device} takes ${flows}; ${is}: ${way}.`;
}

/** Batteries that share evenly to within rounding are one. */
const wholeShare = 1 - 1e-6;

/** Both conductors of a circuit are one run: judged by the one that carries more. */
function worstOfEachRun(plan: JudgedPlan, { network }: JudgedNetwork, loads: readonly SupplyLoad[]) {
  const runs = new Map(plan.circuits.map((run) => [run.circuit.record, run]));
  const worst = new Map<JudgedCircuit, SupplyLoad>();
  for (const load of loads) {
    const run = runs.get(network.conductors[load.conductor]?.record ?? -1);
    if (run && load.currentA > (worst.get(run)?.currentA ?? 0)) worst.set(run, load);
  }
  return [...worst].map(([run, load]) => ({ run, load }));
}

function findingsOn(
  run: JudgedCircuit,
  on: {
    readonly judged: JudgedNetwork;
    readonly part: InverterPart | DcDcChargerPart;
    readonly taking: Taking;
    readonly load: SupplyLoad;
  },
): Found<SupplyValues>[] {
  const { circuit, result } = run;
  const { part, taking, load } = on;
  const { ampacity } = result;
  const fixes = fixesFor(run, load.currentA);
  const { currentA, atV, atVSource } = taking;
  const values = (limit: Limit, otherwise: string): SupplyValues => ({
    device: partInWords(part),
    taking: {
      currentA,
      atV,
      source: atVSource.authority === "stated in the plan" ? "" : sourceInWords(atVSource),
    },
    hereA: load.currentA,
    share: load.share,
    ...(load.scenario === undefined ? {} : { scenario: scenarioInWords(on.judged.network, load.scenario) }),
    limit,
    wayOut: wayOut(fixes, otherwise),
  });
  const found: Found<SupplyValues>[] = [];
  const related = [relatedPart(part)];
  if (ampacity.judged && isAbove(load.currentA, ampacity.ampacityA)) {
    const limit: Limit = {
      of: "conductor",
      size: sizeInWords(circuit.conductor),
      ampacityA: ampacity.ampacityA,
      source: ampacitySourceInWords(ampacity),
    };
    found.push({
      subject: circuit.name,
      at: atProperty(circuit, ...sizePath(circuit)),
      values: values(limit, "no made size is enough; set parallel"),
      related,
      fixes,
    });
  }
  for (const { device, protection, at } of protectedEnds(run)) {
    if (!isAbove(load.currentA, device.ratingA)) continue;
    found.push({
      subject: circuit.name,
      at,
      values: values({ of: "device", device }, whyNoRating(result, protection)),
      related,
      fixes,
    });
  }
  return found;
}

/**
 * Conductor and ratings for that current, which does not flow for hours: a battery at the cut-off voltage is soon empty.
 * A rating keeps its headroom over what does. What is lost on the way is not judged: the device still runs.
 */
function fixesFor({ circuit, result }: JudgedCircuit, currentA: number): ProposedFix[] {
  const { minimumV: _, ...rest } = circuit;
  const withDevice = circuit.protection !== null || circuit.protectionFarEnd !== null;
  const loadA = Math.max(currentA, withDevice ? result.protection.aimA : circuit.loadA);
  const dropLimitPercent = Number.POSITIVE_INFINITY;
  return sizedFixes(circuit, thinnestSufficient({ ...rest, loadA, continuous: false, dropLimitPercent }));
}
