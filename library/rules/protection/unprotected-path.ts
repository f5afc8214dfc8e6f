import { ampacityOf } from "../../analysis/ampacity.ts";
import { type MachineLimit, machineLimit } from "../../analysis/machine-protection.ts";
import { nearestMadeRating, nearestRatingBelow } from "../../analysis/made-ratings.ts";
import { sizesAbove } from "../../analysis/made-sizes.ts";
import { isProtectedAtOtherEnd } from "../../analysis/network/faults/fed-at-device.ts";
import type { UnprotectedPath } from "../../analysis/network/topology/network-topology.ts";
import { protectionRangeOfPart } from "../../analysis/protection-range.ts";
import { mostAboveNeed, repairSizing } from "../../analysis/repair-sizing.ts";
import { thinnestNeeded } from "../../analysis/sizing.ts";
import { workedOutOnce } from "../../analysis/worked-out-once.ts";
import type { Network, NetworkConductor, ProtectiveDevice } from "../../model/network.ts";
import type { BuildSettings } from "../../model/plan-model.ts";
import {
  boundBySubpartI,
  protectionOfMachine,
  protectionRequired,
} from "../../standards/protection-rules.ts";
import { isAbove } from "../current-through.ts";
import type { ProposedFix, Related } from "../finding.ts";
import { insertingFixes, runOf } from "../fixes/inserted-protection.ts";
import { type Device, ratingFix, statedWithUnit, theDevice, whyNoRating } from "../fixes/judged-devices.ts";
import { type PlacedDevice, placedDevice, relatedDevice } from "../fixes/placed-device.ts";
import { sizedFixes, sizeInWords } from "../fixes/sized-fix.ts";
import {
  defineRule,
  type Found,
  inNetwork,
  type JudgedNetwork,
  type JudgedPlan,
  type JudgedRun,
} from "../rule.ts";
import { exceeds, formatRounded, withUnit } from "../wording/format-number.ts";
import {
  atEnd,
  atStart,
  conductorInWords,
  listInWords,
  partInWords,
  relatedConductor,
  relatedPart,
} from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const unprotectedPath = defineRule<Values>({
  id: "protection/unprotected-path",
  title: "Unprotected path from a source",
  formerTitles: ["A source reaches this conductor past no fuse"],
  severity: "error",
  why: "If no fuse small enough for a conductor is between it and a battery, a short burns the conductor along its whole length.",
  sources: [protectionRequired, protectionOfMachine.source],
  fixable: true,
  acceptable: true,
  // Needs the topology's paths. A conductor whose other end has a device that is needed too is left to protection/both-ends.
  check: (plan) =>
    inNetwork(plan, (judged) => [
      // Solar modules cannot blow a correctly rated fuse: their conductor must carry their current, and solar/conductor checks
      // it.
      ...judged.result.topology.unprotected
        .filter((path) => !isProtectedAtOtherEnd(judged.network, path) && !path.fromPanelsAlone)
        .map((path) => foundOnPath(plan, judged, path)),
      ...judged.network.conductors.flatMap((_, index) => foundAtMachine(plan, judged, index)),
    ]),
  message(values) {
    switch (values.what) {
      case "conductor": {
        const { sources, sourceCount, past, size, ampacityA, source, wayOut: way } = values;
        const reach = sourceCount > 1 ? "reach" : "reaches";
        const before =
          past === undefined
            ? "through no fuse or breaker"
            : `through no device below ${withUnit(past, "A")}`;
        return `${atStart(listInWords(sources, 2, sourceCount))} ${reach} ${values.conductor} ${before}; ${size} may carry ${withUnit(ampacityA, "A")} here (${source}): ${way}.`;
      }
      case "machine": {
        const { device, maxA, alternator, ratedA, source, wayOut: way } = values;
        return `${theDevice(device)} is above ${withUnit(maxA, "A")}, ${formatRounded(protectionOfMachine.ofRatingPercent)} % of the ${statedWithUnit(ratedA, "A")} of ${alternator}, which does not limit its current (${source}, ${lawInWords(values.installedIn)}): ${way}.`;
      }
    }
  },
});

type Values = ConductorValues | MachineValues;

interface ConductorValues {
  readonly what: "conductor";
  readonly conductor: string;
  /** Sources that reach it, as messages name them: the first ones of many. */
  readonly sources: readonly string[];
  readonly sourceCount: number;
  /** The smallest rating on the path, which is above the conductor's ampacity, A; undefined: there is no device. */
  readonly past: number | undefined;
  readonly size: string;
  readonly ampacityA: number;
  readonly source: string;
  readonly wayOut: string;
}

interface MachineValues {
  readonly what: "machine";
  readonly device: Device;
  readonly maxA: number;
  readonly alternator: string;
  readonly ratedA: number;
  readonly installedIn: BuildSettings["installedIn"];
  readonly source: string;
  readonly wayOut: string;
}

function foundOnPath(plan: JudgedPlan, judged: JudgedNetwork, path: UnprotectedPath): Found<Values> {
  const conductor = judged.network.conductors[path.conductor] as NetworkConductor;
  const run = runOf(plan, conductor.run);
  const { ampacity } = run.result;
  const lesser = lesserRating(plan, judged, path);
  const [repairs, offers] = [lesser.filter(isRepair), lesser.filter((fix) => !isRepair(fix))];
  const first = [...repairs, ...insertingFixes(plan, judged, path), ...offers];
  const fixes = [...first, ...thickerFixes(plan, judged, path, first)];
  const onWay = tooGreatOnWay(judged.network, path);
  const values: ConductorValues = {
    what: "conductor",
    conductor: conductorInWords(conductor),
    sources: path.sources.flatMap((index) => {
      const part = judged.network.parts[index];
      return part ? [partInWords(part)] : [];
    }),
    sourceCount: path.sourceCount,
    past: onWay.reduce<number | undefined>(
      (least, { ratingA }) => Math.min(least ?? ratingA, ratingA),
      undefined,
    ),
    size: sizeInWords(conductor.run.conductor),
    ampacityA: ampacity.judged ? ampacity.ampacityA : 0,
    source: sourceInWords(protectionRequired),
    wayOut: wayOut(fixes, whyNoRating(run.result, null)),
  };
  const [end] = path.ends;
  return {
    subject: conductor.name,
    at: atEnd(conductor, end === "far" ? "to" : "from"),
    values,
    related: relatedOnPath(judged, path),
    fixes,
  };
}

/** The sources, the conductors from the first of them, and the devices that are too large to protect it. */
function relatedOnPath({ network }: JudgedNetwork, { sources, way, tooGreat }: UnprotectedPath): Related[] {
  return [
    ...sources.flatMap((index) => {
      const part = network.parts[index];
      return part ? [relatedPart(part, `${partInWords(part)} reaches it`)] : [];
    }),
    ...way.slice(0, mostOnWay).flatMap((index) => {
      const conductor = network.conductors[index];
      return conductor ? [relatedConductor(conductor, `${conductorInWords(conductor)} leads there`)] : [];
    }),
    ...tooGreat.slice(-mostOnWay).flatMap((device) => {
      const placed = placedDevice(network, device);
      return placed ? [relatedDevice(placed, "is rated too high to protect it")] : [];
    }),
  ];
}

/** The devices on the path to a conductor that are rated above its ampacity; its own devices left out. */
function tooGreatOnWay({ devices }: Network, { conductor, tooGreat }: UnprotectedPath): ProtectiveDevice[] {
  return tooGreat
    .flatMap((device) => devices[device] ?? [])
    .filter(({ place }) => place.at === "part" || place.conductor !== conductor);
}

/** On a longer path, only the conductors nearest to the source and the devices nearest to the conductor. */
const mostOnWay = 32;

function isRepair({ kind }: ProposedFix): boolean {
  return kind === "repair";
}

/**
 * For a cable with a device on the path: a size that the device protects. A load's own wires get a fuse of their own. It is a
 * repair only if there is no other fix, and within the cap on thickness.
 */
function thickerFixes(
  plan: JudgedPlan,
  { network }: JudgedNetwork,
  path: UnprotectedPath,
  others: readonly ProposedFix[],
): ProposedFix[] {
  const [protection] = tooGreatOnWay(network, path).sort((one, other) => one.ratingA - other.ratingA);
  const conductor = network.conductors[path.conductor];
  if (!protection || conductor?.role !== "cable") return [];
  const { circuit } = runOf(plan, conductor.run);
  const alone = { ...circuit, protection, protectionFarEnd: null, fedFromBothEnds: false };
  const needed = thinnestNeeded(alone);
  if (needed?.ratingA !== protection.ratingA) return [];
  const ownNeed = repairSizing(plan).ofRun(circuit)?.conductor ?? circuit.conductor;
  const within = sizesAbove(needed.conductor, ownNeed) <= mostAboveNeed;
  const kind = within && others.length === 0 ? "repair" : "suggestion";
  return sizedFixes(alone, needed).map((fix) => ({ ...fix, kind }));
}

/**
 * A smaller fuse or breaker in the part on the path: the largest that is made between its own load and the ampacity of the
 * conductors behind it. If other conductors branch off there, it is larger for their sake, and the builder decides.
 */
function lesserRating(plan: JudgedPlan, judged: JudgedNetwork, path: UnprotectedPath): ProposedFix[] {
  const least = leastOnWay(judged.network, path);
  const placed = least && placedDevice(judged.network, least.index);
  if (!least || !placed?.part) return [];
  const { minA, aimA, maxA } = protectionRangeOfPart(judged, placed.part);
  const carriesAll = (one: UnprotectedPath) => !isAbove(minA, loadOf(plan, judged.network, one));
  const ampacityA = (one: UnprotectedPath) => {
    const ampacity = ampacityOf(judged.network.conductors[one.conductor]!.run);
    return ampacity.judged ? ampacity.ampacityA : Number.POSITIVE_INFINITY;
  };
  const behind = pathsByLeast(judged).get(least.index) ?? [];
  const inLine = behind.filter(carriesAll);
  const toA = Math.min(maxA ?? Number.POSITIVE_INFINITY, ...[path, ...inLine].map(ampacityA));
  const ratingA = nearestMadeRating(least.ratingA, { fromA: aimA, toA }, placed.protection.family);
  if (ratingA === undefined) return [];
  return [{ ...ratingFix(placed, ratingA), kind: carriesAll(path) ? "repair" : "suggestion" }];
}

/** The smallest of the devices on a path, which is nevertheless too large. */
function leastOnWay(network: Network, path: UnprotectedPath): ProtectiveDevice | undefined {
  return tooGreatOnWay(network, path).sort((one, other) => one.ratingA - other.ratingA)[0];
}

function loadOf(plan: JudgedPlan, { conductors }: Network, { conductor }: UnprotectedPath): number {
  return runOf(plan, conductors[conductor]!.run).circuit.loadA;
}

/** By device: the paths on which it is the smallest. */
const pathsByLeast = workedOutOnce(({ network, result }: JudgedNetwork) => {
  const paths = new Map<number, UnprotectedPath[]>();
  for (const path of result.topology.unprotected) {
    const least = leastOnWay(network, path);
    if (least) paths.set(least.index, [...(paths.get(least.index) ?? []), path]);
  }
  return paths;
});

/** 33 CFR 183.460(b): the smallest device in a conductor from such a machine is at most 120 % of its rating. */
function foundAtMachine(plan: JudgedPlan, judged: JudgedNetwork, index: number): Found<Values>[] {
  const limit = machineLimit(judged.network, index);
  if (!limit) return [];
  const { network } = judged;
  const { near, far, from, to } = network.conductors[index]!;
  const beside = network.devices.filter(({ place }) => {
    const part = place.at === "part" ? network.parts[place.part] : undefined;
    return part && [from, to].some((terminal) => network.terminals[terminal]!.part === part.index);
  });
  const [least] = [near, far, ...beside]
    .flatMap((device) => (device && placedDevice(network, device.index)) ?? [])
    .sort((one, other) => one.device.ratingA - other.device.ratingA);
  if (!least || !exceeds(least.device.ratingA, limit.maxA)) return [];
  const conductor = judged.network.conductors[index] as NetworkConductor;
  const fixes = machineFixes(runOf(plan, conductor.run), least, limit);
  const values: MachineValues = {
    what: "machine",
    device: least.device,
    maxA: limit.maxA,
    alternator: partInWords(limit.alternator),
    ratedA: limit.alternator.ratedA,
    installedIn: plan.model.build.installedIn,
    source: sourceInWords(protectionOfMachine.source),
    wayOut: wayOut(fixes, "use one with a lower rating"),
  };
  return [
    {
      subject: least.subject,
      at: least.at,
      // Elsewhere the limit is taken over: the machine may burn, but its conductor is protected.
      severity: isBound(values.installedIn) ? "error" : "warning",
      values,
      related: [relatedPart(limit.alternator)],
      fixes,
    },
  ];
}

/** The largest made rating that the regulation allows, and that still carries the current. */
function machineFixes({ result }: JudgedRun, placed: PlacedDevice, { maxA }: MachineLimit): ProposedFix[] {
  const largestA = Math.min(maxA, result.protection.maxA ?? 0);
  const ratingA = nearestRatingBelow(largestA, placed.protection.family);
  return ratingA === undefined || ratingA < result.protection.minA ? [] : [ratingFix(placed, ratingA)];
}

/** Whether 33 CFR 183, Subpart I may be law for the build: 183.401(a). */
function isBound(installedIn: BuildSettings["installedIn"]): boolean {
  return installedIn === undefined || installedIn === "boat with petrol engine";
}

function lawInWords(installedIn: BuildSettings["installedIn"]): string {
  if (installedIn === "boat with petrol engine") return "law for this boat";
  return isBound(installedIn) ? `law for ${boundBySubpartI}` : `taken over: law only for ${boundBySubpartI}`;
}
