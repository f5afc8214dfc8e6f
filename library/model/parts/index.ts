import type { PropertyTable } from "../property-table.ts";
import { type AlternatorPart, alternator } from "./alternator.ts";
import { type BatteryPart, battery } from "./battery.ts";
import { type BreakerPart, breaker } from "./breaker.ts";
import { type BusBarPart, busBar } from "./bus-bar.ts";
import { type ChassisPart, chassis } from "./chassis.ts";
import { type DcDcChargerPart, dcDcCharger } from "./dc-dc-charger.ts";
import type { PartDescriptor, PartRole } from "./define-part.ts";
import { type DisconnectPart, disconnect } from "./disconnect.ts";
import { type FuseHolderPart, fuseHolder } from "./fuse-holder.ts";
import { type FusePanelPart, fusePanel } from "./fuse-panel.ts";
import { type InverterPart, inverter } from "./inverter.ts";
import { type LoadPart, load } from "./load.ts";
import { motor } from "./motor.ts";
import { type OtherPart, otherPart } from "./other-part.ts";
import type { PartProperties } from "./part-property.ts";
import { type RelayPart, relay } from "./relay.ts";
import { type SelectorSwitchPart, selectorSwitch } from "./selector-switch.ts";
import { type ShoreChargerPart, shoreCharger } from "./shore-charger.ts";
import { type ShuntPart, shunt } from "./shunt.ts";
import { type SolarArrayPart, solarArray } from "./solar-array.ts";
import { type SolarControllerPart, solarController } from "./solar-controller.ts";
import { starterMotor } from "./starter-motor.ts";

/** The descriptors of all parts, by the DSL function that makes one. */
export const partDescriptors = {
  battery,
  busBar,
  fusePanel,
  disconnect,
  selectorSwitch,
  relay,
  fuseHolder,
  breaker,
  shunt,
  inverter,
  dcDcCharger,
  alternator,
  shoreCharger,
  solarArray,
  solarController,
  chassis,
  load,
  motor,
  starterMotor,
  part: otherPart,
} as const;

/** A part of a network, with every default filled in. */
export type Part =
  | BatteryPart
  | BusBarPart
  | FusePanelPart
  | DisconnectPart
  | SelectorSwitchPart
  | RelayPart
  | FuseHolderPart
  | BreakerPart
  | ShuntPart
  | InverterPart
  | DcDcChargerPart
  | AlternatorPart
  | ShoreChargerPart
  | SolarArrayPart
  | SolarControllerPart
  | ChassisPart
  | LoadPart
  | OtherPart;

export type PartKind = Part["kind"];

/** DSL functions that make a part. */
export type PartWord = keyof typeof partDescriptors;

export const partWords = Object.keys(partDescriptors) as readonly PartWord[];

/** A descriptor, if the kind does not matter. */
export type AnyPartDescriptor = Omit<
  PartDescriptor<string, PartKind, PartRole, string, PartProperties, object>,
  "table"
> & { readonly table: PropertyTable };

/** The descriptor of a DSL function that makes a part. */
export function descriptorOfWord(word: PartWord): AnyPartDescriptor {
  return partDescriptors[word];
}

/** The descriptor of a part's kind. Loads and motors of all kinds have one. */
export function descriptorOf({ kind }: { readonly kind: PartKind }): AnyPartDescriptor {
  return partDescriptors[kind];
}
