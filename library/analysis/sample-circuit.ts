import type { Circuit } from "../model/circuit.ts";

/** A sound circuit with every default filled in, and whatever a test changes of it. For tests only. */
export function sampleCircuit(change: Partial<Circuit> = {}): Circuit {
  return {
    record: 0,
    word: "circuit",
    wired: false,
    statesLoad: true,
    name: "sample",
    loadA: 40,
    loadAtV: 12,
    systemV: 12,
    lengthsGiven: { oneWayFt: 15 },
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
    critical: false,
    dropLimitPercent: 10,
    dropLimitStated: false,
    fedFromBothEnds: false,
    fromBattery: false,
    toBattery: false,
    protection: { ratingA: 50, writtenAs: "number" },
    protectionFarEnd: null,
    accept: {},
    partlyInvalid: false,
    ...change,
  };
}
