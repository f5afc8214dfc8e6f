import { ampacityOf } from "../../analysis/ampacity.ts";
import { crossSectionMm2 } from "../../analysis/copper-area.ts";
import { type MachineLimit, machineLimit } from "../../analysis/machine-protection.ts";
import { nearestMadeRating, nearestRatingBelow } from "../../analysis/made-ratings.ts";
import { sizesAbove } from "../../analysis/made-sizes.ts";
import { isProtectedAtOtherEnd } from "../../analysis/network/faults/fed-at-device.ts";
import { conductorsAt, networkGraph } from "../../analysis/network/topology/network-graph.ts";
import type { UnprotectedPath } from "../../analysis/network/topology/network-topology.ts";
import { protectionDistanceLimit } from "../../analysis/protection-distance.ts";
import { protectionRangeOfPart } from "../../analysis/protection-range.ts";
import { carriesAllOf, leastOnWay, tooGreatOnWay } from "../../analysis/rating-demands.ts";
import { mostAboveNeed, repairSizing } from "../../analysis/repair-sizing.ts";
import { thinnestNeeded } from "../../analysis/sizing.ts";
import { metresPerInch } from "../../model/length-limits.ts";
import type { Network, NetworkConductor, ProtectiveDevice } from "../../model/network.ts";
import { isDevice, isDistribution } from "../../model/part-roles.ts";
import type { BuildSettings } from "../../model/plan-model.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { parallelConductors } from "../../standards/parallel-conductors.ts";
import {
  boundBySubpartI,
  protectionOfMachine,
  protectionRequired,
} from "../../standards/protection-rules.ts";
import { isNamedInPlan, type ProposedFix, type Related } from "../finding.ts";
import { insertingFixes, runOf } from "../fixes/inserted-protection.ts";
import { type Device, ratingFix, statedWithUnit, theDevice, whyNoRating } from "../fixes/judged-devices.ts";
import {
  matchingFixes,
  type PlacedDevice,
  placedDevice,
  placedInWords,
  placedPart,
  relatedDevice,
} from "../fixes/placed-device.ts";
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
  terminalInWords,
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
  ignoresLoads: "except repairs",
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
  const fixes = fixesFor(plan, judged, path);
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
    wayOut: [
      elsewhere(plan, judged, path),
      thickerBeside(judged.network, path.conductor)
        ? undefined
        : wayOut(fixes, whyNoRating(run.circuit, run.result, null)),
    ]
      .filter((one) => one !== undefined)
      .join(", or "),
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

/** On a longer path, only the conductors nearest to the source and the devices nearest to the conductor. */
const mostOnWay = 32;

/**
 * The size that the conductor gets anyway, if the device before it protects that; or a lesser device, if all of its current flows here.
 * Else a device of the conductor's own; a size that the device before it protects; or a lesser device for the builder to decide, because
 * other conductors branch off.
 */
function fixesFor(plan: JudgedPlan, judged: JudgedNetwork, path: UnprotectedPath): ProposedFix[] {
  const { network } = judged;
  const conductor = network.conductors[path.conductor]!;
  // A fuse in the thin one of two side by side would carry its share of the current and open with the next load.
  if (thickerBeside(network, path.conductor)) return [];
  const before = leastOnWay(network, path);
  // Too far from the source, a lesser device protects the conductor no better.
  const beyond = isTooFar(network, path) ? undefined : deviceBeyond(judged, path);
  const placed = before ? placedDevice(network, before.index) : beyond;
  const inLine =
    placed !== undefined &&
    conductor.role === "cable" &&
    carriesAllOf(judged, placed.protection, path.conductor);
  const { circuit } = runOf(plan, conductor.run);
  const matching = placed ? matchingFixes(plan, circuit, placed, "protection/unprotected-path") : [];
  // Where others branch off, only a device that becomes lesser anyway, or the size that it gets anyway.
  const first = inLine
    ? matching
    : matching.filter(({ changes }) => new Set(changes.map(({ record }) => record)).size === 1);
  const nearer = before ? [] : nearerFixes(plan, judged, path);
  const belowA = before && (repairSizing(plan).ratingOf(before) ?? before.ratingA);
  const own = insertingFixes(plan, judged, path, {
    // Each conductor nearer to the source gets a device too.
    behindAnother: path.way.length > 0,
    ...(belowA !== undefined && { belowA }),
  });
  const inserted = [
    ...nearer,
    // Where a device elsewhere does as well, a further one is for the builder to decide.
    ...(nearer.length > 0 || deviceToMove(plan, judged, path) ? own.map(suggested) : own),
  ];
  if (!placed || !before) return [...first, ...inserted];
  // A device that becomes lesser anyway, before a size that only the present one asks for.
  const matched = first.length + inserted.length > 0 ? first : matching;
  const thicker = thickerFixes(plan, conductor, before, inLine ? matched : [...matched, ...inserted]);
  const others = inLine ? [...thicker, ...inserted] : [...inserted, ...thicker];
  return [...matched, ...others, ...(inLine ? [] : offeredRating(judged, path, placed))];
}

function suggested(fix: ProposedFix): ProposedFix {
  return { ...fix, kind: "suggestion" };
}

/** A way out that no edit of a value makes: a device or the conductor at another place. */
function elsewhere(plan: JudgedPlan, judged: JudgedNetwork, path: UnprotectedPath): string | undefined {
  const { network } = judged;
  const beside = thickerBeside(network, path.conductor);
  if (beside)
    return `take it out, since ${conductorInWords(beside)} leads there too and wires in parallel are of one size (${sourceInWords(parallelConductors.source)})`;
  // A conductor nearer to the source that lacks a device too is the cause.
  const isNearest = path.way.every((index) => !pathByConductor(judged).has(index));
  const device = isNearest ? deviceToMove(plan, judged, path) : undefined;
  if (device) {
    const { from, to } = network.conductors[path.conductor]!;
    const terminal = terminalInWords(network, path.ends[0] === "near" ? from : to);
    const ratingA = repairSizing(plan).ratingOf(device.protection) ?? device.protection.ratingA;
    const lesser = ratingA < device.protection.ratingA ? `, as one of ${withUnit(ratingA, "A")}` : "";
    return `move ${placedInWords(device)} to ${terminal} (on)${lesser}`;
  }
  const main = mainDeviceBeside(judged, path);
  if (!main) return undefined;
  const { circuit, result } = runOf(plan, network.conductors[path.conductor]!.run);
  const { ampacity } = result;
  const ratingA = repairSizing(plan).ratingOf(main.protection) ?? main.protection.ratingA;
  if (ratingA < (repairSizing(plan).withDevices(circuit)?.range.aimA ?? 0)) return undefined;
  const isEnough = ampacity.judged && ratingA <= ampacity.ampacityA;
  return `connect it behind ${placedInWords(main)}${isEnough ? "" : ", with a device of its own"}`;
}

/** A thicker cable without a device of its own between the same two places. */
function thickerBeside(network: Network, index: number): NetworkConductor | undefined {
  const { sectionOf } = networkGraph(network);
  const { run, ...own } = network.conductors[index]!;
  const ends = ({ from, to }: Pick<NetworkConductor, "from" | "to">) =>
    [sectionOf[from]!, sectionOf[to]!].toSorted((one, other) => one - other).join(" ");
  return conductorsAt(networkGraph(network), own.from)
    .filter((other) => other !== index)
    .map((other) => network.conductors[other]!)
    .find(
      (other) =>
        other.role === "cable" &&
        !other.near &&
        !other.far &&
        ends(other) === ends(own) &&
        crossSectionMm2(other.run.conductor) > crossSectionMm2(run.conductor),
    );
}

/** The device at the other end of the conductor, if it would protect the conductor at this end. */
function deviceToMove(
  plan: JudgedPlan,
  judged: JudgedNetwork,
  path: UnprotectedPath,
): PlacedDevice | undefined {
  const beyond = isTooFar(judged.network, path) ? deviceBeyond(judged, path) : undefined;
  const run = judged.network.conductors[path.conductor]!.run;
  const conductor = repairSizing(plan).ofRun(run)?.conductor ?? run.conductor;
  const ampacity = ampacityOf({ ...run, conductor });
  if (!beyond || !ampacity.judged) return undefined;
  const ratingA = repairSizing(plan).ratingOf(beyond.protection) ?? beyond.protection.ratingA;
  return ratingA <= ampacity.ampacityA ? beyond : undefined;
}

/** The main device of the battery that the conductor starts at: a lead beside it passes that device by. */
function mainDeviceBeside(
  { network }: JudgedNetwork,
  { conductor, ends, way }: UnprotectedPath,
): PlacedDevice | undefined {
  const [end, ...others] = ends;
  if (way.length > 0 || others.length > 0) return undefined;
  const { from, to } = network.conductors[conductor]!;
  const [here, there] = end === "near" ? [from, to] : [to, from];
  const part = (terminal: number) => network.parts[network.terminals[terminal]!.part]!;
  if (part(here).kind !== "battery") return undefined;
  const feeds = (terminal: number) => isDistribution(part(terminal)) && terminal !== there;
  const graph = networkGraph(network);
  for (const index of conductorsAt(graph, here)) {
    if (index === conductor) continue;
    const lead = network.conductors[index]!;
    const far = lead.from === here ? lead.to : lead.from;
    const own = lead.from === here ? lead.near : lead.far;
    const beyond = part(far);
    if (own && feeds(far)) return placedDevice(network, own.index);
    if (!isDevice(beyond)) continue;
    const { line, load } = beyond.terminals;
    const behind = conductorsAt(graph, far === line ? load : line);
    const ends = behind.flatMap((one) => [network.conductors[one]!.from, network.conductors[one]!.to]);
    if (ends.some(feeds)) return placedPart(network, beyond);
  }
  return undefined;
}

/** The repair of a conductor nearer to the source that lacks a device too, if that device protects this one as well. */
function nearerFixes(
  plan: JudgedPlan,
  judged: JudgedNetwork,
  { conductor, way }: UnprotectedPath,
): ProposedFix[] {
  const paths = pathByConductor(judged);
  const [nearest] = way.flatMap((index) => paths.get(index) ?? []);
  const own = ampacityOf(judged.network.conductors[conductor]!.run);
  if (!nearest || !own.judged) return [];
  return insertingFixes(plan, judged, nearest).filter(({ changes }) =>
    changes.every(({ record, ...change }) => {
      const set = change.do === "set" ? change.value : undefined;
      const device = typeof set === "object" && !isNamedInPlan(set) ? set : undefined;
      const sameRecord = record === judged.network.conductors[nearest.conductor]!.record;
      return sameRecord && (device === undefined || Number(device.ratingA) <= own.ampacityA);
    }),
  );
}

const pathByConductor = workedOutOnce(
  ({ result }: JudgedNetwork): ReadonlyMap<number, UnprotectedPath> =>
    new Map(result.topology.unprotected.map((path) => [path.conductor, path])),
);

/** Whether a device at the other end of the conductor is further from the source than one may be; false if its length is unknown. */
function isTooFar({ conductors }: Network, { conductor, ends }: UnprotectedPath): boolean {
  const { run, lengthM } = conductors[conductor]!;
  const [end, ...others] = ends;
  if (lengthM === undefined || end === undefined || others.length > 0) return false;
  return exceeds(lengthM / metresPerInch, protectionDistanceLimit(run, end).maxIn);
}

/** The part at the other end of the conductor, such as the main fuse of a bank, if it is too great to protect the conductor. */
function deviceBeyond(
  { network }: JudgedNetwork,
  { conductor, ends }: UnprotectedPath,
): PlacedDevice | undefined {
  const { from, to } = network.conductors[conductor]!;
  const other = ends.length === 1 ? (ends[0] === "near" ? to : from) : undefined;
  const part = other === undefined ? undefined : network.parts[network.terminals[other]!.part];
  return part && isDevice(part) ? placedPart(network, part) : undefined;
}

/**
 * For a cable with a device on the path: a size that the device protects. A load's own wires get a fuse of their own. It is a
 * repair only if there is no other fix, and within the cap on thickness.
 */
function thickerFixes(
  plan: JudgedPlan,
  conductor: NetworkConductor,
  protection: ProtectiveDevice,
  others: readonly ProposedFix[],
): ProposedFix[] {
  if (conductor.role !== "cable") return [];
  const { circuit } = runOf(plan, conductor.run);
  const alone = { ...circuit, protection, protectionFarEnd: null, fedFromBothEnds: false };
  const needed = thinnestNeeded(alone);
  if (needed?.ratingA !== protection.ratingA) return [];
  const ownNeed = repairSizing(plan).ofRun(circuit)?.conductor ?? circuit.conductor;
  const within = sizesAbove(needed.conductor, ownNeed) <= mostAboveNeed;
  const kind = within && others.length === 0 ? "repair" : "suggestion";
  return sizedFixes(alone, needed).map((fix) => ({ ...fix, kind }));
}

/** A lesser rating of the part on the path from which other conductors branch off: the builder decides. */
function offeredRating(judged: JudgedNetwork, path: UnprotectedPath, placed: PlacedDevice): ProposedFix[] {
  if (!placed.part) return [];
  const { aimA, maxA = Number.POSITIVE_INFINITY } = protectionRangeOfPart(judged, placed.part);
  const own = ampacityOf(judged.network.conductors[path.conductor]!.run);
  const toA = Math.min(maxA, own.judged ? own.ampacityA : maxA);
  const ratingA = nearestMadeRating(
    placed.protection.ratingA,
    { fromA: aimA, toA },
    placed.protection.family,
  );
  return ratingA === undefined ? [] : [{ ...ratingFix(placed, ratingA), kind: "suggestion" }];
}

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
