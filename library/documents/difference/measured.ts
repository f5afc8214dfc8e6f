import { currentThrough } from "../../analysis/current-through.ts";
import { designCurrentA } from "../../analysis/design-current.ts";
import type { WorstOf } from "../../analysis/network-result.ts";
import { withoutLengthTo } from "../../analysis/unknown-lengths.ts";
import { greatestDropPercent } from "../../analysis/voltage-drop.ts";
import { conductorWith, type Part } from "../../model/network.ts";
import {
  currentLimitsOf,
  givesEnergy,
  isConsumer,
  minimumVoltageOf,
  passesCurrentOn,
} from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import { type JudgedPlan, withKnownCurrent } from "../../rules/rule.ts";
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
  /** The value up to which it counts as met, if that is another. */
  readonly metUpTo?: number;
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
  const runs = new Map(withKnownCurrent(plan.circuits).map((run) => [run.circuit.record, run]));
  const ways = new Map<number, { readonly dropPercent: number; readonly dropLimitPercent: number }>();
  for (const way of judged?.result.supplyPaths ?? []) {
    if (way.withoutLength.length > 0) continue;
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
    const value = designCurrentA(circuit);
    const current: Measured = { what: "currentA", words: "current", value, unit: "A", limit };
    if (circuit.word === "cable") return [current];
    return drop.judged ? [current, dropOf("dropPercent", "drop", drop)] : [current];
  }

  function ofPart(index: number, isCircuitsOwn: boolean): Measured[] {
    const part = judged?.network.parts[index];
    const worst = judged?.result.parts[index];
    if (!judged || !part || !worst) return [];
    const way = ways.get(index);
    const lowest = leastVoltage(part);
    return [
      ...(way ? [dropOf("dropFromBankPercent", "drop from the bank", way)] : []),
      ...(worst.lowestV && isConsumer(part) && withoutLengthTo(judged, part).length === 0
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
  const limit: Limit = {
    value: dropLimitPercent,
    metUpTo: greatestDropPercent(dropLimitPercent),
    is: "most",
    words: "limit",
    statedBy: "dropLimitPercent",
  };
  return { what, words, value: dropPercent, unit: "%", limit };
}

function leastVoltage(part: Part): Limit | undefined {
  const value = isConsumer(part) ? minimumVoltageOf(part) : undefined;
  const statedBy = descriptorOf(part).worksFrom;
  if (value === undefined || statedBy === undefined) return undefined;
  return { value, is: "least", words: part.kind === "inverter" ? "cuts off at" : "needs", statedBy };
}

function currents(
  part: Part,
  through: WorstOf | undefined,
  { feeds, draws }: { readonly feeds: WorstOf | undefined; readonly draws: WorstOf | undefined },
): Measured[] {
  const limits = new Map(currentLimitsOf(part).map((limit) => [limit.current, limit]));
  const current = (
    does: "gives" | "takes" | "carries",
    what: Measured["what"],
    words: string,
    worst: WorstOf | undefined,
  ) => {
    const limit = limits.get(does);
    const most: Limit | undefined =
      limit?.lastingA === undefined || limit.heldByItself
        ? undefined
        : { value: limit.lastingA, is: "most", words: limit.words, statedBy: limit.property };
    return worst ? told(what, words, worst.currentA, "A", most) : [];
  };
  if (passesCurrentOn(part)) return current("carries", "currentA", "current", through);
  const { role, chargesWith } = descriptorOf(part);
  // The modules set the current that a solar controller takes.
  const isDrawn =
    part.kind === "battery" || isConsumer(part) || (role === "converter" && chargesWith !== "sun");
  const taking =
    part.kind === "battery" ? "is charged with" : role === "converter" ? "takes at its input" : "takes";
  return [
    ...(givesEnergy(part) ? current("gives", "givesA", "gives", feeds) : []),
    ...(isDrawn ? current("takes", "takesA", taking, draws) : []),
  ];
}

/**
 * Fault currents through the devices of a run, or through a device that is a part of its own: the maximum, against the interrupting rating; and the minimum, at the far end of
 * the protected conductors. A rule decides whether the device opens soon enough at the minimum.
 */
function faultsByRecord({ network: judged }: JudgedPlan): ReadonlyMap<number, Measured[]> {
  const faults = new Map<number, Measured[]>();
  for (const { device: index, greatestA, least } of judged?.result.faults.devices ?? []) {
    const device = judged?.network.devices[index];
    if (!judged || !device) continue;
    const { place } = device;
    const ofPart = place.at === "part";
    const { record } =
      conductorWith(judged.network, device) ?? judged.network.parts[ofPart ? place.part : -1]!;
    if (faults.has(record)) continue;
    const by = ofPart ? "" : place.end === "near" ? "protection." : "protectionFarEnd.";
    const limit: Limit | undefined =
      device.interruptingA === undefined
        ? undefined
        : { value: device.interruptingA, is: "most", words: "interrupts", statedBy: `${by}interruptingA` };
    faults.set(record, [
      ...told("faultA", ofPart ? "short right behind it" : "short at its device", greatestA, "A", limit),
      ...(least
        ? told(
            "farFaultA",
            ofPart ? "short at the far end behind it" : "short at its far end",
            least.currentA,
            "A",
            undefined,
          )
        : []),
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
