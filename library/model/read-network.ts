import type { BuildValues } from "./build-properties.ts";
import { withArticle } from "./describe-value.ts";
import type { PartDraft } from "./draft-part.ts";
import { makeLoadOfCircuit, makePart, nominalVoltageOf, type PartContext } from "./make-parts.ts";
import { motorStarts } from "./motor-starts.ts";
import type { Network, Part } from "./network.ts";
import {
  belongsToNetwork,
  type FoundCable,
  type NetworkRecords,
  readNetworkRecords,
} from "./network-records.ts";
import {
  type LowestVoltages,
  lowestVoltages,
  type NominalVoltages,
  nominalVoltages,
  type Wiring,
} from "./nominal-voltage.ts";
import { descriptorOfWord } from "./parts/index.ts";
import type { WayLengths, Ways } from "./placement/run-way.ts";
import { isObject } from "./plain-values.ts";
import { placeDevices, type StatedConductor } from "./protective-devices.ts";
import { type CircuitDefaults, circuitFrom, type ReadBuild, reliesOnMissed } from "./read-circuit.ts";
import { defaultVoltage, dropLimitOf, lengthOfOne, runOf } from "./read-run.ts";
import { builtInScenarios, readScenario, type ScenarioContext } from "./read-scenarios.ts";
import type { PlanRecord } from "./record.ts";
import type { CableRun, CircuitRun, InvalidValue, Refusal } from "./run.ts";
import { keptIfEqual } from "./same-plain-data.ts";
import { shareDropLimits } from "./shared-drop-limits.ts";
import { inEveryPosition, type StatedScenario } from "./switch-positions.ts";
import { isSameWiring, wiringOf } from "./wiring.ts";
import { withFamilyOfPanel, withTerminals } from "./with-terminals.ts";

/**
 * Makes one network from the parts, cables and scenarios of a plan, and the circuits that start at a terminal. All errors are
 * reported together. One refused value leaves the network unread, because it could make any current in it wrong, with two
 * exceptions: a value that serves only lists, the balance or places, and one of a circuit that ends at its own load. The network is read without
 * such a circuit. Parts of an unread network can be judged all the same: `network-remains.ts`.
 */
export function readNetwork(
  records: readonly PlanRecord[],
  build: ReadBuild,
  {
    ways = new Map(),
    leftOut = new Set(),
    found = readNetworkRecords(records, leftOut),
  }: { readonly ways?: Ways; readonly leftOut?: ReadonlySet<number>; readonly found?: NetworkRecords } = {},
): ReadNetwork {
  if (!records.some(belongsToNetwork))
    return {
      network: undefined,
      unread: false,
      circuits: new Map(),
      withoutCircuits: new Map(),
      invalid: [],
    };
  const invalid: InvalidValue[] = [...found.invalid];
  const surroundings = surroundingsOf(found, build.values);
  const circuits = makeCircuits(found, { build, ways }, surroundings, invalid);
  // An invalid value of the build may be a default of any record in the network.
  const withoutCircuits = unusableCircuits(found, circuits, invalid);
  const unread = { network: undefined, unread: true, circuits, withoutCircuits, invalid };
  if (build.missed.size > 0) return unread;
  const inPart: ReadNetwork = { draft: { found, surroundings }, ...unread };
  if (invalid.some((refusal) => stopsNetwork(refusal) && !isOfCircuit(refusal, found))) return inPart;
  if (withoutCircuits.size > 0) {
    const rest = readNetwork(records, build, {
      ways,
      leftOut: new Set([...leftOut, ...withoutCircuits.keys()]),
    });
    const ofCircuits = invalid.filter(({ record }) => withoutCircuits.has(record));
    const all = [...ofCircuits, ...rest.invalid];
    return rest.network
      ? { ...rest, circuits: new Map([...circuits, ...rest.circuits]), withoutCircuits, invalid: all }
      : { ...inPart, invalid: all };
  }
  const parts = Array.from(found.parts, (draft): Part => {
    if (draft.word === "circuit") return makeLoadOfCircuit(draft, circuits.get(draft.record)!.circuit!);
    const part = makePart(draft, surroundings);
    const { voltagesTooHigh } = descriptorOfWord(draft.word);
    const tooHigh = voltagesTooHigh?.(draft.values, nominalVoltageOf(draft, surroundings)) ?? [];
    for (const refusal of [...tooHigh, ...voltageInString(draft, surroundings)])
      invalid.push({ record: draft.record, name: draft.name, ...refusal });
    return withFamilyOfPanel(part, found);
  });
  const scenarios = makeScenarios(found, surroundings, parts, leftOut, invalid);
  if (invalid.some((refusal) => stopsNetwork(refusal) && !isOfCircuit(refusal, found))) return inPart;
  const { terminals } = found;
  const limited = withSharedDropLimits(found, circuits, parts);
  const stated = stateConductors(found, limited.circuits, { surroundings, ways });
  const { conductors, devices } = placeDevices(stated, limited.parts);
  const { parts: all } = limited;
  const inEvery = inEveryPosition({ terminals, parts: all, conductors }, scenarios);
  return {
    network: { terminals, parts: all, conductors, devices, scenarios: inEvery },
    unread: false,
    circuits: limited.circuits,
    withoutCircuits,
    invalid,
  };
}

/**
 * A battery in series with others states its voltage, unless the build is one of 12 V: a greater voltage of the build may be meant as that
 * of the battery, or as that of the string.
 */
function voltageInString(draft: PartDraft, { nominal }: PartContext): readonly Refusal[] {
  if (!descriptorOfWord(draft.word).formsStrings || ("nominalV" in draft.values && draft.values.nominalV))
    return [];
  const [positive, negative] = [draft.terminals?.get("positive"), draft.terminals?.get("negative")];
  if (positive === undefined || negative === undefined) return [];
  const ownV = nominal.between(positive, negative);
  const stringV = nominal.ofBank(positive);
  if (ownV === undefined || stringV === undefined || stringV <= ownV || ownV <= usualBatteryV) return [];
  return [
    {
      path: [],
      given: undefined,
      wrong: "nominalV is missing, and the battery is in series with others",
      allowed: "its own nominal voltage, such as 12",
    },
  ];
}

/** Most batteries that are wired in series are of 12 V, V. Common practice, no source. */
const usualBatteryV = 12;

/** The same object for the same wiring and build: an edit of loads leaves them as they were. */
function surroundingsOf(found: NetworkRecords, build: BuildValues): PartContext {
  const wiring = wiringOf(found, build);
  const { mountedOn } = found;
  const before = surroundedBefore.get(build);
  if (before && isSameWiring(before.wiring, wiring) && isSameMap(before.context.mountedOn, mountedOn))
    return before.context;
  const context = { build, nominal: nominalVoltages(wiring), lowest: lowestVoltages(wiring), mountedOn };
  surroundedBefore.set(build, { wiring, context });
  return context;
}

const surroundedBefore = new WeakMap<
  BuildValues,
  { readonly wiring: Wiring; readonly context: PartContext }
>();

function isSameMap(one: ReadonlyMap<number, number>, other: ReadonlyMap<number, number>): boolean {
  return one.size === other.size && [...one].every(([key, value]) => other.get(key) === value);
}

function withSharedDropLimits(
  found: NetworkRecords,
  circuits: ReadNetwork["circuits"],
  parts: readonly Part[],
): { readonly circuits: ReadNetwork["circuits"]; readonly parts: readonly Part[] } {
  const endings = found.circuits.flatMap(({ record, values, ends }) => {
    const circuit = circuits.get(record)?.circuit;
    const end = found.parts[ends?.to?.part ?? -1];
    if (!circuit || !end || end.word === "circuit") return [];
    const partStates = "dropLimitPercent" in end.values || "critical" in end.values;
    return [{ circuit, values, part: end.index, partStates }];
  });
  if (endings.length === 0) return { circuits, parts };
  const shared = shareDropLimits(endings, parts);
  const changed = [...circuits].map(
    ([record, { name, circuit }]) =>
      [record, { name, circuit: shared.circuits.get(record) ?? circuit }] as const,
  );
  return { circuits: new Map(changed), parts: shared.parts };
}

export interface ReadNetwork {
  readonly network: Network | undefined;
  /** The plan has a network, and a value of it or of the build was refused. */
  readonly unread: boolean;
  /** Present if it is unread, and a value of the build is not the reason. */
  readonly draft?: { readonly found: NetworkRecords; readonly surroundings: PartContext };
  /** By record: the circuits of the network; undefined for one that is not valid by itself either. */
  readonly circuits: ReadonlyMap<number, { readonly name: string; readonly circuit: CircuitRun | undefined }>;
  /** By record: circuits with a load of their own and a refused value, without which the rest can be judged. */
  readonly withoutCircuits: ReadonlyMap<number, CircuitLeftOut>;
  readonly invalid: readonly InvalidValue[];
}

/** A circuit without which the network is judged. */
export interface CircuitLeftOut {
  readonly record: number;
  readonly name: string;
  /** Records of the parts where it begins and returns; undefined if that is unknown. */
  readonly startsAt: readonly number[] | undefined;
}

/** A value that serves only lists, the balance or places makes no current wrong that the plan states enough for. */
export function stopsNetwork({ serves }: InvalidValue): boolean {
  return serves === undefined;
}

/** A circuit that ends at its own load feeds no other part: the network is complete without it, except for its current. */
function isOfCircuit({ record }: InvalidValue, { records }: NetworkRecords): boolean {
  const { [record]: at } = records;
  return at?.word === "circuit" && isLeaf(at);
}

function isLeaf({ input }: PlanRecord): boolean {
  return isObject(input) && input.to === undefined;
}

/** The circuits with a load of their own that have no figures, or that contradict the network. */
function unusableCircuits(
  { circuits: found, records, parts, terminals }: NetworkRecords,
  circuits: ReadNetwork["circuits"],
  invalid: readonly InvalidValue[],
): ReadNetwork["withoutCircuits"] {
  if (!invalid.some(stopsNetwork)) return new Map();
  const recordAt = (terminal: number) => parts[terminals[terminal]!.part]!.record;
  return new Map(
    found.flatMap(({ record, name, ends, sound }): [number, CircuitLeftOut][] => {
      const contradicts = sound && invalid.some((one) => one.record === record && one.path[0] === "voltage");
      if (!isLeaf(records[record]!) || (circuits.get(record)?.circuit && !contradicts)) return [];
      const startsAt = ends && [recordAt(ends.from), recordAt(ends.returnTo)];
      return [[record, { record, name, startsAt }]];
    }),
  );
}

function makeCircuits(
  plan: NetworkRecords,
  { build, ways }: { readonly build: ReadBuild; readonly ways: Ways },
  { nominal, lowest }: { readonly nominal: NominalVoltages; readonly lowest: LowestVoltages },
  invalid: InvalidValue[],
): ReadNetwork["circuits"] {
  const settingsAt = settingsByVoltage(build.values);
  return new Map(
    plan.circuits.map((found) => {
      const { record, name, values, sound, ends } = found;
      if (!sound || reliesOnMissed(values, build.missed)) return [record, { name, circuit: undefined }];
      const voltage = ends && nominal.between(ends.from, ends.returnTo);
      const lowestV = ends && lowest.between(ends.from, ends.returnTo);
      const { circuit, contradiction } = circuitFrom(found, settingsAt(voltage, lowestV), ways.get(record));
      const otherVoltage = voltageOfAnotherSystem(values.voltage, voltage);
      for (const wrong of [contradiction, otherVoltage]) if (wrong) invalid.push({ record, name, ...wrong });
      return [record, { name, circuit: circuit && withTerminals(circuit, terminalsOf(found), plan) }];
    }),
  );
}

/** A circuit states the voltage of the system that it is in, if any: 12 or 12.8 V for one of 12.8 V, never 24 V. */
function voltageOfAnotherSystem(
  stated: number | undefined,
  systemV: number | undefined,
): Refusal | undefined {
  if (stated === undefined || systemV === undefined) return undefined;
  const ratio = stated / systemV;
  if (ratio > 1 - labelSpread && ratio < 1 + labelSpread) return undefined;
  return {
    path: ["voltage"],
    given: String(stated),
    wrong: "is not the nominal voltage of the batteries that it is connected to",
    allowed: `${systemV} V, or none: it is taken from the network`,
  };
}

/** Labels of one system: 12 and 12.8 V, 48 and 51.2 V. Our choice, wider than both and far below the step from 36 to 48 V. */
const labelSpread = 0.12;

/** Where the conductors of a circuit end, except at a load that it states itself. */
function terminalsOf({ ends }: NetworkRecords["circuits"][number]): readonly number[] {
  return ends ? [ends.from, ends.returnTo, ...(ends.to ? [ends.to.positive, ends.to.negative] : [])] : [];
}

/** The build's settings for the voltages at a place: the same object for the same voltages. */
function settingsByVoltage(
  values: BuildValues,
): (voltage: number | undefined, lowestV: number | undefined) => CircuitDefaults {
  const made = settingsOf.get(values) ?? new Map<string, CircuitDefaults>();
  settingsOf.set(values, made);
  return (voltage = values.voltage, lowestV) => {
    const key = `${voltage} ${lowestV}`;
    const settings = made.get(key) ?? {
      ...values,
      ...(voltage !== undefined && { voltage }),
      ...(lowestV !== undefined && { lowestV }),
    };
    made.set(key, settings);
    return settings;
  };
}

const settingsOf = new WeakMap<BuildValues, Map<string, CircuitDefaults>>();

/** @param broken Records that state no conductor, because a value of theirs was refused. */
export function stateConductors(
  { circuits, cables, parts, terminals }: NetworkRecords,
  runs: ReadNetwork["circuits"],
  { surroundings, ways }: { readonly surroundings: PartContext; readonly ways: Ways },
  broken: ReadonlySet<number> = new Set(),
): readonly StatedConductor[] {
  const isBattery = (terminal: number) => parts[terminals[terminal]!.part]?.word === "battery";
  const pairs = circuits.flatMap(({ record, ends, load }): readonly StatedConductor[] => {
    const run = runs.get(record)?.circuit;
    if (!run || !ends) return [];
    const { from, returnTo, to } = ends;
    const positive = to?.positive ?? load!.positive;
    const negative = to?.negative ?? load!.negative;
    const pair = pairsBefore.get(run);
    if (pair && isBetween(pair[0], from, positive) && isBetween(pair[1], negative, returnTo)) return pair;
    const { name, protection: near, protectionFarEnd: far, positiveM, negativeM } = run;
    const made = [
      { record, name, role: "positive", from, to: positive, lengthM: positiveM, run, near, far },
      {
        record,
        name,
        role: "return",
        from: negative,
        to: returnTo,
        lengthM: negativeM,
        run,
        near: null,
        far: null,
      },
    ] as const;
    pairsBefore.set(run, made);
    return made;
  });
  const single = cables.flatMap((cable): StatedConductor[] => {
    if (!cable.ends || broken.has(cable.record)) return [];
    const { from, to } = cable.ends;
    const own = keptRun(
      cable.values,
      runOfCable(cable, surroundings, { isBattery, way: ways.get(cable.record) }),
    );
    const run = withTerminals(own, [from, to], { terminals, parts });
    const before = cablesBefore.get(run);
    if (before && isBetween(before, from, to)) return [before];
    const { record, name, positiveM: lengthM, protection: near, protectionFarEnd: far } = run;
    const made = { record, name, role: "cable", from, to, lengthM, run, near, far } as const;
    cablesBefore.set(run, made);
    return [made];
  });
  return [...pairs, ...single].sort((one, other) => one.record - other.record);
}

/** The conductors of a run that an edit elsewhere leaves as it was stay the same objects. */
const pairsBefore = new WeakMap<CircuitRun, readonly [StatedConductor, StatedConductor]>();
const cablesBefore = new WeakMap<CableRun, StatedConductor>();

function isBetween(conductor: StatedConductor, from: number, to: number): boolean {
  return conductor.from === from && conductor.to === to;
}

const keptRun = keptIfEqual<FoundCable["values"], CableRun>();

/** A cable as every rule about one run reads it. The solver calculates its current; drop is judged for the whole path. */
function runOfCable(
  { record, name, values, ends }: FoundCable,
  { build, nominal }: PartContext,
  {
    isBattery,
    way,
  }: { readonly isBattery: (terminal: number) => boolean; readonly way: WayLengths | undefined },
): CableRun {
  const systemV = nominal.ofIsland(ends!.from) ?? build.voltage ?? defaultVoltage;
  const run = runOf(values, build, way);
  const { critical: _, ...dropLimit } = dropLimitOf({}, build);
  return {
    record,
    word: "cable",
    inNetwork: true,
    name,
    loadA: 0,
    systemV,
    ...lengthOfOne(values, way),
    ...run,
    // Its own wires lie together, less the one considered.
    bundledWith: values.bundledWith ?? run.conductor.parallel - 1,
    bundledWithStated: values.bundledWith !== undefined,
    ...dropLimit,
    fedFromBothEnds: false,
    fromBattery: isBattery(ends!.from),
    toBattery: isBattery(ends!.to),
    partlyInvalid: false,
  };
}

function makeScenarios(
  { scenarios, byRecord, circuits, records }: NetworkRecords,
  { build, nominal }: PartContext,
  parts: readonly Part[],
  leftOut: ReadonlySet<number>,
  invalid: InvalidValue[],
): readonly StatedScenario[] {
  const endOf = new Map(circuits.map(({ record, ends, load }) => [record, ends?.to?.part ?? load?.index]));
  const runsAlways = new Set<number>();
  for (const draft of byRecord.values())
    if (draft.word === "dcDcCharger" && draft.values.runs === "always") runsAlways.add(draft.index);
  const stage: ScenarioContext = {
    parts,
    runsAlways,
    meant({ kind, id }) {
      if (leftOut.has(id)) return undefined;
      if (records[id]?.word !== kind) return `is ${withArticle(kind)} that is not in this plan`;
      const part = byRecord.get(id)?.index ?? endOf.get(id);
      if (part !== undefined) return part;
      return kind === "circuit"
        ? "is a circuit without from, outside of the network"
        : `is ${withArticle(kind)}`;
    },
    systemV: build.voltage ?? defaultVoltage,
    bankNominalV: ({ terminals, systemV }) => nominal.ofBank(terminals.positive) ?? systemV,
  };
  const stated = scenarios.map(({ record, name, values }) => {
    const read = readScenario(values, { record, name }, stage);
    for (const refusal of read.invalid) invalid.push({ record, name, ...refusal });
    return read;
  });
  const given = stated.length > 0 ? stated : builtInScenarios(stage);
  return [...given, ...motorStarts(parts, given)];
}
