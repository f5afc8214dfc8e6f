import type {
  BatteryPart,
  DcDcChargerPart,
  InverterPart,
  LoadPart,
  Network,
  Part,
  Scenario,
  SolarControllerPart,
} from "../../model/network.ts";
import { isCharging, isConsumer, isStarterMotor } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import { refusedHours } from "../../model/use-properties.ts";
import type { UseValues } from "../../model/use-values.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { type PortionPatterns, portionSolver } from "../network/solver/solve-scenarios.ts";
import type { SolvedDevices } from "../network/solver/solved-scenario.ts";
import type { Bank, NetworkTopology } from "../network/topology/network-topology.ts";
import type { ScenarioResult } from "../network-result.ts";
import { type SolarWiring, solarWiringOf } from "../solar-wiring.ts";
import type { ArrayOnController } from "./array-power.ts";
import { batteriesOf, powerFrom, voltageOf } from "./bank-in-solution.ts";
import { type SwitchesApart, switchesApart } from "./banks-apart.ts";
import { type DrawAlone, drawsAlone, nominalPower } from "./draws-alone.ts";
import { type WaysOfCurrent, waysOfCurrent } from "./ways-of-current.ts";

/**
 * The statement that a consumer is without: how long it runs; of an inverter, its idle power or its devices. The charge that a DC-DC
 * charger passes to another bank all the time cannot be stated.
 */
export type Lacking = "use" | "idleW" | "devices" | "transfer";

/** Something that draws from a bank. */
export interface ConsumerAtBank {
  /** The record that states it. */
  readonly record: number;
  readonly name: string;
  /** The part that draws: an inverter for the devices behind it. */
  readonly part: number;
  /** Undefined: the plan does not state how long it runs. */
  readonly use: UseValues | undefined;
  /** If that is not the hours themselves. */
  readonly lacks?: Lacking;
  /** Its draw from the bank with all others off, the loss in the wiring included, W and A. */
  readonly bankW: number;
  readonly bankA: number;
  /** The same while it is not in use, W. */
  readonly standbyW: number;
  /** Of a consumer of an inverter: the loss on the way from the bank to that, W/A². */
  readonly ownOhm: number;
  /** Its current does not grow with the loss on its way: it draws less through a longer conductor. */
  readonly isResistance?: true;
  readonly withoutLength?: WithoutLength;
}

/** Conductors of unknown length on the way between a bank and a device: their loss is not in its figures. */
type WithoutLength = SolvedDevices["withoutLength"];

/** An array on a controller that charges a bank. */
export interface ArrayAtBank extends ArrayOnController {
  readonly record: number;
  readonly name: string;
  /** The index of its controller, and its record. */
  readonly controller: number;
  readonly controllerRecord: number;
  readonly stringsInParallel: number;
  /** The compass direction is undefined: towards the equator. */
  readonly tiltDeg: number;
  readonly facingDeg: number | undefined;
  /** Height of the horizon in eight directions, from north clockwise; undefined: flat. */
  readonly horizonDeg: readonly number[] | undefined;
  /** By month: the share of the light that is left by obstacles. */
  readonly unshaded: readonly number[];
  /**
   * Loss in the wiring at the rated power, as a share of it; it falls with the power. 0 without tracking: the current is that of the
   * modules, at any drop in the wires.
   */
  readonly wiringLoss: number;
  readonly withoutLength?: WithoutLength;
}

/** A source of another kind: its full power as it arrives at the bank, W. */
export interface ChargerAtBank {
  readonly kind: "engine" | "shore";
  /** The names of the chargers. */
  readonly names: readonly string[];
  readonly bankW: number;
  readonly withoutLength?: WithoutLength;
}

/** A charger that runs all the time, in the wind or by itself: its average power as it arrives at the bank. */
export interface GeneratorAtBank {
  readonly name: string;
  /** By month, W. */
  readonly bankW: readonly number[];
  readonly withoutLength?: WithoutLength;
}

/** The consumers and the sources of a bank, from the plan's own network. */
export interface FlowsAtBank {
  readonly bank: Bank;
  readonly batteries: readonly BatteryPart[];
  readonly consumers: readonly ConsumerAtBank[];
  /** Further loss with all consumers on at once, W/A²: the conductors that they share. */
  readonly sharedOhm: number;
  readonly arrays: readonly ArrayAtBank[];
  readonly chargers: readonly ChargerAtBank[];
  readonly generators: readonly GeneratorAtBank[];
  /**
   * Consumers without an operating point, by name: their nominal power counts, without the loss in their wiring, at the first bank of
   * the plan.
   */
  readonly unsolved: readonly string[];
}

/** The flows at the banks of a network, and the consumers that none of them feeds. */
export interface FlowsAtBanks {
  readonly banks: readonly FlowsAtBank[];
  readonly withoutBank: readonly (LoadPart | InverterPart)[];
  readonly idleArrays: readonly IdleArray[];
}

/** An array that charges no bank. */
export interface IdleArray {
  readonly record: number;
  readonly name: string;
  /** Whether a controller is connected to it. */
  readonly hasController: boolean;
}

/**
 * The flows at each bank that feeds a consumer or is charged by the sun. One solution of the network for each consumer alone, one with
 * all of them, and one for each way to charge; a scenario of the plan in the same state has it already.
 */
export function flowsAtBanks({ network, topology, scenarios }: SolvedNetwork): FlowsAtBanks {
  const known = knownIn(topology);
  const { banks } = topology;
  const solver = portionSolver(network, patternsBeside(network.parts[banks[0]?.batteries[0] ?? 0]));
  const apart = switchesApart(network, banks);
  const ways = { apart: waysIn(network, apart), joined: waysIn(network, allJoined) };
  const solve: Solve = (on, { sunShare = 0, engine = false } = {}) => {
    const state = stateOf(network, on, sunShare, engine ? allJoined : apart);
    const solved = solvedBefore(network, scenarios, state);
    if (solved) return solved;
    const portion = ways[engine ? "joined" : "apart"]().portionWith(state.on);
    const result = solver(state, portion);
    return result || !engine ? result : solver(state, { ...portion, parts: portion.parts.map(ample) });
  };
  const drawn = network.parts.filter(isConsumer).filter((part) => !isStarterMotor(part));
  known.transfers ??= transfersOf(network, banks, () => solve(onBank(() => false)));
  const { transfers } = known;
  const idle = stateOf(
    network,
    onBank(() => false),
    0,
    apart,
  );
  const drawAlone = drawsAlone(network, banks, {
    stateWith: ({ index }) => ({ ...idle, on: idle.on.map((isOn, part) => isOn || part === index) }),
    ...{
      apart,
      ways: ways.apart,
      solve: solver,
      transfers: network.parts.some(runsAlways) ? transfers.bankW : undefined,
      inTopology: known.alone,
    },
  });
  const alone = drawn.map((part) => ({ part, ...drawAlone(part) }));
  const withoutBank = alone.filter(({ part, bank }) => bank === -1 && nominalPower(part) > 0);
  const flows = banks.flatMap((bank, index): FlowsAtBank[] => {
    const own = alone.filter((one) => one.bank === index);
    const consumers = [
      ...own.flatMap(({ part, ...draw }) => consumersOf(part, draw)),
      ...(transfers.from === index ? transfers.chargers.map(asConsumer) : []),
      ...batteriesOf(network, bank).flatMap(standbyOf),
    ];
    const charging = known.charging.get(bank) ?? {
      arrays: arraysAt(network, bank, solve),
      chargers: (["engine", "shore"] as const).flatMap((kind) => chargerAt(network, bank, kind, solve)),
      generators: generatorsAt(network, bank, solve),
    };
    known.charging.set(bank, charging);
    const { arrays, chargers, generators } = charging;
    if (consumers.length === 0 && arrays.length === 0 && generators.length === 0) return [];
    const isOwn = new Set(own.map(({ part }) => part.index));
    const together = solve(onBank((part) => isOwn.has(part.index)));
    const batteries = batteriesOf(network, bank);
    return [
      {
        bank,
        batteries,
        consumers,
        sharedOhm: sharedOhm(own, together, bank, transfers.bankW[index]!),
        arrays,
        chargers,
        generators,
        unsolved: own.filter(({ solved }) => !solved).map(({ part }) => part.name),
      },
    ];
  });
  known.idleArrays ??= idleIn(network, flows);
  return {
    banks: flows,
    withoutBank: withoutBank.map(({ part }) => part),
    idleArrays: known.idleArrays,
  };
}

/** A network with the results of its scenarios, if there are any. */
export interface SolvedNetwork {
  readonly network: Network;
  readonly topology: NetworkTopology;
  readonly scenarios: readonly ScenarioResult[];
}

/** The solution of a scenario with the same state, if all lengths are known: it does not name those that are not. */
function solvedBefore(
  { scenarios: states, conductors }: Network,
  results: readonly ScenarioResult[],
  state: Scenario,
): SolvedDevices | undefined {
  const same = results.find(({ scenario }) => isSameState(states[scenario]!, state));
  if (same?.state !== "solved" || conductors.some(({ lengthM }) => lengthM === undefined)) return undefined;
  return same;
}

function isSameState(one: Scenario, other: Scenario): boolean {
  const isSame = (of: (scenario: Scenario) => readonly unknown[]) =>
    of(one).every((value, part) => value === of(other)[part]);
  return (
    one.sunShare === other.sunShare &&
    one.lowVoltage === other.lowVoltage &&
    !one.selected &&
    !other.selected &&
    isSame(({ on }) => on) &&
    isSame(({ starting }) => starting) &&
    isSame(({ restV }) => restV)
  );
}

/**
 * An alternator that is asked for more than it can give has no operating point. One of many times its rating shows how much is asked of
 * it, and so the share that it can give.
 */
function ample(part: Part): Part {
  return part.kind === "alternator" ? { ...part, ratedA: ampleTimes * part.ratedA } : part;
}

const ampleTimes = 10;

/** Worked out with the first question: most edits ask none. */
function waysIn(network: Network, positions: SwitchesApart): () => WaysOfCurrent {
  let known: WaysOfCurrent | undefined;
  return () => {
    known ??= waysOfCurrent(
      network,
      stateOf(network, () => true, 0, positions),
    );
    return known;
  };
}

function idleIn(network: Network, flows: readonly FlowsAtBank[]): readonly IdleArray[] {
  const charging = new Set(flows.flatMap(({ arrays }) => arrays.map(({ record }) => record)));
  return solarWiringOf(network)
    .filter(({ array }) => !charging.has(array.record))
    .map(({ array: { record, name }, controllers }) => ({
      record,
      name,
      hasController: controllers.length > 0,
    }));
}

/** Of a topology, which an edit of loads leaves the same object: solutions that no other load changes. */
const knownIn = workedOutOnce(
  (_: NetworkTopology): Known => ({
    alone: new WeakMap(),
    charging: new Map(),
    transfers: undefined,
    idleArrays: undefined,
  }),
);

/**
 * The patterns so far, kept with a battery: most edits leave it the same object. An edit of a conductor makes another topology, but
 * mostly of the same shape, and a pattern depends on the shape alone.
 */
function patternsBeside(battery: Part | undefined): PortionPatterns {
  const patterns = battery ? patternsOf(battery) : new Map();
  if (patterns.size > mostShapes) patterns.clear();
  return patterns;
}

const patternsOf = workedOutOnce((_: Part): PortionPatterns => new Map());

/** A plan has a shape for each load that several ways lead to; a plan that is typed passes more. */
const mostShapes = 1_000;

interface Known {
  readonly alone: WeakMap<Part, DrawAlone>;
  readonly charging: Map<Bank, Pick<FlowsAtBank, "arrays" | "chargers" | "generators">>;
  transfers: Transfers | undefined;
  idleArrays: readonly IdleArray[] | undefined;
}

/** Charge that goes from bank to bank while nothing draws: by chargers that run always. */
interface Transfers {
  readonly chargers: readonly DcDcChargerPart[];
  /** The bank that gives it. */
  readonly from: number;
  /** By bank: the power that it gives then, W; negative if it is charged. */
  readonly bankW: readonly number[];
}

/** Which share of the time a full bank takes no charge is unknown, so such energy is in no balance; the draw of loads is without it. */
function transfersOf(
  { parts }: Network,
  banks: readonly Bank[],
  idle: () => SolvedDevices | undefined,
): Transfers {
  const chargers = parts.filter((part) => part.kind === "dcDcCharger").filter(runsAlways);
  const none = { chargers: [], from: -1, bankW: banks.map(() => 0) };
  if (chargers.length === 0) return none;
  const result = idle();
  if (!result) return none;
  const bankW = banks.map(({ batteries }) => powerFrom(result, batteries));
  const moving = chargers.filter(({ index }) => Math.abs(result.partA[index]!) > leastTransferA);
  if (moving.length === 0) return none;
  return { chargers: moving, from: bankW.indexOf(Math.max(...bankW)), bankW };
}

const leastTransferA = 0.01;

/** Of the bank that it draws from: without hours, so that no verdict on that bank is more than "at best". */
function asConsumer({ record, name, index }: DcDcChargerPart): ConsumerAtBank {
  const draw = { bankW: 0, bankA: 0, standbyW: 0, ownOhm: 0 };
  return {
    record,
    name: `${name} (charging another bank)`,
    part: index,
    use: undefined,
    lacks: "transfer",
    ...draw,
  };
}

/** At the poles of the battery: no conductor of the plan carries it. */
function standbyOf({ record, name, index, standbyW = 0 }: BatteryPart): readonly ConsumerAtBank[] {
  if (standbyW === 0) return [];
  const draw = { bankW: standbyW, bankA: 0, standbyW: 0, ownOhm: 0 };
  return [{ record, name: `${name}, standby`, part: index, use: always, ...draw }];
}

const always: UseValues = {};

/** With the engine, charging relays are closed; else every bank is by itself. */
type Solve = (
  on: (part: Part) => boolean,
  state?: { readonly sunShare?: number; readonly engine?: boolean },
) => SolvedDevices | undefined;

const allJoined: SwitchesApart = { open: new Set(), selected: new Map() };

/** Some consumers, on the bank alone: chargers that run always stay on, because they may feed them. */
function onBank(isOn: (consumer: Part) => boolean): (part: Part) => boolean {
  return (part) => (isConsumer(part) ? isOn(part) : !isCharging(part) || runsAlways(part));
}

function runsAlways(part: Part): boolean {
  return part.kind === "dcDcCharger" && part.runsAlways;
}

function stateOf(
  { parts }: Network,
  on: (part: Part) => boolean,
  sunShare: number,
  { open, selected }: SwitchesApart,
): Scenario {
  return {
    name: "",
    on: parts.map((part) => on(part) && !open.has(part.index)),
    starting: parts.map(() => false),
    restV: parts.map((part) => (part.kind === "battery" ? part.usualRestV : undefined)),
    restFrom: parts.map((part) => (part.kind === "battery" ? "usual" : undefined)),
    sunShare,
    ...(selected.size > 0 && { selected }),
    momentary: false,
  };
}

/** A load; or the devices behind an inverter, and its idle power for each hour in which it is on. */
function consumersOf(
  part: LoadPart | InverterPart,
  { bankW, bankA, ...way }: DrawAlone,
): readonly ConsumerAtBank[] {
  const { record, name, index } = part;
  const withoutLength = withoutLengthIn(way);
  if (part.kind === "load") {
    const { use } = part;
    const draw = { bankW, bankA, standbyW: use?.standbyW ?? 0, ownOhm: 0 };
    const isResistance = part.draws.as === "resistance" && { isResistance: true as const };
    return [{ record, name, part: index, use, ...draw, ...isResistance, ...withoutLength }];
  }
  const share = 100 / part.efficiencyPercent;
  const terminalW = part.loadW * share + part.idleW;
  const bankV = bankA > 0 ? bankW / bankA : part.lowestV;
  const ohm = bankA > 0 ? Math.max(0, bankW - terminalW) / bankA ** 2 : 0;
  const atBank = (watts: number) => {
    const amps = watts / bankV;
    return { bankW: watts + ohm * amps ** 2, bankA: amps };
  };
  const of = (consumer: string, watts: number, use: UseValues | undefined): ConsumerAtBank => ({
    ...{ record, name: consumer, part: index, use, standbyW: (use?.standbyW ?? 0) * share, ownOhm: ohm },
    ...atBank(watts),
    ...withoutLength,
  });
  const idleStated = !part.taken?.includes("idleW");
  const areHoursSound = part.use !== refusedHours;
  return [
    {
      ...of(`${name}, idle`, part.idleW, idleStated && areHoursSound ? (part.use ?? {}) : undefined),
      ...(!idleStated && { lacks: "idleW" }),
    },
    ...(part.devices?.map((device) => of(device.name ?? name, (device.powerW ?? 0) * share, device.use)) ?? [
      { ...of(`${name}, devices`, part.loadW * share, undefined), lacks: "devices" },
    ]),
  ];
}

/** The loss in shared conductors: that with all on, less the losses alone, over the products of the currents. */
function sharedOhm(
  own: readonly { readonly bankW: number; readonly bankA: number; readonly solved: boolean }[],
  together: SolvedDevices | undefined,
  { batteries }: Bank,
  transferW: number,
): number {
  if (!together || own.some(({ solved }) => !solved)) return 0;
  const sum = (of: (one: (typeof own)[number]) => number) => own.reduce((total, one) => total + of(one), 0);
  const products = sum(({ bankA }) => bankA) ** 2 - sum(({ bankA }) => bankA ** 2);
  if (products < leastProducts) return 0;
  return (powerFrom(together, batteries) - transferW - sum(({ bankW }) => bankW)) / products;
}

/** A². */
const leastProducts = 1e-6;

/** Each array on the first controller that it reaches, if that charges this bank. */
function arraysAt(network: Network, bank: Bank, solve: Solve): readonly ArrayAtBank[] {
  return solarWiringOf(network).flatMap(({ array, controllers: [controller], string }): ArrayAtBank[] => {
    if (!controller) return [];
    const isThere = (part: Part) => part === controller || part.kind === "solarArray";
    const solveIn = (sunShare: number) =>
      solve((part) => isThere(part) || !(isConsumer(part) || isCharging(part)), { sunShare });
    const result = solveIn(1);
    if (!result) return [];
    const intoBankW = -powerFrom(result, bank.batteries);
    if (intoBankW <= 0) return [];
    const fed = solarWiringOf(network).filter(({ controllers: [first] }) => first === controller);
    const ratedW = array.maxPowerV * array.maxPowerA * array.series * array.parallel;
    const allW = fed.reduce(
      (sum, { array: one }) => sum + one.maxPowerV * one.maxPowerA * one.series * one.parallel,
      0,
    );
    const fromModulesW = powerFrom(
      result,
      fed.map(({ array: { index } }) => index),
    );
    const efficiency = controller.tracking ? controller.efficiencyPercent / 100 : 1;
    const batteryV = voltageOf(network, result, bank);
    /** Between the string and the bank, in so much sun. */
    const dropIn = (sunShare: number) => {
      const there = sunShare < 1 ? solveIn(sunShare) : result;
      if (!there) return 0;
      const stringV = string.reduce((sum, { index }) => sum + (there.partV[index] || 0), 0);
      return Math.max(0, stringV - voltageOf(network, there, bank)) / sunShare;
    };
    return [
      {
        record: array.record,
        name: array.name,
        controller: controller.index,
        controllerRecord: controller.record,
        stringsInParallel: array.parallel,
        ratedW,
        maxPowerV: string.reduce((sum, one) => sum + one.maxPowerV * one.series, 0),
        maxPowerA: (array.maxPowerA * array.parallel) / string.length,
        tracking: controller.tracking,
        efficiency,
        // Arrays on one controller share its current by their ratings.
        outputA: (controller.outputA * ratedW) / allW,
        batteryV,
        ...(!controller.tracking && { dropV: dropIn(unlimitedShare(controller, fed)) }),
        tiltDeg: array.tiltDeg ?? 0,
        facingDeg: array.facingDeg,
        horizonDeg: array.horizonDegByDirection,
        unshaded: Array.from(
          { length: 12 },
          (_, month) => 1 - (array.shadePercentByMonth?.[month] ?? 0) / 100,
        ),
        wiringLoss: controller.tracking ? lossAtRating(intoBankW, fromModulesW * efficiency, allW) : 0,
        ...withoutLengthIn(result),
      },
    ];
  });
}

/**
 * The share of full sun in which a controller without tracking passes on all current. Where it limits that, the voltage of the modules rises
 * towards their open circuit, and is no drop.
 */
function unlimitedShare({ outputA }: SolarControllerPart, fed: readonly SolarWiring[]): number {
  const shortCircuitA = fed.reduce(
    (sum, { array, string }) => sum + (array.shortCircuitA * array.parallel) / string.length,
    0,
  );
  return Math.min(1, (0.9 * outputA) / shortCircuitA);
}

/** Of arrays rated `allW`, from the loss in full sun, in which the controller may hold the power below that: in proportion to the power. */
function lossAtRating(intoBankW: number, offeredW: number, allW: number): number {
  const share = Math.max(0, 1 - intoBankW / offeredW);
  return Math.min(1, (share * allW) / offeredW);
}

/** All chargers of a kind at their full power, into this bank alone: an alternator at the share that it may give for hours. */
function chargerAt(
  network: Network,
  { batteries }: Bank,
  kind: ChargerAtBank["kind"],
  solve: Solve,
): readonly ChargerAtBank[] {
  const charging = network.parts.filter(
    (part) => descriptorOf(part).chargesWith === kind && !runsAlways(part) && averageOf(part) === undefined,
  );
  if (charging.length === 0) return [];
  const result = solve(chargedBy(charging, batteries), { engine: kind === "engine" });
  if (!result) return [];
  const bankW = -powerFrom(result, batteries);
  if (bankW <= 0) return [];
  const names = charging.flatMap(({ name, index }) => (result.partA[index]! > 0 ? [name] : []));
  return [{ kind, names, bankW: bankW * allowedShare(charging, result), ...withoutLengthIn(result) }];
}

/** The other banks count as full: at rest, a lead-acid battery beside it would take most of the current, but only for minutes. */
function chargedBy(charging: readonly Part[], batteries: readonly number[]): (part: Part) => boolean {
  return (part) =>
    part.kind === "battery"
      ? batteries.includes(part.index)
      : !isConsumer(part) && (!isCharging(part) || charging.includes(part));
}

/** Each by itself; the loss in its wiring falls with its power. */
function generatorsAt(network: Network, { batteries }: Bank, solve: Solve): readonly GeneratorAtBank[] {
  return network.parts.flatMap((part): GeneratorAtBank[] => {
    const averageW = averageOf(part);
    if (!averageW) return [];
    const result = solve(chargedBy([part], batteries));
    if (!result) return [];
    const intoBankW = -powerFrom(result, batteries);
    if (intoBankW <= 0) return [];
    const fullW = result.partA[part.index]! * result.partV[part.index]!;
    const loss = Math.max(0, 1 - intoBankW / fullW);
    const bankW = averageW.map((watts) => {
      const held = Math.min(watts, fullW);
      return held * (1 - (loss * held) / fullW);
    });
    return [{ name: part.name, bankW, ...withoutLengthIn(result) }];
  });
}

function averageOf(part: Part): readonly number[] | undefined {
  return part.kind === "shoreCharger" ? part.averageWByMonth : undefined;
}

function withoutLengthIn({ withoutLength }: { readonly withoutLength?: WithoutLength }): {
  readonly withoutLength?: WithoutLength;
} {
  return withoutLength ? { withoutLength } : {};
}

/** The share of the current in the alternators that they may give for hours. */
function allowedShare(charging: readonly Part[], { partA }: SolvedDevices): number {
  const shares = charging.flatMap((part) => {
    if (part.kind !== "alternator") return [];
    const allowedA = (part.ratedA * part.continuousPercent) / 100;
    return partA[part.index]! > allowedA ? [allowedA / partA[part.index]!] : [];
  });
  return Math.min(1, ...shares);
}
