import { type ChosenDevice, chooseDevice, familyData } from "../../analysis/choose-device.ts";
import { type Family, isMadeRating } from "../../analysis/made-ratings.ts";
import type { DeviceFault } from "../../analysis/network-result.ts";
import { fuseFamilies } from "../../model/allowed-values.ts";
import type { Protection } from "../../model/run.ts";
import { breakingCapacity } from "../../standards/protection-rules.ts";
import type { At, Change, ProposedFix, Severity } from "../finding.ts";
import { chosenChanges, chosenInWords, chosenKind, chosenValue } from "../fixes/chosen-device.ts";
import { type Device, statedWithUnit, theDevice } from "../fixes/judged-devices.ts";
import { type PlacedDevice, placedDevice } from "../fixes/placed-device.ts";
import { defineRule, inNetwork, type JudgedNetwork, within } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { partInWords, relatedPart } from "../wording/part-in-words.ts";
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
      return judged.result.faults.devices.flatMap((fault) => {
        const placed = placedDevice(judged.network, fault.device);
        const found = placed && judgedDevice(placed, fault, !behindAnother.has(fault.device));
        if (!found) return [];
        const { capacity, fixes, severity } = found;
        const values: Values = {
          device: placed.device,
          shortA: fault.greatestA,
          estimated: fault.estimated,
          capacity,
          wayOut: wayOut(fixes, buyOne(placed, fault)),
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
    }),
  message({ device, shortA, estimated, capacity, wayOut: way }) {
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

interface Values {
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
  const enough =
    capacity?.capacityA ?? (protection.family ? undefined : leastOfAnyFamily(protection.ratingA));
  if (enough !== undefined && !exceeds(fault.greatestA, enough)) return undefined;
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
