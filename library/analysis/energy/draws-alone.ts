import type { InverterPart, LoadPart, Network, Part, Scenario } from "../../model/network.ts";
import { batterySolver } from "../network/solver/solve-scenarios.ts";
import type { SolvedBatteries } from "../network/solver/solved-scenario.ts";
import type { Bank } from "../network/topology/network-topology.ts";
import { powerFrom, voltageOf } from "./bank-in-solution.ts";
import type { SwitchesApart } from "./banks-apart.ts";
import type { InUse } from "./conductors-in-use.ts";

/** The draw of a consumer with all others off. */
export interface DrawAlone {
  readonly solved: boolean;
  /** The bank that gives most of it; -1 if none does. */
  readonly bank: number;
  readonly bankW: number;
  readonly bankA: number;
}

type Consumer = LoadPart | InverterPart;

/**
 * The draw of each consumer alone, of those conductors only that it can use. An edit elsewhere leaves them the same objects, and the
 * consumer its result.
 */
export function drawsAlone(
  network: Network,
  banks: readonly Bank[],
  {
    stateWith,
    apart,
    inUse,
    patterns,
    transferW,
    inTopology,
  }: {
    /** With this consumer on, and everything else off that may be. */
    readonly stateWith: (consumer: Consumer) => Scenario;
    readonly apart: SwitchesApart;
    readonly inUse: (on: readonly boolean[]) => InUse;
    readonly patterns: Parameters<typeof batterySolver>[1];
    /** Of a topology, which an edit of loads leaves the same object. */
    readonly inTopology: WeakMap<Part, DrawAlone>;
    /** By bank: the power that it gives while nothing draws, W. */
    readonly transferW: readonly number[];
  },
): (consumer: Consumer) => DrawAlone {
  const position = JSON.stringify([
    ...[[...apart.open], [...apart.selected], banks.map(({ batteries }) => batteries), transferW],
  ]);
  const solver = batterySolver(network, patterns);
  const afresh = (part: Consumer): DrawAlone => {
    const state = stateWith(part);
    const { conductors, parts } = inUse(state.on);
    const needs = [position, ...conductors, ...parts.flatMap(electrically)];
    const before = known.get(part);
    if (before && isSame(before.needs, needs)) return before.draw;
    const result = solver(state, conductors);
    const draw = drawOf({ network, banks, part, transferW }, result);
    known.set(part, { needs, draw });
    return draw;
  };
  return (part) => {
    const draw = inTopology.get(part) ?? afresh(part);
    inTopology.set(part, draw);
    return draw;
  };
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
  result: SolvedBatteries | undefined,
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
  };
}

export function nominalPower(part: Consumer): number {
  if (part.kind === "inverter") return (part.loadW * 100) / part.efficiencyPercent + part.idleW;
  const { draws, systemV } = part;
  if (draws.as === "power") return draws.powerW;
  if (draws.as === "resistance") return systemV ** 2 / draws.ohm;
  return systemV * (draws.as === "motor" ? draws.runningA : draws.currentA);
}
