import { loadDump } from "./alternator/load-dump.ts";
import { alternatorOverload } from "./alternator/overload.ts";
import { chargeCurrent } from "./battery/charge-current.ts";
import { chargingVoltageOfBattery } from "./battery/charging-voltage.ts";
import { coldCharge } from "./battery/cold-charge.ts";
import { dischargeCurrent } from "./battery/discharge-current.ts";
import { fiftyVolts } from "./battery/fifty-volts.ts";
import { halfBank } from "./battery/half-bank.ts";
import { bankLinks } from "./battery/links.ts";
import { parallelImbalance } from "./battery/parallel-imbalance.ts";
import { unlikeBatteries } from "./battery/unlike.ts";
import { busRating } from "./bus/rating.ts";
import { busStuds } from "./bus/studs.ts";
import { chargerCircle } from "./charger/circle.ts";
import { inputCurrent } from "./charger/input-current.ts";
import { outputCurrent } from "./charger/output-current.ts";
import { chargerWrongWay } from "./charger/wrong-way.ts";
import { ambient } from "./conductor/ambient.ts";
import { ampacity } from "./conductor/ampacity.ts";
import { faultWithstand } from "./conductor/fault-withstand.ts";
import { insulationNotStated } from "./conductor/insulation-not-stated.ts";
import { minimumSize } from "./conductor/minimum-size.ts";
import { noLength } from "./conductor/no-length.ts";
import { conductorParallel } from "./conductor/parallel.ts";
import { terminalSize } from "./conductor/terminal-size.ts";
import { terminalTemperature } from "./conductor/terminal-temperature.ts";
import { voltageDrop } from "./conductor/voltage-drop.ts";
import { bilgePump } from "./disconnect/bilge-pump.ts";
import { disconnectMissing } from "./disconnect/missing.ts";
import { disconnectRating } from "./disconnect/rating.ts";
import { energyArrayLimited } from "./energy/array-limited.ts";
import { energyArrayUnused } from "./energy/array-unused.ts";
import { energyGreatestUse } from "./energy/greatest-use.ts";
import { energyHoursMissing } from "./energy/hours-missing.ts";
import { energyNeverFull } from "./energy/never-full.ts";
import { energyNoBank } from "./energy/no-bank.ts";
import { energyNoCharger } from "./energy/no-charger.ts";
import { energyNoReserve } from "./energy/no-reserve.ts";
import { energyPlace } from "./energy/place.ts";
import { energyRunsShort } from "./energy/runs-short.ts";
import { otherVoltage } from "./inverter/other-voltage.ts";
import { inverterPrecharge } from "./inverter/precharge.ts";
import { inverterSupply } from "./inverter/supply.ts";
import { inverterSurge } from "./inverter/surge.ts";
import { networkHullReturn } from "./network/hull-return.ts";
import { noReturn } from "./network/no-return.ts";
import { networkShorted } from "./network/shorted.ts";
import { twoGrounds } from "./network/two-grounds.ts";
import { networkUnconnected } from "./network/unconnected.ts";
import { wrongPort } from "./network/wrong-port.ts";
import { fuseFamily } from "./panel/fuse-family.ts";
import { panelRating } from "./panel/rating.ts";
import { partOtherVoltage } from "./part/other-voltage.ts";
import { partRating } from "./part/rating.ts";
import { placementAir } from "./placement/air.ts";
import { batteryFuel } from "./placement/battery-fuel.ts";
import { batteryVentilationTooSmall } from "./placement/battery-ventilation.ts";
import { bendTooTight } from "./placement/bend-radius.ts";
import { bilgeWater } from "./placement/bilge-water.ts";
import { placementBusBars } from "./placement/bus-bars.ts";
import { channelFill } from "./placement/channel-fill.ts";
import { compartmentHeat } from "./placement/compartment-heat.ts";
import { conductorClearance } from "./placement/conductor-clearance.ts";
import { placementExposed } from "./placement/exposed.ts";
import { placementFixture } from "./placement/fixture.ts";
import { grommetMissing } from "./placement/grommet.ts";
import { placementHeat } from "./placement/heat.ts";
import { keptFree } from "./placement/kept-free.ts";
import { kinderStated } from "./placement/kinder-than-way.ts";
import { lugRoom } from "./placement/lug-room.ts";
import { placementMass } from "./placement/mass.ts";
import { noWayForConductor } from "./placement/no-way.ts";
import { notJudged } from "./placement/not-judged.ts";
import { placementOutside } from "./placement/outside.ts";
import { overChannel } from "./placement/over-channel.ts";
import { placementOverlap } from "./placement/overlap.ts";
import { placementPosition } from "./placement/position.ts";
import { placementReach } from "./placement/reach.ts";
import { conductorsShareChannel } from "./placement/shared-channel.ts";
import { placementSpill } from "./placement/spill.ts";
import { statedLength } from "./placement/stated-length.ts";
import { supportsMissing } from "./placement/supports.ts";
import { throughUnused } from "./placement/through.ts";
import { waysCannotBeJudged } from "./placement/ways-not-judged.ts";
import { acceptWithoutReason } from "./plan/accept-without-reason.ts";
import { cannotRun } from "./plan/cannot-run.ts";
import { invalidValue } from "./plan/invalid-value.ts";
import { needlessAccept } from "./plan/needless-accept.ts";
import { repeatedName } from "./plan/repeated-name.ts";
import { tooSlow } from "./plan/too-slow.ts";
import { unitSuspect } from "./plan/unit-suspect.ts";
import { aboveConductor } from "./protection/above-conductor.ts";
import { belowLoad } from "./protection/below-load.ts";
import { bothEnds } from "./protection/both-ends.ts";
import { distance } from "./protection/distance.ts";
import { doesNotClear } from "./protection/does-not-clear.ts";
import { headroom } from "./protection/headroom.ts";
import { holderRating } from "./protection/holder-rating.ts";
import { protectionInterrupting } from "./protection/interrupting.ts";
import { missing } from "./protection/missing.ts";
import { permittedFuse } from "./protection/permitted-fuse.ts";
import { returnConductor } from "./protection/return-conductor.ts";
import { protectionSelectivity } from "./protection/selectivity.ts";
import { sharedAlarm } from "./protection/shared-alarm.ts";
import { sideBySide } from "./protection/side-by-side.ts";
import { standardRating } from "./protection/standard-rating.ts";
import { startingCurrent } from "./protection/starting-current.ts";
import { unprotectedPath } from "./protection/unprotected-path.ts";
import { voltageRating } from "./protection/voltage-rating.ts";
import type { Rule } from "./rule.ts";
import { deviceBelowMinimum } from "./scenario/device-below-minimum.ts";
import { neverOn } from "./scenario/never-on.ts";
import { shuntBypassed } from "./shunt/bypassed.ts";
import { arrayVoltage } from "./solar/array-voltage.ts";
import { coldVoltage } from "./solar/cold-voltage.ts";
import { solarConductor } from "./solar/conductor.ts";
import { controllerCurrent } from "./solar/controller-current.ts";
import { solarIsolator } from "./solar/isolator.ts";
import { stringProtection } from "./solar/string-protection.ts";
import { voltageCollapse } from "./voltage/collapse.ts";

/** Every rule, by id. Written by write-docs.mjs, from the folders. */
export const rules: readonly Rule<unknown>[] = [
  loadDump,
  alternatorOverload,
  chargeCurrent,
  chargingVoltageOfBattery,
  coldCharge,
  dischargeCurrent,
  fiftyVolts,
  halfBank,
  bankLinks,
  parallelImbalance,
  unlikeBatteries,
  busRating,
  busStuds,
  chargerCircle,
  inputCurrent,
  outputCurrent,
  chargerWrongWay,
  ambient,
  ampacity,
  faultWithstand,
  insulationNotStated,
  minimumSize,
  noLength,
  conductorParallel,
  terminalSize,
  terminalTemperature,
  voltageDrop,
  bilgePump,
  disconnectMissing,
  disconnectRating,
  energyArrayLimited,
  energyArrayUnused,
  energyGreatestUse,
  energyHoursMissing,
  energyNeverFull,
  energyNoBank,
  energyNoCharger,
  energyNoReserve,
  energyPlace,
  energyRunsShort,
  otherVoltage,
  inverterPrecharge,
  inverterSupply,
  inverterSurge,
  networkHullReturn,
  noReturn,
  networkShorted,
  twoGrounds,
  networkUnconnected,
  wrongPort,
  fuseFamily,
  panelRating,
  partOtherVoltage,
  partRating,
  placementAir,
  batteryFuel,
  batteryVentilationTooSmall,
  bendTooTight,
  bilgeWater,
  placementBusBars,
  channelFill,
  compartmentHeat,
  conductorClearance,
  placementExposed,
  placementFixture,
  grommetMissing,
  placementHeat,
  keptFree,
  kinderStated,
  lugRoom,
  placementMass,
  noWayForConductor,
  notJudged,
  placementOutside,
  overChannel,
  placementOverlap,
  placementPosition,
  placementReach,
  conductorsShareChannel,
  placementSpill,
  statedLength,
  supportsMissing,
  throughUnused,
  waysCannotBeJudged,
  acceptWithoutReason,
  cannotRun,
  invalidValue,
  needlessAccept,
  repeatedName,
  tooSlow,
  unitSuspect,
  aboveConductor,
  belowLoad,
  bothEnds,
  distance,
  doesNotClear,
  headroom,
  holderRating,
  protectionInterrupting,
  missing,
  permittedFuse,
  returnConductor,
  protectionSelectivity,
  sharedAlarm,
  sideBySide,
  standardRating,
  startingCurrent,
  unprotectedPath,
  voltageRating,
  deviceBelowMinimum,
  neverOn,
  shuntBypassed,
  arrayVoltage,
  coldVoltage,
  solarConductor,
  controllerCurrent,
  solarIsolator,
  stringProtection,
  voltageCollapse,
];

export function ruleById(id: string): Rule<unknown> | undefined {
  return rules.find((rule) => rule.id === id);
}
