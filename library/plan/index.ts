/** The DSL functions and types: all exports of `import … from "loomwright"`. */
export { type AlternatorInput, alternator, type PlannedAlternator } from "./alternator.ts";
export { type BatteryInput, battery, type Chemistry, type PlannedBattery } from "./battery.ts";
export { type BreakerInput, breaker, type PlannedBreaker } from "./breaker.ts";
export { type BuildInput, type BuildSettings, build } from "./build.ts";
export { type BusBarInput, type BusBarSide, busBar, type PlannedBusBar } from "./bus-bar.ts";
export {
  type CableEnds,
  type CableInput,
  type CableLength,
  type CableOptions,
  cable,
  type PlannedCable,
} from "./cable.ts";
export {
  type ChannelInput,
  type ChannelInside,
  type ChannelWay,
  channel,
  type PlaceOfEnd,
  type PlannedChannel,
} from "./channel.ts";
export { type ChassisInput, chassis, type PlannedChassis } from "./chassis.ts";
export {
  type CircuitInput,
  type CircuitOptions,
  circuit,
  type FedPart,
  type LengthInput,
  type LoadInput,
  type PlannedCircuit,
  type SizeInput,
} from "./circuit.ts";
export type { Colour } from "./colour.ts";
export {
  type CompartmentInput,
  compartment,
  type PlannedCompartment,
  type WallInput,
  type WallMaterial,
} from "./compartment.ts";
export { type DcDcChargerInput, dcDcCharger, type PlannedDcDcCharger } from "./dc-dc-charger.ts";
export type { DeviceInShort, OpeningTimeInput, TestedBehindInput } from "./device-in-short.ts";
export type { DevicePartOptions } from "./device-part-options.ts";
export { type DisconnectInput, disconnect, type PlannedDisconnect } from "./disconnect.ts";
export type { DuplexCable } from "./duplex.ts";
export { type FuseHolderInput, fuseHolder, type PlannedFuseHolder } from "./fuse-holder.ts";
export { type FusePanelInput, fusePanel, type PlannedFusePanel } from "./fuse-panel.ts";
export { type AcDevice, type InverterInput, inverter, type PlannedInverter } from "./inverter.ts";
export { type LoadOptions, type LoadPartInput, type LoadPurpose, load, type PlannedLoad } from "./load.ts";
export { type MotorInput, motor, type PlannedMotor } from "./motor.ts";
export { type JoinInput, type OtherPartInput, type PlannedOtherPart, part } from "./other-part.ts";
export type { PartOptions } from "./part-options.ts";
export type { PartPlace } from "./part-place.ts";
export {
  type Occasion,
  type PeriodInput,
  type PlannedPeriod,
  period,
} from "./period.ts";
export type {
  AirSpace,
  BodySize,
  FlatSize,
  Leaving,
  MountingPosition,
  SurfaceArea,
  SurfacePoint,
  TerminalPlace,
  TerminalPlaces,
} from "./place.ts";
export type { ProtectionInput } from "./protection.ts";
export { type PlannedRelay, type RelayInput, relay } from "./relay.ts";
export type { RuleId } from "./rule-id.ts";
export type { RunOptions } from "./run-options.ts";
export {
  type BatteryCharge,
  type PlannedScenario,
  type ScenarioInput,
  type Switched,
  scenario,
} from "./scenario.ts";
export {
  type PlannedSelectorSwitch,
  type SelectorSwitchInput,
  selectorSwitch,
} from "./selector-switch.ts";
export { type PlannedShoreCharger, type ShoreChargerInput, shoreCharger } from "./shore-charger.ts";
export { type PlannedShunt, type ShuntInput, shunt } from "./shunt.ts";
export type { AwgSize, FuseFamily, InsulationC, Mm2Size, TerminalC } from "./sizes.ts";
export { type PlannedSolarArray, type SolarArrayInput, solarArray } from "./solar-array.ts";
export {
  type PlannedSolarController,
  type SolarControllerInput,
  solarController,
} from "./solar-controller.ts";
export type { SpoolInput } from "./spool.ts";
export { type PlannedStarterMotor, type StarterMotorInput, starterMotor } from "./starter-motor.ts";
export {
  type FixtureInput,
  type FixtureName,
  type KeptFree,
  type PlannedSurface,
  type SurfaceInput,
  type SurfaceOrientation,
  surface,
} from "./surface.ts";
export type {
  BatteryNegative,
  BatteryPositive,
  EitherTerminal,
  NegativeTerminal,
  PositiveTerminal,
  Terminal,
} from "./terminal.ts";
export type { Termination } from "./termination.ts";
export type { ByMonth, HoursOfUse, Month, Use, Weekday } from "./use.ts";
export type { NominalVoltage } from "./voltage.ts";
