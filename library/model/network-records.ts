import { type CableValues, cableProperties } from "./cable-properties.ts";
import { type CircuitValues, wiredCircuitProperties } from "./circuit-properties.ts";
import { describeValue } from "./describe-value.ts";
import { displayName } from "./display-name.ts";
import { draftLoadOfCircuit, draftPart, type LoadOfCircuit, type PartDraft } from "./draft-part.ts";
import type { NetworkTerminal } from "./network.ts";
import { isObject } from "./plain-values.ts";
import { readValues } from "./read-values.ts";
import { isPlacementWord, type PlanRecord } from "./record.ts";
import {
  type CableEnds,
  type CircuitEnds,
  endsOfCable,
  endsOfCircuit,
  mountingOf,
  type PartsOfPlan,
} from "./resolve-terminals.ts";
import type { InvalidValue, Refusal } from "./run.ts";
import { type ScenarioValues, scenarioProperties } from "./scenario-properties.ts";
import { isPartWord } from "./terminals.ts";
import { workedOutOnce } from "./worked-out-once.ts";

/** The records of a network, each read by itself and with the terminals that it names. */
export interface NetworkRecords extends PartsOfPlan {
  readonly circuits: readonly FoundCircuit[];
  readonly cables: readonly FoundCable[];
  readonly scenarios: readonly FoundScenario[];
  /** By record: the terminal of another part that a device is mounted on. */
  readonly mountedOn: ReadonlyMap<number, number>;
  readonly invalid: readonly InvalidValue[];
}

interface Found<Values> {
  readonly record: number;
  readonly name: string;
  readonly values: Values;
}

export interface FoundCircuit extends Found<CircuitValues> {
  /** Refused values that affect no result of the circuit itself. */
  readonly invalid: readonly Refusal[];
  /** True if no refused value affects results. */
  readonly sound: boolean;
  readonly ends: CircuitEnds | undefined;
  /** The load that it states itself. */
  readonly load: LoadOfCircuit | undefined;
}

export interface FoundCable extends Found<CableValues> {
  readonly ends: CableEnds | undefined;
}

type FoundScenario = Found<ScenarioValues>;

/** True for a circuit that starts or ends at a part of the plan; false for one outside the network. */
export function isWired({ word, input }: PlanRecord): boolean {
  return (
    word === "circuit" &&
    isObject(input) &&
    (input.from !== undefined || input.to !== undefined || input.returnTo !== undefined)
  );
}

export function belongsToNetwork(record: PlanRecord): boolean {
  const { word } = record;
  if (word === "circuit") return isWired(record);
  return word !== "build" && word !== "period" && !isPlacementWord(word);
}

/** @param leftOut Indices of records that are passed over as if the plan did not have them. */
export function readNetworkRecords(
  records: readonly PlanRecord[],
  leftOut: ReadonlySet<number>,
): NetworkRecords {
  const plan = readParts(records, leftOut);
  const invalid: InvalidValue[] = [];
  const mountedOn = new Map<number, number>();
  const [circuits, cables, scenarios]: [FoundCircuit[], FoundCable[], FoundScenario[]] = [[], [], []];
  records.forEach((record, index) => {
    if (!belongsToNetwork(record) || leftOut.has(index)) return;
    const refuse = (name: string, refusals: readonly Refusal[]) => {
      for (const refusal of refusals) invalid.push({ record: index, name, ...refusal });
    };
    const { word } = record;
    if (isPartWord(word)) {
      const draft = plan.byRecord.get(index)!;
      const { terminal, invalid } = mountingOf(draft, plan);
      if (terminal !== undefined) mountedOn.set(index, terminal);
      refuse(draft.name, [...(plan.refusedOfParts.get(index) ?? []), ...invalid]);
    } else if (word === "circuit") {
      const read = readValues(record.input, wiredCircuitProperties);
      const { values } = read;
      const name = nameOf(record, values);
      const { ends, invalid } = endsOfCircuit(values, plan);
      refuse(name, [...read.invalid, ...invalid, ...knownFromNetwork(values)]);
      const sound = read.unusable.size === 0 && invalid.length === 0;
      const load = plan.loadOf.get(index);
      circuits.push({ record: index, name, values, invalid: read.invalid, sound, ends, load });
    } else if (word === "cable") {
      const read = readValues(record.input, cableProperties);
      const name = nameOf(record, read.values);
      const { ends, invalid } = endsOfCable(read.values, plan);
      refuse(name, [...read.invalid, ...invalid]);
      cables.push({ record: index, name, values: read.values, ends });
    } else if (word === "scenario") {
      const read = readValues(record.input, scenarioProperties);
      const name = nameOf(record, read.values);
      refuse(name, read.invalid);
      scenarios.push({ record: index, name, values: read.values });
    }
  });
  return { circuits, cables, scenarios, mountedOn, invalid, ...plan };
}

/**
 * Properties that the network or the part at the end determines, not the circuit. They are named, and no figure depends on them:
 * the rest of the network is judged all the same.
 */
const knownFromNetwork = workedOutOnce(
  ({
    from,
    to,
    termination,
    minimumV,
    maximumV,
    purpose,
    use,
    largestGauge,
    largestMm2,
    maxFuseA,
    fedFromBothEnds,
    fromBattery,
    at,
    size,
  }: CircuitValues): readonly Refusal[] => {
    const refused = (property: string, given: unknown, wrong: string, allowed: string): Refusal[] =>
      given === undefined
        ? []
        : [{ path: [property], given: describeValue(given), wrong, allowed, serves: "lists" }];
    const ofPart = (property: string, given: unknown) =>
      to === undefined
        ? []
        : refused(
            property,
            given,
            "cannot be given together with to",
            `${property} of the part where the circuit ends`,
          );
    const startsAtBattery = from?.of === "battery";
    return [
      ...ofPart("termination", termination),
      ...ofPart("minimumV", minimumV),
      ...ofPart("maximumV", maximumV),
      ...ofPart("purpose", purpose),
      ...ofPart("use", use),
      ...ofPart("largestGauge", largestGauge),
      ...ofPart("largestMm2", largestMm2),
      ...ofPart("maxFuseA", maxFuseA),
      ...ofPart("at", at),
      ...ofPart("size", size),
      ...refused(
        "fedFromBothEnds",
        fedFromBothEnds,
        "cannot be given together with from",
        "none: the network shows which ends are fed",
      ),
      ...(fromBattery === startsAtBattery
        ? []
        : refused(
            "fromBattery",
            fromBattery,
            startsAtBattery
              ? "contradicts from, which is a terminal of a battery"
              : "contradicts from, which is no terminal of a battery",
            `${startsAtBattery}, or none: it is taken from the network`,
          )),
    ];
  },
);

interface ReadParts extends PartsOfPlan {
  readonly loadOf: ReadonlyMap<number, LoadOfCircuit>;
  readonly refusedOfParts: ReadonlyMap<number, readonly Refusal[]>;
}

/** Parts with all their terminals are read first: a cable may name terminals of a part that follows it in the plan. */
function readParts(records: readonly PlanRecord[], leftOut: ReadonlySet<number>): ReadParts {
  const terminals: NetworkTerminal[] = [];
  const parts: (PartDraft | LoadOfCircuit)[] = [];
  const byRecord = new Map<number, PartDraft>();
  const loadOf = new Map<number, LoadOfCircuit>();
  const refusedOfParts = new Map<number, readonly Refusal[]>();
  records.forEach((record, index) => {
    const { word } = record;
    if (leftOut.has(index)) return;
    if (isPartWord(word)) {
      const place = { record: index, index: parts.length };
      const { draft, invalid } = draftPart(record, word, place, terminals);
      parts.push(draft);
      byRecord.set(index, draft);
      if (invalid.length > 0) refusedOfParts.set(index, invalid);
    } else if (isWired(record)) {
      const { values } = readValues(record.input, wiredCircuitProperties);
      if (values.to !== undefined) return;
      const load = draftLoadOfCircuit(
        { record: index, index: parts.length, name: nameOf(record, values) },
        values.termination,
        terminals,
      );
      parts.push(load);
      loadOf.set(index, load);
    }
  });
  return { records, parts, byRecord, terminals, loadOf, refusedOfParts };
}

function nameOf(record: PlanRecord, { name }: { readonly name?: string | undefined }): string {
  return displayName(name ?? "") || displayName(record.fallbackName);
}
