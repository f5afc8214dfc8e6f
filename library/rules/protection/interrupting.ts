import { isBackedUp, isMainOfSeveral } from "../../analysis/back-up-protection.ts";
import { greatestVoltage } from "../../analysis/charging-voltages.ts";
import {
  type ChosenDevice,
  chooseDevice,
  type DeviceNeed,
  familyData,
  interruptsA,
  voltageToState,
} from "../../analysis/choose-device.ts";
import { groupedBy } from "../../analysis/grouped-by.ts";
import { type Family, isMadeRating, madeRatings } from "../../analysis/made-ratings.ts";
import type { DeviceFault, FaultResult } from "../../analysis/network-result.ts";
import { fuseFamilies } from "../../model/allowed-values.ts";
import type { FusePanelPart, Part } from "../../model/network.ts";
import { isDistribution } from "../../model/part-roles.ts";
import type { Protection } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { breakingCapacity } from "../../standards/protection-rules.ts";
import type { At, Change, ProposedFix, Severity } from "../finding.ts";
import { atFamily, chosenChanges, chosenInWords, chosenKind } from "../fixes/chosen-device.ts";
import { type Device, statedWithUnit, theDevice } from "../fixes/judged-devices.ts";
import { isInPanel, type PlacedDevice, placedDevice, relatedDevice } from "../fixes/placed-device.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork, within } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { unconfirmed } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const protectionInterrupting = defineRule<Values>({
  id: "protection/interrupting",
  title: "Fault current exceeds interrupting rating",
  formerTitles: ["Short too strong for the fuse or breaker"],
  severity: "error",
  why: "A fuse that cannot interrupt the battery's short-circuit current bursts or holds an arc, and the short burns on behind it.",
  sources: [breakingCapacity],
  fixable: true,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the maximum fault current of each device, and which of them is the first from the bank. An error only if all of it is
  // certain; info if another device may help, or if the capacity is unknown. A warning if the capacity is stated for less voltage.
  check: (plan) =>
    inNetwork(plan, (judged) => {
      const upstreamOf = groupedBy(judged.result.topology.devicePairs, ({ downstream }) => downstream);
      const branches: Branch[] = [];
      const single = judged.result.faults.devices.flatMap((fault): Found<Values>[] => {
        const placed = placedDevice(judged.network, fault.device);
        if (!placed) return [];
        const upstream = (upstreamOf.get(fault.device) ?? []).map((pair) => pair.upstream);
        const first = upstream.length === 0 || isMainOfSeveral(judged.network, fault, upstream);
        const place = first ? undefined : placeOf(judged.network, placed);
        const panel = place?.kind === "fusePanel" ? place : undefined;
        const behind = panel ? { ...fault, greatestA: shortAtPanel(judged, panel, fault) } : fault;
        const tested = placed.protection.testedBehind ?? panel?.testedBehind;
        if (upstream.length > 0 && isBackedUp(judged, placed.protection, behind.greatestA, tested)) return [];
        const forLess = ratedForLess(judged, placed);
        const isWeak = isBeyond(placed.protection, behind.greatestA);
        if (!isWeak && !forLess) return [];
        const accepts = (placed.conductor?.run ?? placed.part)?.accept["protection/interrupting"]?.trim();
        if (place && !accepts) {
          branches.push({ place, placed, fault: behind });
          return [];
        }
        if (!isWeak && forLess)
          return [{ ...foundAtVoltage(placed, behind, { forLess, first }), related: sources(judged, fault) }];
        const { at, capacity, mostOfAnyA, fixes, severity } = judgedDevice(judged, placed, {
          fault: behind,
          first,
        });
        const values: DeviceValues = {
          device: placed.device,
          shortA: behind.greatestA,
          estimated: fault.estimated,
          capacity,
          mostOfAnyA,
          wayOut: wayOut(
            fixes,
            isInPanel(judged.network, placed) ? mainFuse(behind) : buyOne(placed, behind),
          ),
        };
        return [
          {
            subject: placed.subject,
            at,
            severity,
            values,
            related: sources(judged, fault),
            fixes,
          },
        ];
      });
      return [
        ...single,
        ...[...groupedBy(branches, ({ place }) => place)].map(([place, found]) =>
          atPlace(judged, place, found),
        ),
      ];
    }),
  message(values) {
    if ("place" in values) return placeMessage(values);
    if ("atV" in values) return voltageMessage(values);
    const { device, shortA, estimated, capacity, mostOfAnyA, wayOut: way } = values;
    const guessed = estimated ? " (estimated: no internal resistance is stated)" : "";
    if (!capacity) {
      const rating = `The interrupting rating of ${theDevice(device).replace("The", "the")} is not known`;
      if (mostOfAnyA === undefined)
        return `${rating}; a short right behind it draws ${withUnit(shortA, "A")}${guessed}: ${way}.`;
      const [can, draws] = formatDistinctWithUnit(mostOfAnyA, shortA, "A");
      return `${rating}, blade and bolted ones interrupt up to ${can} (ISO 8820, ISO 20934), and a short right behind it draws ${draws}${guessed}: ${way}.`;
    }
    const [can, draws] = formatDistinctWithUnit(capacity.capacityA, shortA, "A");
    const from = capacity.family
      ? ` (${capacity.family}${capacity.unconfirmed ? `, ${unconfirmed}` : ""})`
      : "";
    return `${theDevice(device)} can interrupt ${can}${from}, a short right behind it draws ${draws}${guessed}: ${way}.`;
  },
});

/** A device behind another one, in which a short may be above its interrupting rating. */
interface Branch {
  readonly place: Part;
  readonly placed: PlacedDevice;
  readonly fault: DeviceFault;
}

/** The panel or bus bar that a device is at: at the end of a conductor there, or mounted on it; else the device's own part. */
function placeOf(
  { parts, terminals }: JudgedNetwork["network"],
  { conductor, part, device }: PlacedDevice,
): Part | undefined {
  const atEnd = conductor && (device.end === "protect" ? conductor.from : conductor.to);
  return parts[terminals[atEnd ?? part?.mountedOn ?? -1]?.part ?? -1] ?? part;
}

/** The greatest short in a branch, A: at the panel, back through the conductor from its negative bus. */
function shortAtPanel(
  { result }: JudgedNetwork,
  { index }: FusePanelPart,
  { greatestA }: DeviceFault,
): number {
  const back = returnsByPart(result.faults).get(index) ?? [];
  return Math.min(greatestA, ...back.map((fault) => fault.greatestA));
}

const returnsByPart = workedOutOnce(({ returns }: FaultResult) => groupedBy(returns, ({ part }) => part));

/** Whether a short is above the interrupting rating of a device; of an unknown fuse, above the least that any family of its rating has. */
function isBeyond(protection: Protection, shortA: number): boolean {
  const known = capacityOf(protection)?.capacityA;
  // Only the marking of a breaker shows it, and no standard a least figure.
  const enough =
    known ?? (protection.family === "circuit breaker" ? undefined : leastOfAnyFamily(protection.ratingA));
  return enough === undefined || exceeds(shortA, enough);
}

/** One finding for all devices at a panel or bus bar. Another one may not fit there, so there is no fix. */
function atPlace(judged: JudgedNetwork, place: Part, found: readonly Branch[]): Found<Values> {
  const greatest = found.reduce((one, other) => (other.fault.greatestA > one.fault.greatestA ? other : one));
  return {
    subject: place.name,
    at: atPart(place),
    severity: "info",
    values: {
      place: partInWords(place),
      hasBranches: isDistribution(place),
      branches: found.length,
      shortA: greatest.fault.greatestA,
      estimated: greatest.fault.estimated,
    },
    related: [
      ...found.slice(0, mostRelated).map(({ placed }) => relatedDevice(placed)),
      ...sources(judged, greatest.fault),
    ],
  };
}

const mostRelated = 3;

function placeMessage({ place, hasBranches, branches, shortA, estimated }: PlaceValues): string {
  const guessed = estimated ? " (estimated: no internal resistance is stated)" : "";
  const draws = `draws up to ${withUnit(shortA, "A")}${guessed}, which may exceed`;
  const [their, them] = branches === 1 ? ["its", "it"] : ["their", "them"];
  const short = hasBranches
    ? `A short in a branch of ${place} ${draws} the interrupting rating of ${branches === 1 ? "its branch fuse" : `${branches} of its branch fuses`}`
    : `A short right behind the ${branches === 1 ? "fuse" : "fuses"} at ${place} ${draws} ${their} interrupting rating`;
  return `${short}: ask the makers which device upstream protects ${them}, and state it (testedBehind, or letThroughA2s and withstandA2s).`;
}

type Values = DeviceValues | PlaceValues | VoltageValues;

interface VoltageValues extends AtVoltage {
  readonly device: Device;
  readonly shortA: number;
  readonly estimated: boolean;
  readonly wayOut: string;
}

/** A device whose interrupting rating is stated for less voltage than its circuit has. */
interface AtVoltage {
  readonly capacityA: number;
  readonly atV: number;
  /** The greatest voltage of its circuit, V. */
  readonly voltageV: number;
  /** Its circuit has that voltage only while it is charged. */
  readonly charging: boolean;
}

/** Undefined: its rating is not known, or not stated for less. */
function ratedForLess(
  { network }: JudgedNetwork,
  { protection, systemV }: PlacedDevice,
): AtVoltage | undefined {
  const { interruptingAtV: atV } = protection;
  const capacityA = interruptsA(protection);
  const voltageV = greatestVoltage(network, protection);
  if (atV === undefined || capacityA === undefined || !exceeds(voltageV, atV)) return undefined;
  return { capacityA, atV, voltageV, charging: !exceeds(systemV, atV) };
}

/** A warning: no rule leads from the rating at one voltage to that at another. A voltage that equals the nominal one may mean the system. */
function foundAtVoltage(
  placed: PlacedDevice,
  { greatestA, estimated }: DeviceFault,
  { forLess, first }: { readonly forLess: AtVoltage; readonly first: boolean },
): Found<Values> {
  const { device, subject, properties } = placed;
  const { voltageV, charging } = forLess;
  const needed = `use a ${device.kind} that interrupts ${statedWithUnit(upwards(greatestA), "A")} at ${withUnit(voltageV, "V")}, and state both (interruptingA, interruptingAtV)`;
  return {
    subject,
    at: within(properties, "interruptingAtV"),
    severity: charging || !first ? "info" : "warning",
    values: { ...forLess, device, shortA: greatestA, estimated, wayOut: needed },
  };
}

function voltageMessage({
  device,
  capacityA,
  atV,
  voltageV,
  charging,
  shortA,
  estimated,
  ...values
}: VoltageValues): string {
  const guessed = estimated ? " (estimated: no internal resistance is stated)" : "";
  const [at, has] = formatDistinctWithUnit(atV, voltageV, "V");
  const circuit = charging ? `is charged with ${has}` : `has ${has}`;
  return `${theDevice(device)} can interrupt ${withUnit(capacityA, "A")} at ${at}, its circuit ${circuit}, and a short right behind it draws ${withUnit(shortA, "A")}${guessed}: ${values.wayOut}.`;
}

interface PlaceValues {
  /** The panel or bus bar, or a device of its own. */
  readonly place: string;
  /** A panel or bus bar has branches; a device of its own, or a charger, does not. */
  readonly hasBranches: boolean;
  /** Number of its devices. */
  readonly branches: number;
  readonly shortA: number;
  readonly estimated: boolean;
}

interface DeviceValues {
  readonly device: Device;
  /** The maximum current that a fault right behind it draws through it, A. */
  readonly shortA: number;
  /** It follows from an internal resistance that is not stated. */
  readonly estimated: boolean;
  /** Undefined: unknown. */
  readonly capacity: Capacity | undefined;
  /** Of an unknown fuse: the current that the strongest of its rating interrupts by its standard, A, if that is less than the short. */
  readonly mostOfAnyA: number | undefined;
  readonly wayOut: string;
}

interface Capacity {
  readonly capacityA: number;
  /** Absent if the plan states the capacity. */
  readonly family?: Family;
  /** From memory, not read. */
  readonly unconfirmed: boolean;
}

interface FoundAtDevice {
  readonly at: At;
  readonly severity: Severity;
  readonly capacity: Capacity | undefined;
  readonly mostOfAnyA: number | undefined;
  readonly fixes: ProposedFix[];
}

/**
 * `first`: no other device is between it and the bank that could help it. The standard lets another one help, and only the makers
 * know whether it does.
 */
function judgedDevice(
  { network }: JudgedNetwork,
  placed: PlacedDevice,
  { fault, first }: { readonly fault: DeviceFault; readonly first: boolean },
): FoundAtDevice {
  const { protection } = placed;
  const capacity = capacityOf(protection);
  const at: At =
    protection.interruptingA !== undefined
      ? within(placed.properties, "interruptingA")
      : protection.family !== undefined
        ? atFamily(placed)
        : placed.at;
  const voltageV = greatestVoltage(network, protection);
  // The family of a fuse in a panel is that of the panel.
  const fixes = isInPanel(network, placed)
    ? []
    : otherDevice(placed, { systemV: voltageV, interruptA: fault.greatestA });
  // A fuse that may well be enough is no fault: a thicker conductor must not be refused for it. But to leave the family out is no
  // better than to state one that is too weak, if all are.
  const mostOfAnyA = isUnknownFuse(protection)
    ? mostOfAnyFamily(protection.ratingA, { systemV: voltageV, belowA: fault.greatestA })
    : undefined;
  const judged = { at, capacity, mostOfAnyA, fixes };
  if (!first || (!capacity && mostOfAnyA === undefined)) return { severity: "info", ...judged };
  const certain = !capacity?.unconfirmed && !fault.estimated;
  return { severity: certain ? "error" : "warning", ...judged };
}

function isUnknownFuse({ family, interruptingA }: Protection): boolean {
  return family === undefined && interruptingA === undefined;
}

/** A capacity stated in the plan overrides the requirement of the family's standard. */
function capacityOf({ family, interruptingA }: Protection): Capacity | undefined {
  if (interruptingA !== undefined) return { capacityA: interruptingA, unconfirmed: false };
  if (!family) return undefined;
  const { breakingCapacityA, breakingCapacityConfirmed } = familyData(family);
  if (breakingCapacityA === null) return undefined;
  return { capacityA: breakingCapacityA, family, unconfirmed: breakingCapacityConfirmed === "memory" };
}

/**
 * The minimum interrupting capacity of any fuse family that is made in this rating, A. Undefined: no standard of theirs states
 * it.
 */
function leastOfAnyFamily(ratingA: number): number | undefined {
  const capacities = fuseFamilies
    .filter((family) => isMadeRating(ratingA, family))
    .flatMap((family) => familyData(family).breakingCapacityA ?? []);
  return capacities.length > 0 ? Math.min(...capacities) : undefined;
}

/** A rating that no family has is judged as those beside it: another rating of it is no worse. */
function isBetweenMadeRatings(ratingA: number, family: Family): boolean {
  const ratingsA = madeRatings(family);
  return ratingA >= Math.min(...ratingsA) && ratingA <= Math.max(...ratingsA);
}

/**
 * The current that the strongest fuse of about this rating and voltage interrupts by the standard of its family, A, if that is below a current, A.
 * Undefined: one is enough, or only fuses whose marking shows it are made.
 */
function mostOfAnyFamily(
  ratingA: number,
  { systemV, belowA }: { readonly systemV: number; readonly belowA: number },
): number | undefined {
  const capacities = fuseFamilies
    .filter((family) => isBetweenMadeRatings(ratingA, family) && voltageToState(family, systemV) !== "none")
    .flatMap((family) => familyData(family).breakingCapacityA ?? []);
  const mostA = capacities.length > 0 ? Math.max(...capacities) : undefined;
  return mostA !== undefined && exceeds(belowA, mostA) ? mostA : undefined;
}

/** The same rating in a family that can interrupt it. A breaker is left to the builder: it may be the switch as well. */
function otherDevice(placed: PlacedDevice, need: Omit<DeviceNeed, "ratingA">): ProposedFix[] {
  const { protection, device } = placed;
  const { ratingA, family } = protection;
  if (device.kind === "breaker" || family === marked) return [];
  const chosen = chooseDevice({ ratingA, ...need });
  if (!chosen) return [];
  // Without a stated family, the builder may have another one in mind.
  const kind = family || protection.interruptingA !== undefined ? chosenKind(chosen) : "suggestion";
  return [
    {
      title: `Use ${chosenInWords(chosen)}`,
      kind,
      changes: changesFor(chosen, placed),
    },
  ];
}

/** In this family only the marking shows the capacity; {@link buyOne} asks for another one of it. */
const marked: Family = "UL 248-15 Class T";

function changesFor(
  chosen: ChosenDevice,
  { protection, properties }: Pick<PlacedDevice, "protection" | "properties">,
): Change[] {
  const changes = chosenChanges(chosen, { protection, properties });
  if (protection.writtenAs === "number") return changes;
  // The existing device's marking does not apply to the new one.
  const stale = [
    ...(protection.interruptingA !== undefined && chosen.interruptingA === undefined
      ? ["interruptingA"]
      : []),
    ...(protection.interruptingAtV !== undefined ? ["interruptingAtV"] : []),
  ];
  return [
    ...changes,
    ...stale.map((property): Change => ({ do: "remove", ...within(properties, property) })),
  ];
}

function buyOne({ device }: PlacedDevice, { greatestA }: DeviceFault): string {
  return `use a ${device.kind} marked for at least ${statedWithUnit(upwards(greatestA), "A")}, and state it (interruptingA)`;
}

function mainFuse({ greatestA }: DeviceFault): string {
  return `put a fuse that interrupts ${statedWithUnit(upwards(greatestA), "A")} into the feed of the panel`;
}

/** Three figures, rounded away from zero: the stated requirement is never below the real one. */
function upwards(currentA: number): number {
  const step = 10 ** (Math.floor(Math.log10(currentA)) - 2);
  return Math.ceil(currentA / step - 1e-9) * step;
}

function sources({ network }: JudgedNetwork, { sources: feeding }: DeviceFault) {
  return feeding.flatMap((index) => {
    const part = network.parts[index];
    return part ? [relatedPart(part, `${partInWords(part)} feeds that short`)] : [];
  });
}
