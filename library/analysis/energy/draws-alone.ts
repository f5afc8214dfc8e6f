import type { BatteryPart, InverterPart, LoadPart, Network, Part, Scenario } from "../../model/network.ts";
import { noLessThanLeast } from "../network/solver/conductor-current.ts";
import { currentInLoop, type LoopDraw } from "../network/solver/loop-current.ts";
import type { Portion } from "../network/solver/solve-scenarios.ts";
import type { SolvedDevices } from "../network/solver/solved-scenario.ts";
import type { Bank } from "../network/topology/network-topology.ts";
import { powerFrom, voltageOf } from "./bank-in-solution.ts";
import type { SwitchesApart } from "./banks-apart.ts";
import type { Loop, WaysOfCurrent } from "./ways-of-current.ts";

/** The draw of a consumer with all others off. */
export interface DrawAlone {
  readonly solved: boolean;
  /** The bank that gives most of it; -1 if none does. */
  readonly bank: number;
  readonly bankW: number;
  readonly bankA: number;
  /** Conductors of unknown length on its way: their loss is not in its draw. */
  readonly withoutLength?: SolvedDevices["withoutLength"];
}

type Consumer = LoadPart | InverterPart;

/**
 * The draw of each consumer alone. Most close a loop of one current; only the others need a solution of a network, of those conductors
 * that they can use. An edit elsewhere leaves them the same objects, and such a consumer its result.
 */
export function drawsAlone(
  network: Network,
  banks: readonly Bank[],
  {
    stateWith,
    apart,
    ways,
    solve,
    transfers,
    inTopology,
  }: {
    /** With this consumer on, and everything else off that may be. */
    readonly stateWith: (consumer: Consumer) => Scenario;
    readonly apart: SwitchesApart;
    readonly ways: () => WaysOfCurrent;
    readonly solve: (state: Scenario, portion: Portion) => SolvedDevices | undefined;
    /** By bank: the power that it gives while nothing draws, W; undefined without chargers that always run. */
    readonly transfers: readonly number[] | undefined;
    /** Of a topology, which an edit of loads leaves the same object. */
    readonly inTopology: WeakMap<Part, DrawAlone>;
  },
): (consumer: Consumer) => DrawAlone {
  const position = JSON.stringify([
    ...[[...apart.open], [...apart.selected], banks.map(({ batteries }) => batteries), transfers],
  ]);
  const transferW = transfers ?? banks.map(() => 0);
  const afresh = (part: Consumer): DrawAlone => {
    const loop = transfers ? undefined : ways().loopOf(part);
    const inLoop = loop && solvedLoop(network, loop, part);
    if (inLoop) return drawOf({ network, banks, part, transferW }, inLoop);
    const state = stateWith(part);
    const portion = ways().portionWith(state.on);
    const needs = [position, ...portion.conductors, ...portion.parts.flatMap(electrically)];
    const before = known.get(part);
    if (before && isSame(before.needs, needs)) return before.draw;
    const draw = drawOf({ network, banks, part, transferW }, solve(state, portion));
    known.set(part, { needs, draw });
    return draw;
  };
  return (part) => {
    const draw = inTopology.get(part) ?? afresh(part);
    inTopology.set(part, draw);
    return draw;
  };
}

/** The batteries of a loop while a consumer draws from it alone; undefined if the general solver has to decide. */
export function solvedLoop({ parts }: Network, loop: Loop, consumer: Consumer): SolvedDevices | undefined {
  const { conductors, batteries } = loop;
  const ohm = batteries.reduce((sum, battery) => sum + ohmOf(battery), loop.ohm);
  const emfV = batteries.reduce((sum, { usualRestV }) => sum + usualRestV, 0);
  const currentA = currentInLoop({ conductors, ohm, emfV }, drawInLoop(consumer));
  if (currentA === undefined) return undefined;
  const partA = Array<number>(parts.length).fill(0);
  const partV = parts.map((part) => (part.kind === "battery" ? part.usualRestV : 0));
  for (const battery of batteries) {
    partA[battery.index] = currentA;
    partV[battery.index]! -= currentA * ohmOf(battery);
  }
  const withoutLength = conductors.filter(({ lengthM }) => lengthM === undefined);
  return { partA, partV, ...(withoutLength.length > 0 && { withoutLength }) };
}

function ohmOf({ internal }: BatteryPart): number {
  return noLessThanLeast(internal.highOhm);
}

function drawInLoop(part: Consumer): LoopDraw {
  if (part.kind === "inverter") return { as: "power", powerW: nominalPower(part) };
  const { draws } = part;
  if (draws.as === "motor") return { as: "current", currentA: draws.runningA };
  return draws.as === "resistance" ? { as: "resistance", ohm: noLessThanLeast(draws.ohm) } : draws;
}

const known = new WeakMap<Part, { readonly needs: readonly unknown[]; readonly draw: DrawAlone }>();

/** Of a battery, its voltage and resistance: its capacity changes no current. */
function electrically(part: Part): readonly unknown[] {
  return part.kind === "battery" ? [part.index, part.usualRestV, part.internal.highOhm] : [part];
}

function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((value, index) => value === other[index]);
}

function drawOf(
  {
    network,
    banks,
    part,
    transferW,
  }: {
    readonly network: Network;
    readonly banks: readonly Bank[];
    readonly part: Consumer;
    readonly transferW: readonly number[];
  },
  result: SolvedDevices | undefined,
): DrawAlone {
  if (!result) return { solved: false, bank: 0, bankW: nominalPower(part), bankA: 0 };
  const powers = banks.map(({ batteries }, index) => powerFrom(result, batteries) - transferW[index]!);
  const bank = powers.reduce((most, power, index) => (power > (powers[most] ?? 0) ? index : most), 0);
  const bankW = powers.reduce((sum, power) => sum + Math.max(0, power), 0);
  return {
    solved: true,
    bank: bankW > 0 ? bank : -1,
    bankW,
    bankA: bankW / voltageOf(network, result, banks[bank]),
    ...(result.withoutLength && { withoutLength: result.withoutLength }),
  };
}

export function nominalPower(part: Consumer): number {
  if (part.kind === "inverter") return (part.loadW * 100) / part.efficiencyPercent + part.idleW;
  const { draws, systemV } = part;
  if (draws.as === "power") return draws.powerW;
  if (draws.as === "resistance") return systemV ** 2 / draws.ohm;
  return systemV * (draws.as === "motor" ? draws.runningA : draws.currentA);
}
