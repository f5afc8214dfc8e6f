import type { Network, Part } from "../../model/network.ts";
import type { Compartment } from "../../model/placement/layout.ts";
import { wallHeat } from "../../standards/wall-heat.ts";
import { partsByRecord } from "./bodies.ts";
import { compartmentOf } from "./compartment-of.ts";
import type { Placement } from "./placement.ts";

/** The heat that the parts in a compartment give off at their greatest load, and the rise of the temperature in it. */
export interface CompartmentHeat {
  /** Index in the compartments of the layout. */
  readonly compartment: number;
  readonly heatW: number;
  /** The parts that give it off, the one with the most heat first, by their names. */
  readonly from: readonly string[];
  /** Equipment whose heat is not known, by its names. */
  readonly unknown: readonly string[];
  /** Absent if the walls are not stated, or one has no published figure. */
  readonly rise?: {
    readonly riseK: number;
    /** U · A of all walls, W/K. */
    readonly wattPerK: number;
    /** Of the air inside, if the plan states that outside, °C. */
    readonly insideC?: number;
  };
}

/** Heat that a converter gives off: P = P_out · (1/η − 1), W. */
export function heatOfConverter(outW: number, efficiencyPercent: number): number {
  return outW * (100 / efficiencyPercent - 1);
}

/**
 * Each compartment with parts that give off heat.
 *
 *     ΔT = P / Σ U · A        P heat, W; U conductance of a wall, W/(m²·K), the smaller of two published figures; A its area, m²
 */
export function compartmentHeats(placement: Placement, network: Network): readonly CompartmentHeat[] {
  const { layout } = placement;
  const parts = partsByRecord(network);
  return layout.compartments.flatMap((compartment, index): readonly CompartmentHeat[] => {
    const sources = layout.bodies
      .filter((body) => compartmentOf(body, layout) === index)
      .map(({ name, record, heatW }) => ({ name, heatW: heatW ?? heatOf(parts.get(record)) }))
      .filter(({ heatW }) => heatW !== 0);
    const known = sources.flatMap(({ name, heatW }) => (heatW === undefined ? [] : [{ name, heatW }]));
    if (known.length === 0) return [];
    const heatW = known.reduce((sum, one) => sum + one.heatW, 0);
    const rise = riseIn(compartment, heatW);
    return [
      {
        ...{ compartment: index, heatW },
        from: known.sort((one, other) => other.heatW - one.heatW).map(({ name }) => name),
        unknown: sources.filter((one) => one.heatW === undefined).map(({ name }) => name),
        ...(rise && { rise }),
      },
    ];
  });
}

function riseIn({ walls, outsideC }: Compartment, heatW: number): CompartmentHeat["rise"] {
  const conductance: Readonly<Record<string, readonly [number, number]>> = wallHeat.conductance;
  let wattPerK = 0;
  for (const { material, areaM2 } of walls ?? []) {
    const figures = conductance[material];
    if (!figures) return undefined;
    wattPerK += figures[0] * areaM2;
  }
  if (wattPerK === 0) return undefined;
  const riseK = heatW / wattPerK;
  return { riseK, wattPerK, ...(outsideC !== undefined && { insideC: outsideC + riseK }) };
}

/** At its greatest load, W; undefined for a charger without an efficiency; 0 for parts that give off little. */
function heatOf(part: Part | undefined): number | undefined {
  if (!part) return 0;
  switch (part.kind) {
    case "inverter":
      return heatOfConverter(part.loadW, part.efficiencyPercent);
    case "dcDcCharger":
    case "solarController":
      return heatOfConverter(part.outputA * part.outputV, part.efficiencyPercent);
    case "shoreCharger":
      return undefined;
    case "battery":
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "selectorSwitch":
    case "relay":
    case "fuseHolder":
    case "breaker":
    case "shunt":
    case "alternator":
    case "solarArray":
    case "chassis":
    case "load":
    case "part":
      return 0;
    default:
      return part satisfies never;
  }
}
