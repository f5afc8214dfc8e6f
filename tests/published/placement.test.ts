import { describe, expect, it } from "vitest";
import { airFlowM3h, openingCm2 } from "../../library/analysis/placement/battery-ventilation.ts";
import { heatOfConverter } from "../../library/analysis/placement/compartment-heat.ts";
import { batteryVentilation } from "../../library/standards/battery-ventilation.ts";
import {
  bendRadius,
  distanceFromFuel,
  distanceFromHeat,
  supports,
} from "../../library/standards/conductor-ways.ts";
import { wallHeat } from "../../library/standards/wall-heat.ts";
import { expectSameCells, published } from "./published-data.ts";

const printed = published<PrintedPlacement>("placement.json");

interface PrintedPlacement {
  readonly supports: Readonly<Record<"everyMm" | "toDisconnectEveryMm" | "toDisconnectFirstMm", number>>;
  readonly bendRadius: {
    readonly rows: readonly { readonly where: string; readonly timesOutside: number }[];
  };
  readonly clearances: Readonly<Record<"fromHeatMm" | "fromHeatBetterMm" | "fromFuelAndGasMm", number>>;
  readonly ventilation: {
    readonly gasCurrents: readonly { readonly by: string; readonly kind: string; readonly mAPerAh: number }[];
    readonly cases: readonly Readonly<
      Record<"cells" | "capacityAh" | "mAPerAh" | "flowM3h" | "areaCm2", number>
    >[];
  };
  readonly heat: {
    readonly cases: readonly Readonly<Record<"outW" | "efficiencyPercent" | "heatW", number>>[];
    readonly walls: readonly {
      readonly wall: string;
      readonly leastWM2K: number;
      readonly greatestWM2K: number;
    }[];
  };
}

describe("supports, bends and distances of conductors", () => {
  it("ISO 10133:2012, 7.3 and 7.4: distances of supports", () => {
    const { everyMm, toDisconnectEveryMm, toDisconnectFirstMm } = printed.supports;
    expect(supports.everyMm).toBe(everyMm);
    expect(supports.toDisconnect).toMatchObject({
      everyMm: toDisconnectEveryMm,
      firstMm: toDisconnectFirstMm,
    });
  });

  it("an unsigned sheet: multiples of the outside diameter", () => {
    const { laid, pulled } = bendRadius;
    const own = new Map([
      ["as installed, to 25 mm", laid.upTo25mm],
      ["while pulling, to 25 mm", pulled.upTo25mm],
      ["as installed, over 25 mm", laid.above25mm],
      ["while pulling, over 25 mm", pulled.above25mm],
    ]);
    expectSameCells(own, new Map(printed.bendRadius.rows.map((row) => [row.where, row.timesOutside])), 4);
  });

  it("Boat Safety Scheme 2002, 3.4: distances from heat, fuel and gas", () => {
    const { fromHeatMm, fromHeatBetterMm, fromFuelAndGasMm } = printed.clearances;
    expect(distanceFromHeat).toMatchObject({ leastMm: fromHeatMm, aimMm: fromHeatBetterMm });
    expect(distanceFromFuel.leastMm).toBe(fromFuelAndGasMm);
  });
});

describe("ventilation of lead-acid batteries", () => {
  it("EN 62485-2 and -3: gas currents", () => {
    const { stationaryBoostAPerAh, tractionLimitedAPerAh } = batteryVentilation;
    const own = new Map([
      ["stationary, boost, vented", stationaryBoostAPerAh.vented * 1_000],
      ["stationary, boost, valve regulated", stationaryBoostAPerAh.valveRegulated * 1_000],
      ["traction, voltage limit, vented", tractionLimitedAPerAh.vented * 1_000],
      ["traction, voltage limit, valve regulated", tractionLimitedAPerAh.valveRegulated * 1_000],
    ]);
    const cells = printed.ventilation.gasCurrents.map(
      ({ by, kind, mAPerAh }) => [`${by}, ${kind}`, mAPerAh] as const,
    );
    expectSameCells(own, new Map(cells), 4);
  });

  it.each(printed.ventilation.cases)(
    "EN 62485-2: $cells cells of $capacityAh Ah at $mAPerAh mA per Ah",
    (one) => {
      const { cells, capacityAh, mAPerAh, flowM3h, areaCm2 } = one;
      const flow = airFlowM3h({ cells, capacityAh, gasAPerAh: mAPerAh / 1_000 });
      // The cases are printed to three figures at least.
      expect(flow).toBeCloseTo(flowM3h, 9);
      expect(openingCm2(flow)).toBeCloseTo(areaCm2, 9);
    },
  );
});

describe("heat", () => {
  it.each(printed.heat.cases)("$outW W at $efficiencyPercent % give off $heatW W", (one) => {
    // Printed to one decimal.
    expect(heatOfConverter(one.outW, one.efficiencyPercent)).toBeCloseTo(one.heatW, 1);
  });

  it("three calculation pages: conductance of walls, least and greatest", () => {
    const own = Object.entries(wallHeat.conductance).flatMap(([wall, [least, greatest]]) => [
      [`${wall}, least`, least] as const,
      [`${wall}, greatest`, greatest] as const,
    ]);
    const cells = printed.heat.walls.flatMap(({ wall, leastWM2K, greatestWM2K }) => [
      [`${wall}, least`, leastWM2K] as const,
      [`${wall}, greatest`, greatestWM2K] as const,
    ]);
    expectSameCells(new Map(own), new Map(cells), 8);
  });
});
