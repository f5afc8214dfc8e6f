import type { Citation } from "../standards/citation.ts";
import type { PartRole } from "./parts/define-part.ts";
import type { DeviceFigures } from "./parts/device-in-line.ts";
import {
  type AnyPartDescriptor,
  descriptorOf,
  type Part,
  type PartKind,
  partDescriptors,
} from "./parts/index.ts";
import type { CurrentLimit } from "./parts/part-property.ts";
import { statedInPlan } from "./stated-in-plan.ts";
import { workedOutOnce } from "./worked-out-once.ts";

type KindOf<Role extends PartRole> = {
  [Kind in PartKind]: (typeof partDescriptors)[Kind]["role"] extends Role ? Kind : never;
}[PartKind];

/** The parts that have one of these roles. */
export type PartWithRole<Role extends PartRole> = Extract<Part, { kind: KindOf<Role> }>;

export function isConsumer(part: Part): part is PartWithRole<"consumer"> {
  return descriptorOf(part).role === "consumer";
}

/** It joins conductors, and is neither source, consumer nor converter. */
export function passesCurrentOn(part: Part): part is PartWithRole<"passes current on" | "metal"> {
  const { role } = descriptorOf(part);
  return role === "passes current on" || role === "metal";
}

/** It gives energy to the network, of its own or from another part of it. */
export function givesEnergy(part: Part): part is PartWithRole<"source" | "converter"> {
  const { role } = descriptorOf(part);
  return role === "source" || role === "converter";
}

/** A fuse or breaker of its own. */
export type DevicePart = Extract<Part, DeviceFigures>;

export function isDevice(part: Part): part is DevicePart {
  return descriptorOf(part).protects === true;
}

/** Conductors meet at it, as at a bus bar or fuse panel: further loads may be connected there. */
export function isDistribution(part: Part): boolean {
  const { role, collectsAt } = descriptorOf(part);
  return role === "passes current on" && collectsAt !== undefined;
}

/** The starter motor of an engine: its main feed is exempt from protection. */
export function isStarterMotor(part: Part): part is Extract<Part, { kind: "load" }> {
  return part.kind === "load" && part.statedBy === "starterMotor";
}

/** A source or converter that charges batteries. */
export function isCharging(part: Pick<Part, "kind">): boolean {
  return descriptorOf(part).chargesWith !== undefined;
}

/** The voltage below which a device does not work, or not fully, V; undefined if it has none or it is not known. */
export function minimumVoltageOf(part: Part): number | undefined {
  const { worksFrom } = descriptorOf(part);
  const figures = part as unknown as Readonly<Record<string, number | undefined>>;
  return worksFrom === undefined ? undefined : figures[worksFrom];
}

/** The greatest voltage that a device withstands, V, as the plan states it. */
export function maximumVoltageOf(part: Part): number | undefined {
  const { worksUpTo } = descriptorOf(part);
  const figures = part as unknown as Readonly<Record<string, number | undefined>>;
  return worksUpTo === undefined ? undefined : figures[worksUpTo];
}

/** A device whose current rises as its voltage falls: it draws a constant power. */
export type PowerDevice = Extract<Part, { readonly lowestV: number }>;

export function isPowerDevice(part: Part): part is PowerDevice {
  return "lowestV" in part && !("draws" in part && part.draws.as !== "power");
}

/** The lowest voltage at which such a device draws its current, V: as the plan states it, else the usual one of its battery. */
export function lowestVoltage(part: PowerDevice): { readonly voltageV: number; readonly isStated: boolean } {
  const { worksFrom } = descriptorOf(part);
  const isStated =
    part.kind === "load" ? part.minimumV !== undefined : !part.taken?.includes(worksFrom ?? "");
  return { voltageV: part.lowestV, isStated };
}

/** A current that a part limits, whether or not its plan states the limit. */
export interface PartCurrentLimit extends CurrentLimit {
  /** The property that states it. */
  readonly property: string;
  /** As stated, A. */
  readonly statedA: number | undefined;
  /** For longer than a moment, A. */
  readonly lastingA: number | undefined;
  readonly percentForHours: number | undefined;
}

/** By descriptor: the properties that limit a current. */
const limitingProperties = new Map(
  Object.values<AnyPartDescriptor>(partDescriptors).map((descriptor) => [
    descriptor,
    Object.entries(descriptor.properties).flatMap(([property, { limitOf }]) =>
      limitOf ? [{ property, limitOf }] : [],
    ),
  ]),
);

export const currentLimitsOf = workedOutOnce((part: Part): readonly PartCurrentLimit[] => {
  const limiting = limitingProperties.get(descriptorOf(part));
  if (!limiting?.length) return [];
  const figures = part as unknown as Readonly<Record<string, number | undefined>>;
  return limiting.map(({ property, limitOf }) => {
    const statedA = figures[property];
    const percentForHours = limitOf.forHours === undefined ? undefined : figures[limitOf.forHours];
    const lastingA = statedA !== undefined && percentForHours ? (statedA * percentForHours) / 100 : statedA;
    return { property, statedA, lastingA, percentForHours, ...limitOf };
  });
});

/** The source of a figure of a part: the plan, or that of the default. */
export function sourceOfFigure(part: Pick<Part, "kind" | "taken" | "source">, property: string): Citation {
  const usual = part.taken?.includes(property) && descriptorOf(part).properties[property]?.source;
  return usual || statedInPlan(part.source);
}
