import { cellsOf } from "../../model/battery-figures.ts";
import type { BatteryPart, Network } from "../../model/network.ts";
import { batteryVentilation } from "../../standards/battery-ventilation.ts";
import type { Citation } from "../../standards/citation.ts";
import { compartmentOf } from "./compartment-of.ts";
import type { Placement } from "./placement.ts";

/**
 * The flow of air that carries off the hydrogen of one battery, m³/h: 0.05 · n · I · C.
 *
 * @param gasAPerAh gas current, A per Ah of rated capacity
 */
export function airFlowM3h(of: {
  readonly cells: number;
  readonly capacityAh: number;
  readonly gasAPerAh: number;
}): number {
  return batteryVentilation.airM3PerAh * of.cells * of.gasAPerAh * of.capacityAh;
}

/** Free area of an inlet, and of an outlet, for a flow of air: 28 · Q, cm². */
export function openingCm2(flowM3h: number): number {
  return batteryVentilation.areaCm2PerM3h * flowM3h;
}

/** The lead-acid batteries in a compartment, and the air that they need. */
export interface Ventilation {
  /** Index in the compartments of the layout. */
  readonly compartment: number;
  readonly batteries: readonly BatteryPart[];
  readonly flowM3h: number;
  /** Of the inlet, and of the outlet. */
  readonly areaCm2: number;
  readonly by: "stationary" | "traction";
  /** Neither is stated to apply: the greater figure was taken. */
  readonly isEither: boolean;
  readonly sources: readonly [Citation, ...Citation[]];
}

export type KindOfBuild = "boat with petrol engine" | "boat" | "vehicle" | "building";

/**
 * The ventilation of every compartment with lead-acid batteries: EN 62485-2 in a building, EN 62485-3 in a vehicle or boat. Chargers
 * are taken as those that boost and limit their voltage. Lithium batteries are left out.
 */
export function ventilations(
  placement: Placement,
  network: Network,
  installedIn: KindOfBuild | undefined,
): readonly Ventilation[] {
  const { layout } = placement;
  const batteries = new Map(
    network.parts.flatMap((part) =>
      part.kind === "battery" && part.chemistry !== "LiFePO4" ? [[part.record, part] as const] : [],
    ),
  );
  const inside: BatteryPart[][] = layout.compartments.map(() => []);
  for (const body of layout.bodies) {
    const battery = batteries.get(body.record);
    const compartment = compartmentOf(body, layout);
    if (battery && compartment !== undefined) inside[compartment]!.push(battery);
  }
  const { stationary, stationaryBoost, traction } = batteryVentilation;
  return inside.flatMap((among, compartment): readonly Ventilation[] => {
    if (among.length === 0) return [];
    const flows = { stationary: flowBy("stationary", among), traction: flowBy("traction", among) };
    const greater = flows.stationary > flows.traction ? "stationary" : "traction";
    const by = installedIn === undefined ? greater : installedIn === "building" ? "stationary" : "traction";
    const flowM3h = flows[by];
    return [
      {
        ...{ compartment, batteries: among, flowM3h, areaCm2: openingCm2(flowM3h), by },
        isEither: installedIn === undefined,
        sources: by === "stationary" ? [stationary, stationaryBoost] : [traction],
      },
    ];
  });
}

function flowBy(by: Ventilation["by"], batteries: readonly BatteryPart[]): number {
  const gas =
    by === "stationary" ? batteryVentilation.stationaryBoostAPerAh : batteryVentilation.tractionLimitedAPerAh;
  return batteries.reduce((sum, battery) => {
    const gasAPerAh = battery.chemistry === "flooded lead-acid" ? gas.vented : gas.valveRegulated;
    return sum + airFlowM3h({ cells: cellsOf(battery), capacityAh: battery.capacityAh, gasAPerAh });
  }, 0);
}
