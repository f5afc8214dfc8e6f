import { isBackedUp } from "../../analysis/back-up-protection.ts";
import { type ChosenDevice, chooseDevice, familyData } from "../../analysis/choose-device.ts";
import { groupedBy } from "../../analysis/grouped-by.ts";
import { type Family, isMadeRating } from "../../analysis/made-ratings.ts";
import type { DeviceFault, FaultResult } from "../../analysis/network-result.ts";
import { workedOutOnce } from "../../analysis/worked-out-once.ts";
import { fuseFamilies } from "../../model/allowed-values.ts";
import type { FusePanelPart } from "../../model/network.ts";
import type { Protection } from "../../model/run.ts";
import { breakingCapacity } from "../../standards/protection-rules.ts";
import type { At, Change, ProposedFix, Severity } from "../finding.ts";
import { chosenChanges, chosenInWords, chosenKind, chosenValue } from "../fixes/chosen-device.ts";
import { type Device, statedWithUnit, theDevice } from "../fixes/judged-devices.ts";
import { type PlacedDevice, placedDevice, relatedDevice } from "../fixes/placed-device.ts";
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
  // Needs the maximum fault current of each device, and which of them is the first from the bank. An error only if all of it is
  // certain and no other device helps; info if the capacity is unknown.
  check: (plan) =>
    inNetwork(plan, (judged) => {
      const behindAnother = new Set(judged.result.topology.devicePairs.map(({ downstream }) => downstream));
      const branches: Branch[] = [];
      const single = judged.result.faults.devices.flatMap((fault): Found<Values>[] => {
        const placed = placedDevice(judged.network, fault.device);
        if (!placed) return [];
        const first = !behindAnother.has(fault.device);
        const panel = first ? undefined : panelOf(judged.network, placed);
        const behind = panel ? { ...fault, greatestA: shortAtPanel(judged, panel, fault) } : fault;
        const tested = placed.protection.testedBehind ?? panel?.testedBehind;
        if (!first && isBackedUp(judged, placed.protection, behind.greatestA, tested)) return [];
        const accepts = placed.conductor?.run.accept["protection/interrupting"]?.trim();
        if (panel && !accepts) {
          const beyond = isBeyond(placed.protection, behind.greatestA);
          if (beyond) branches.push({ panel, placed, fault: behind });
          return [];
        }
        const found = judgedDevice(placed, behind, first);
        if (!found) return [];
        const { capacity, fixes, severity } = found;
        const values: DeviceValues = {
          device: placed.device,
          shortA: behind.greatestA,
          estimated: fault.estimated,
          capacity,
          wayOut: wayOut(fixes, buyOne(placed, behind)),
        };
        return [
          {
            subject: placed.subject,
            at: found.at,
            severity,
            values,
            related: sources(judged, fault),
            fixes,
          },
        ];
      });
      return [
        ...single,
        ...[...groupedBy(branches, ({ panel }) => panel)].map(([panel, found]) =>
          atPanel(judged, panel, found),
        ),
      ];
    }),
  message(values) {
    if ("panel" in values) return panelMessage(values);
    const { device, shortA, estimated, capacity, wayOut: way } = values;
    const guessed = estimated ? " (estimated: no internal resistance is stated)" : "";
    if (!capacity) {
      const short = withUnit(shortA, "A");
      return `The interrupting rating of ${theDevice(device).replace("The", "the")} is not known; a short right behind it draws ${short}${guessed}: ${way}.`;
    }
    const [can, draws] = formatDistinctWithUnit(capacity.capacityA, shortA, "A");
    const from = capacity.family
      ? ` (${capacity.family}${capacity.unconfirmed ? `, ${unconfirmed}` : ""})`
      : "";
    return `${theDevice(device)} can interrupt ${can}${from}, a short right behind it draws ${draws}${guessed}: ${way}.`;
  },
});

/** A branch of a panel in which a short is above the interrupting rating of its fuse. */
interface Branch {
  readonly panel: FusePanelPart;
  readonly placed: PlacedDevice;
  readonly fault: DeviceFault;
}

/** The panel whose branch a device protects: at the start of the conductor that leaves it, or mounted on its branches. */
function panelOf(
  { parts, terminals }: JudgedNetwork["network"],
  { conductor, part, device }: PlacedDevice,
): FusePanelPart | undefined {
  const atNear = conductor && device.end === "protect" ? conductor.from : undefined;
  const terminal = atNear ?? part?.mountedOn;
  const panel = parts[terminals[terminal ?? -1]?.part ?? -1];
  return panel?.kind === "fusePanel" && terminal === panel.terminals.branch ? panel : undefined;
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

/** Whether a short is above the interrupting rating of a device; without a family, above that of any family in its rating. */
function isBeyond(protection: Protection, shortA: number): boolean {
  const capacity = capacityOf(protection);
  const enough =
    capacity?.capacityA ?? (protection.family ? undefined : leastOfAnyFamily(protection.ratingA));
  return enough === undefined || exceeds(shortA, enough);
}

/** One finding for all branches of a panel. No fuse of another family fits there, so there is no fix. */
function atPanel(judged: JudgedNetwork, panel: FusePanelPart, found: readonly Branch[]): Found<Values> {
  const greatest = found.reduce((one, other) => (other.fault.greatestA > one.fault.greatestA ? other : one));
  return {
    subject: panel.name,
    at: atPart(panel),
    severity: "info",
    values: {
      panel: partInWords(panel),
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

const mostRelated = 8;

function panelMessage({ panel, branches, shortA, estimated }: PanelValues): string {
  const guessed = estimated ? " (estimated: no internal resistance is stated)" : "";
  const fuses = branches === 1 ? "its branch fuse" : `${branches} of its branch fuses`;
  return `A short in a branch of ${panel} draws up to ${withUnit(shortA, "A")}${guessed}, which may exceed the interrupting rating of ${fuses}: ask the makers which device upstream protects them, and state it (testedBehind, or letThroughA2s and withstandA2s).`;
}

type Values = DeviceValues | PanelValues;

interface PanelValues {
  readonly panel: string;
  /** Number of its branches. */
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
  readonly fixes: ProposedFix[];
}

/**
 * Undefined: there is no finding. `first`: no other device is between it and the bank that could help it. The standard lets
 * another one help, and only the makers know whether it does.
 */
function judgedDevice(placed: PlacedDevice, fault: DeviceFault, first: boolean): FoundAtDevice | undefined {
  const { protection } = placed;
  const capacity = capacityOf(protection);
  if (!isBeyond(protection, fault.greatestA)) return undefined;
  const on = protection.interruptingA === undefined ? protection.family && "family" : "interruptingA";
  const at: At = on ? within(placed.properties, on) : placed.at;
  const fixes = otherDevice(placed, fault);
  if (!capacity) return protection.family || first ? { at, severity: "info", capacity, fixes } : undefined;
  const certain = first && !capacity.unconfirmed && !fault.estimated;
  return { at, severity: certain ? "error" : "warning", capacity, fixes };
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

/** The same rating in a family that can interrupt it. A breaker is left to the builder: it may be the switch as well. */
function otherDevice(placed: PlacedDevice, fault: DeviceFault): ProposedFix[] {
  const { protection, device, systemV } = placed;
  const { ratingA, family } = protection;
  if (device.kind === "breaker" || family === marked) return [];
  const chosen = chooseDevice({ ratingA, systemV, interruptA: fault.greatestA });
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
  if (protection.writtenAs === "number") return [{ do: "set", ...properties, value: chosenValue(chosen) }];
  const changes = chosenChanges(chosen, properties);
  // The existing device's marking does not apply to the new one.
  const stale = protection.interruptingA !== undefined && chosen.interruptingA === undefined;
  return stale ? [...changes, { do: "remove", ...within(properties, "interruptingA") }] : changes;
}

function buyOne({ device }: PlacedDevice, { greatestA }: DeviceFault): string {
  return `use a ${device.kind} marked for at least ${statedWithUnit(upwards(greatestA), "A")}, and state it (interruptingA)`;
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
