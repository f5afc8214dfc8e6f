import type { WorstOf } from "../../analysis/network-result.ts";
import type { Part } from "../../model/network.ts";
import { isConsumer } from "../../model/part-roles.ts";
import { currentThrough } from "../../rules/current-through.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import type { Unit } from "../../rules/wording/format-number.ts";
import type { Subject } from "./subject.ts";

/** One calculated figure of a subject, in its worst scenario, with its limit. */
export interface Measured {
  /** Stable, for programs. One subject has each at most once. */
  readonly what:
    | "currentA"
    | "dropPercent"
    | "dropFromBankPercent"
    | "lowestV"
    | "givesA"
    | "takesA"
    | "faultA"
    | "farFaultA";
  /** For people: "drop from the bank". */
  readonly words: string;
  readonly value: number;
  readonly unit: Unit;
  readonly limit: Limit | undefined;
}

export interface Limit {
  readonly value: number;
  /** The limit is a maximum or a minimum. */
  readonly is: "most" | "least";
  /** The name of the limit: "ampacity", "rating". */
  readonly words: string;
  /** The property that states it, if one does: a limit that the builder changed is reported as that property. */
  readonly statedBy?: string;
}

/** Looks up the calculated figures of each subject of one plan. */
export function measuredIn(plan: JudgedPlan): (subject: Subject) => readonly Measured[] {
  const { network: judged } = plan;
  const runs = new Map(plan.circuits.map((run) => [run.circuit.record, run]));
  const ways = new Map<number, { readonly dropPercent: number; readonly dropLimitPercent: number }>();
  for (const way of judged?.result.supplyPaths ?? []) {
    const known = ways.get(way.part);
    if (!known || share(way) > share(known)) ways.set(way.part, way);
  }
  const faults = faultsByRecord(plan);
  return (subject) => [
    ...(subject.kind === "circuit" || subject.kind === "cable" ? ofRun(subject) : []),
    ...(subject.part === undefined ? [] : ofPart(subject.part, subject.kind === "circuit")),
    ...((subject.record !== undefined && faults.get(subject.record)) || []),
  ];

  function ofRun({ record }: Subject): Measured[] {
    const run = runs.get(record ?? -1);
    if (!run) return [];
    const { circuit, result } = run;
    const { ampacity, drop } = result;
    const limit: Limit | undefined = ampacity.judged
      ? { value: ampacity.ampacityA, is: "most", words: "ampacity" }
      : undefined;
    const current: Measured = { what: "currentA", words: "current", value: circuit.loadA, unit: "A", limit };
    if (circuit.word === "cable") return [current];
    return [current, dropOf("dropPercent", "drop", drop)];
  }

  function ofPart(index: number, isCircuitsOwn: boolean): Measured[] {
    const part = judged?.network.parts[index];
    const worst = judged?.result.parts[index];
    if (!judged || !part || !worst) return [];
    const way = ways.get(index);
    const lowest = leastVoltage(part);
    return [
      ...(way ? [dropOf("dropFromBankPercent", "drop from the bank", way)] : []),
      ...(worst.lowestV && isConsumer(part)
        ? told("lowestV", "lowest voltage", worst.lowestV.voltageV, "V", lowest)
        : []),
      // The current of a circuit's own load is the current of the circuit.
      ...(isCircuitsOwn ? [] : currents(part, currentThrough(judged.result, part), worst)),
    ];
  }
}

interface Percent {
  readonly dropPercent: number;
  readonly dropLimitPercent: number;
}

function share({ dropPercent, dropLimitPercent }: Percent): number {
  return dropPercent / dropLimitPercent;
}

function dropOf(what: Measured["what"], words: string, { dropPercent, dropLimitPercent }: Percent): Measured {
  const limit: Limit = { value: dropLimitPercent, is: "most", words: "limit", statedBy: "dropLimitPercent" };
  return { what, words, value: dropPercent, unit: "%", limit };
}

function leastVoltage(part: Part): Limit | undefined {
  if (!isConsumer(part)) return undefined;
  if (part.kind === "inverter")
    return { value: part.cutOffV, is: "least", words: "cuts off at", statedBy: "cutOffV" };
  return part.minimumV === undefined
    ? undefined
    : { value: part.minimumV, is: "least", words: "needs", statedBy: "minimumV" };
}

function currents(
  part: Part,
  through: WorstOf | undefined,
  { feeds, draws }: { readonly feeds: WorstOf | undefined; readonly draws: WorstOf | undefined },
): Measured[] {
  const current = (what: Measured["what"], words: string, worst: WorstOf | undefined, limit?: Limit) =>
    worst ? told(what, words, worst.currentA, "A", limit) : [];
  const rated = (value: number | undefined, statedBy: string, words = "rating"): Limit | undefined =>
    value === undefined ? undefined : { value, is: "most", words, statedBy };
  switch (part.kind) {
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "shunt":
    case "part":
      return current("currentA", "current", through, rated(part.ratedA, "ratedA"));
    case "battery":
      return [
        ...current("givesA", "gives", feeds, rated(part.maxDischargeA, "maxDischargeA", "may give")),
        ...current("takesA", "is charged with", draws, rated(part.maxChargeA, "maxChargeA", "may take")),
      ];
    case "alternator": {
      const forHoursA = (part.ratedA * part.continuousPercent) / 100;
      return current("givesA", "gives", feeds, rated(forHoursA, "ratedA", "for hours"));
    }
    case "dcDcCharger":
      return [
        ...current("takesA", "takes at its input", draws, rated(part.inputMaxA, "inputMaxA", "at most")),
        ...current("givesA", "gives", feeds),
      ];
    case "inverter":
    case "load":
      return current("takesA", "takes", draws);
    case "shoreCharger":
    case "solarController":
    case "solarArray":
      return current("givesA", "gives", feeds);
    case "chassis":
      return current("currentA", "current", through);
  }
}

/**
 * Fault currents through the devices of a run: the maximum, against the interrupting rating; and the minimum, at the far end of
 * the protected conductors. A rule decides whether the device opens soon enough at the minimum.
 */
function faultsByRecord({ network: judged }: JudgedPlan): ReadonlyMap<number, Measured[]> {
  const faults = new Map<number, Measured[]>();
  for (const { device: index, greatestA, least } of judged?.result.faults.devices ?? []) {
    const device = judged?.network.devices[index];
    const on = device && judged?.network.conductors[device.place.conductor];
    if (!on || faults.has(on.record)) continue;
    const by = device.place.end === "near" ? "protection" : "protectionFarEnd";
    const limit: Limit | undefined =
      device.interruptingA === undefined
        ? undefined
        : { value: device.interruptingA, is: "most", words: "interrupts", statedBy: `${by}.interruptingA` };
    faults.set(on.record, [
      ...told("faultA", "short at its device", greatestA, "A", limit),
      ...(least ? told("farFaultA", "short at its far end", least.currentA, "A", undefined) : []),
    ]);
  }
  return faults;
}

function told(
  what: Measured["what"],
  words: string,
  value: number,
  unit: Unit,
  limit: Limit | undefined,
): Measured[] {
  return [{ what, words, value, unit, limit }];
}
