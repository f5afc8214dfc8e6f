import type { CableRun, CircuitRun, Measured } from "../model/run.ts";
import { ordinaryDropLimit } from "../standards/drop-limits.ts";

/** A sound circuit with every default filled in, with a test's changes, which keep a length. For tests only. */
export function sampleCircuit(change: Partial<CircuitRun> = {}): Measured<CircuitRun> {
  return {
    ...sample,
    word: "circuit",
    statesLoad: true,
    loadAtV: 12,
    lowestV: 10.5,
    critical: false,
    ...change,
  } as Measured<CircuitRun>;
}

/** A sound cable, likewise. */
export function sampleCable(change: Partial<CableRun> = {}): Measured<CableRun> {
  return { ...sample, word: "cable", inNetwork: true, ...change } as Measured<CableRun>;
}

const sample = {
  record: 0,
  inNetwork: false,
  name: "sample",
  nameStated: true,
  loadA: 40,
  systemV: 12,
  lengthsGiven: { oneWayFt: 15 },
  lengthsFrom: "plan",
  lengthUnit: "ft",
  positiveM: 15 * 0.3048,
  negativeM: 15 * 0.3048,
  conductor: { parallel: 1, system: "awg", awg: 4 },
  insulationC: 75,
  insulationStated: false,
  engineSpace: false,
  ambientC: 30,
  ambientStated: false,
  bundledWith: 1,
  bundledWithStated: false,
  sheathed: false,
  continuous: true,
  continuousStated: true,
  dropLimitPercent: 10,
  dropLimitStated: false,
  dropLimitSource: ordinaryDropLimit.source,
  fedFromBothEnds: false,
  fromBattery: false,
  toBattery: false,
  protection: { ratingA: 50, writtenAs: "number" },
  protectionFarEnd: null,
  accept: {},
  partlyInvalid: false,
} as const;
