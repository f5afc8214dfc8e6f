import type { ChosenDevice } from "../../analysis/choose-device.ts";
import type { Protection } from "../../model/run.ts";
import type { Change, PropertyAt, ProposedFix, Settable } from "../finding.ts";
import { within } from "../rule.ts";
import { formatExact, withUnit } from "../wording/format-number.ts";
import { deviceInWords } from "./sized-fix.ts";

/** A chosen device; without a family if only its place shows which one fits. */
export type DeviceToPutIn = Omit<ChosenDevice, "family"> & {
  readonly family?: ChosenDevice["family"] | undefined;
};

/** "a 10 A fuse (ISO 8820-3 Type F, 58 V)", "a 200 A fuse (UL 248-15 Class T, marked for at least 4,000 A)". */
export function chosenInWords({ ratingA, family, ratedV, interruptingA }: DeviceToPutIn): string {
  const device = deviceInWords({ ratingA, writtenAs: "object", ...(family && { family }) }, ratingA);
  const known = [
    // The word "breaker" already names it.
    ...(family === undefined || family === "circuit breaker" ? [] : [family]),
    ...(interruptingA === undefined ? [] : [`marked for at least ${formatExact(interruptingA)} A`]),
    ...(ratedV === undefined ? [] : [withUnit(ratedV, "V")]),
  ];
  return known.length > 0 ? `${device} (${known.join(", ")})` : device;
}

/** "repair" if choosing such a device is sound on its own; "suggestion" if only the buyer can make it true. */
export function chosenKind({ demanded }: Pick<ChosenDevice, "demanded">): ProposedFix["kind"] {
  return demanded ? "suggestion" : "repair";
}

/** The value that puts it into the plan if there is no device yet, or only a rating. */
export function chosenValue(
  { ratingA, family, ratedV, interruptingA }: Omit<DeviceToPutIn, "demanded">,
  distanceIn?: number,
): Settable {
  return {
    ratingA,
    ...(family !== undefined && { family }),
    ...(distanceIn !== undefined && { distanceIn }),
    ...(interruptingA !== undefined && { interruptingA }),
    ...(ratedV !== undefined && { ratedV }),
  };
}

/** Replaces a device; the distance of one that is written as an object stays. */
export function chosenChanges(
  { family, ratedV, interruptingA }: ChosenDevice,
  device: DeviceInPlan,
): Change[] {
  return changesOf(device, {
    family,
    ...(interruptingA !== undefined && { interruptingA }),
    ...(ratedV !== undefined && { ratedV }),
  });
}

/** Sets properties of a device. One that is written as its rating alone becomes an object. */
export function changesOf(
  { protection, properties }: DeviceInPlan,
  values: Readonly<Record<string, string | number>>,
): Change[] {
  if (protection.writtenAs === "number")
    return [{ do: "set", ...properties, value: { ratingA: protection.ratingA, ...values } }];
  return Object.entries(values).map(([property, value]) => ({
    do: "set",
    ...within(properties, property),
    value,
  }));
}

/** A device and the place under which its properties are. */
interface DeviceInPlan {
  readonly protection: Protection;
  readonly properties: PropertyAt;
}

/** The place of its family: the device itself, if it does not state one. */
export function atFamily({ protection, properties }: DeviceInPlan): PropertyAt {
  const isOwn = protection.family !== undefined && protection.familyStatedAt === undefined;
  return isOwn ? within(properties, "family") : properties;
}
