import { dropPercent } from "./circuit-properties.ts";
import {
  current,
  efficiency,
  loadCurrent,
  nominalVoltage,
  ofEveryPart,
  partTable,
  power,
  workingVoltage,
} from "./part-properties.ts";
import { amount, yesOrNo } from "./property.ts";
import type { ValuesOf } from "./property-table.ts";

/* Allowed values of each property of parts that draw current. */

const inverter = {
  ...ofEveryPart,
  continuousW: power,
  surgeW: amount("a power", "W", { above: 0, upTo: 200_000 }),
  efficiencyPercent: efficiency,
  cutOffV: workingVoltage,
  idleW: amount("a power", "W", { from: 0, upTo: 10_000 }),
  loadW: amount("a power", "W", { from: 0, upTo: 100_000 }),
};
export type InverterValues = ValuesOf<typeof inverter>;
export const inverterProperties = partTable("inverter", inverter, { needed: ["continuousW"] });

const howItIsJudged = {
  minimumV: nominalVoltage,
  critical: yesOrNo(),
  continuous: yesOrNo(),
  dropLimitPercent: dropPercent,
};

const load = {
  ...ofEveryPart,
  currentA: loadCurrent,
  powerW: power,
  // Less than a milliohm is a short circuit: 12 V drive more than 10,000 A through it.
  resistanceOhm: amount("a resistance", "Ω", { from: 0.001, upTo: 1_000_000 }),
  ...howItIsJudged,
};
export type LoadValues = ValuesOf<typeof load>;
export const loadProperties = partTable("load", load, {
  needed: [],
  choices: [{ ways: [["currentA"], ["powerW"], ["resistanceOhm"]], needed: "its draw" }],
});

const motor = { ...ofEveryPart, runningA: loadCurrent, startingA: current, ...howItIsJudged };
export type MotorValues = ValuesOf<typeof motor>;
export const motorProperties = partTable("motor", motor, { needed: ["runningA", "startingA"] });
