import type { BenchSettings } from "./bench-settings.ts";
import type { BuildValues } from "./build-properties.ts";
import type { LengthUnit } from "./length-unit.ts";
import type { Network } from "./network.ts";
import type { NetworkRemains } from "./network-remains.ts";
import type { Layout } from "./placement/layout.ts";
import type { CircuitLeftOut } from "./read-network.ts";
import type { Period } from "./read-periods.ts";
import type { InvalidValue, Run } from "./run.ts";

/** Settings for the plan as a whole. */
export interface BuildSettings {
  /** Index of the record; undefined if the plan does not call `build`. */
  readonly record?: number;
  readonly name?: string;
  /** False: 12 V is assumed if neither a circuit nor a battery states its own nominal voltage. */
  readonly voltageStated: boolean;
  /** The kind of build, if the plan states it. */
  readonly installedIn?: BuildValues["installedIn"] & string;
  readonly bench: BenchSettings;
  /** Conductors that share a channel count as bundled in it, at any voltage. */
  readonly bundledInChannels?: true;
}

export interface PlanModel {
  readonly build: BuildSettings;
  /** Circuits that could be read, in the order of their calls; those in the network too. */
  readonly circuits: readonly Run[];
  /** Periods of use whose values are all valid, in the order of their calls. */
  readonly periods: readonly Period[];
  /** Where things are; undefined if the plan has no surface, channel or compartment. */
  readonly layout: Layout | undefined;
  readonly lengthUnit: LengthUnit;
  /** Undefined: the plan has none, or {@link networkUnread}. */
  readonly network: Network | undefined;
  /** A value of the network was refused, and all currents in it are unknown; {@link invalid} lists the value. */
  readonly networkUnread: boolean;
  /** Present if the network is unread: the parts of it that can be judged all the same. */
  readonly remains?: NetworkRemains | undefined;
  /** The circuits that {@link network} is without, because a value of them was refused: {@link invalid} lists it. */
  readonly withoutCircuits: readonly CircuitLeftOut[];
  /** Records whose circuit cannot be judged at all, with the reason in {@link invalid}. */
  readonly unjudged: readonly { readonly record: number; readonly name: string }[];
  readonly invalid: readonly InvalidValue[];
}
