import { batteryAtFuelTank, fuelAboveBattery } from "../../standards/placement-distances.ts";
import { type OfFault, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { defineRule } from "../rule.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const batteryFuel = defineRule<Values>({
  id: "placement/battery-fuel",
  title: "Battery above, below or at fuel",
  severity: "error",
  why: "Fuel that drips onto a battery, or vapour that rises from below, meets the spark of a loose terminal.",
  sources: [batteryAtFuelTank, fuelAboveBattery.source],
  fixable: true,
  acceptable: true,
  // Needs the place of a battery, and the fuel tanks and fuel lines at its surface.
  check: (plan) =>
    perBodyFault(plan, "fuel", ({ fault, surface }) => {
      const fixture = surface.fixtures.find(({ index }) => index === fault.fixture)!;
      const isNear = fault.how === "near its top";
      const at = { record: surface.record, path: ["fixtures", String(fault.fixture)] };
      return {
        // Whether it is of metal, and has a shield, is not stated.
        severity: isNear ? "info" : "error",
        related: [{ at, text: fixture.name }],
        values: {
          fixture: fixture.name,
          how: fault.how,
          withinIn: fuelAboveBattery.withinIn,
          source: sourceInWords(isNear ? fuelAboveBattery.source : batteryAtFuelTank),
        },
      };
    }),
  whenAsked: moveFixes,
  message: ({ fixture, how, withinIn, source }) =>
    how === "near its top"
      ? `Is within ${withinIn} in of ${fixture}, which is higher than its top: fuel parts of metal there need a dielectric shield (${source}).`
      : `Is directly ${how === "over" ? "above or below" : how} ${fixture}, where no battery may be (${source}): move it.`,
});

interface Values extends OfFault {
  readonly fixture: string;
  readonly how: "above" | "below" | "over" | "near its top";
  readonly withinIn: number;
  readonly source: string;
}
