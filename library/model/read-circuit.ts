import { lowestVoltageFor, systemVoltageFor } from "./battery-figures.ts";
import type { BuildValues } from "./build-properties.ts";
import { type CircuitValues, circuitProperties, greatestLoadA } from "./circuit-properties.ts";
import { describeValue } from "./describe-value.ts";
import { displayName } from "./display-name.ts";
import { grouped } from "./grouped.ts";
import { largestConductorOf } from "./largest-conductor.ts";
import { notBelowMinimum } from "./parts/contradiction.ts";
import type { WayLengths } from "./placement/run-way.ts";
import { defaultVoltage, dropLimitOf, lengthsOfPair, runOf, shown } from "./read-run.ts";
import { readValues, unknownProperty } from "./read-values.ts";
import type { PlanRecord } from "./record.ts";
import type { CircuitRun, Refusal } from "./run.ts";
import { isSamePlainData } from "./same-plain-data.ts";

/** Reads one call of `circuit` outside the network, with the defaults of its build. */
export function readCircuit(record: PlanRecord, index: number, build: ReadBuild): ReadCircuit {
  const { values, invalid: refused, unusable } = readValues(record.input, circuitProperties);
  const invalid = [...refused, ...needsNetwork(values)];
  const name = displayName(values.name ?? "") || displayName(record.fallbackName);
  if (unusable.size > 0 || reliesOnMissed(values, build.missed)) return { name, invalid };
  const { circuit, contradiction } = circuitFrom({ values, invalid, name, record: index }, build.values);
  return {
    name,
    invalid: contradiction ? [...invalid, contradiction] : invalid,
    ...(circuit && { circuit }),
  };
}

/** Only a network shows the devices that are fed from one place, the bank that feeds it, and both ends of it. No figure depends on it. */
function needsNetwork({
  purpose,
  use,
  at,
  size,
  through,
  fromStud,
  toStud,
  outsideMm,
}: CircuitValues): readonly Refusal[] {
  return Object.entries({ purpose, use, at, size, through, fromStud, toStud, outsideMm }).flatMap(
    ([property, given]): Refusal[] =>
      given === undefined
        ? []
        : [
            {
              path: [property],
              given: describeValue(given),
              wrong: "cannot be given without from",
              allowed: "the same with from and returnTo, which show the switches, the fuses and the bank",
              serves: "lists",
            },
          ],
  );
}

/** A circuit from values that are each valid, unless they contradict each other. */
export function circuitFrom(
  { values, invalid, name, record }: CircuitDraft,
  build: CircuitDefaults,
  way?: WayLengths,
): { readonly circuit?: CircuitRun; readonly contradiction?: Refusal } {
  const contradiction = contradictionIn(values, build, way);
  if (contradiction) return { contradiction };
  const partlyInvalid = invalid.some(({ serves }) => !serves);
  const before = madeBefore.get(values);
  const isAlike = before?.build === build && isSameWay(before.way, way);
  if (isAlike && isOf(before.circuit, { record, name, partlyInvalid })) return before;
  const made = { build, way, circuit: circuitOf(values, build, { record, name, partlyInvalid, way }) };
  madeBefore.set(values, made);
  return made;
}

/** Values do not change once read, and recur with every keystroke elsewhere in the plan. Their circuit is therefore cached. */
const madeBefore = new WeakMap<
  CircuitValues,
  { readonly build: CircuitDefaults; readonly way: WayLengths | undefined; readonly circuit: CircuitRun }
>();

function isSameWay(one: WayLengths | undefined, other: WayLengths | undefined): boolean {
  return one === other || isSamePlainData(one, other);
}

function isOf(circuit: CircuitRun, { record, name, partlyInvalid }: Identity): boolean {
  return circuit.record === record && circuit.name === name && circuit.partlyInvalid === partlyInvalid;
}

/** The defaults of a build at the place of a circuit. */
export interface CircuitDefaults extends BuildValues {
  /** The lowest voltage in use, as the batteries there end, V. Left out: that of lead-acid. */
  readonly lowestV?: number;
}

export interface CircuitDraft {
  readonly values: CircuitValues;
  /** Refused values besides them, which affect no figure. */
  readonly invalid: readonly Refusal[];
  readonly name: string;
  readonly record: number;
}

export interface ReadCircuit {
  readonly name: string;
  readonly invalid: readonly Refusal[];
  /** Absent if an error could make a figure wrong. */
  readonly circuit?: CircuitRun;
}

/** The defaults of a build, and those of them that were refused. */
export interface ReadBuild {
  readonly values: BuildValues;
  readonly missed: ReadonlySet<string>;
}

/** Whether the circuit depends on a default that the build does not validly state. */
export function reliesOnMissed(values: CircuitValues, missed: ReadonlySet<string>): boolean {
  if (missed.size === 0) return false;
  const limitLeftOut = values.dropLimitPercent === undefined;
  return (
    missed.has(unknownProperty) ||
    (missed.has("criticalDropPercent") && limitLeftOut && values.critical === true) ||
    (missed.has("dropPercent") && limitLeftOut && values.critical !== true) ||
    sharedDefaults.some((name) => missed.has(name) && values[name] === undefined)
  );
}

/** Properties that mean the same in `build` and in `circuit`. */
const sharedDefaults = ["voltage", "ambientC", "insulationC", "engineSpace", "continuous"] as const;

/** Each value is allowed by itself, but not together with the others. */
function contradictionIn(
  values: CircuitValues,
  build: BuildValues,
  way: WayLengths | undefined,
): Refusal | undefined {
  const systemV = systemVoltageAt(values, build);
  const { loadW } = values;
  const minimumV = ownMinimumV(values);
  // It would make the current of a load in watts too small, and no drop could ever be small enough.
  if (minimumV !== undefined && minimumV > systemV)
    return {
      path: ["minimumV"],
      given: String(minimumV),
      wrong: `is above the nominal voltage, ${grouped(systemV)} V`,
      allowed: `a voltage from 1 to ${grouped(systemV)} V`,
    };
  const [belowMinimum] = notBelowMinimum("maximumV", values.maximumV, values.minimumV);
  if (belowMinimum) return belowMinimum;
  const loadAtV = minimumV ?? systemV;
  if (loadW !== undefined && loadW / loadAtV > greatestLoadA)
    return {
      path: ["loadW"],
      given: String(loadW),
      wrong: `is too large: more than ${grouped(greatestLoadA)} A`,
      allowed: `a power above 0 and up to ${grouped(greatestLoadA * loadAtV)} W at ${grouped(loadAtV)} V`,
    };
  return contradictionInCable(values, way);
}

/** The two conductors of one cable are equally long, and each has the other beside it. */
function contradictionInCable(values: CircuitValues, way: WayLengths | undefined): Refusal | undefined {
  if (typeof values.sheathed !== "string") return undefined;
  const { positiveM, negativeM } = lengthsOfPair(values, way);
  if (positiveM !== negativeM)
    return {
      path: ["sheathed"],
      given: describeValue(values.sheathed),
      wrong: "cannot be one cable, because its conductors have two lengths",
      allowed: "true or false, or one length for both conductors",
    };
  if (values.bundledWith === 0)
    return {
      path: ["bundledWith"],
      given: "0",
      wrong: "leaves out the other conductor of its own cable",
      allowed: "a whole number from 1 to 200",
    };
  return undefined;
}

interface Identity {
  readonly record: number;
  readonly name: string;
  readonly partlyInvalid: boolean;
}

interface Making extends Identity {
  readonly way: WayLengths | undefined;
}

function systemVoltageAt({ voltage }: CircuitValues, build: BuildValues): number {
  return voltage === undefined ? (build.voltage ?? defaultVoltage) : systemVoltageFor(voltage);
}

function circuitOf(values: CircuitValues, build: CircuitDefaults, identity: Making): CircuitRun {
  const systemV = systemVoltageAt(values, build);
  const { loadW } = values;
  const minimumV = ownMinimumV(values);
  const loadAtV = minimumV ?? systemV;
  const lowestV = minimumV ?? build.lowestV ?? lowestVoltageFor(systemV);
  const run = runOf(values, build, identity.way);
  const largest =
    values.to === undefined ? largestConductorOf(values.largestGauge, values.largestMm2) : undefined;
  return {
    record: identity.record,
    word: "circuit",
    inNetwork: values.from !== undefined,
    statesLoad: values.to === undefined,
    name: identity.name,
    loadA: values.load ?? (loadW ?? 0) / loadAtV,
    ...(loadW !== undefined && { loadW }),
    loadAtV,
    lowestV,
    ...(loadW !== undefined && lowestV < loadAtV && { lowVoltageA: loadW / lowestV }),
    ...(loadW !== undefined && minimumV === undefined && { estimate: { lowestV } }),
    ...(loadW !== undefined && minimumV === undefined && { loadEstimate: { lowestV: loadAtV } }),
    systemV,
    ...lengthsOfPair(values, identity.way),
    ...run,
    // Its own wires lie together: all of both polarities, less the one considered.
    bundledWith: values.bundledWith ?? 2 * run.conductor.parallel - 1,
    bundledWithStated: values.bundledWith !== undefined,
    ...dropLimitOf(values, build),
    ...(minimumV !== undefined && { minimumV }),
    ...(values.maximumV !== undefined && values.to === undefined && { maximumV: values.maximumV }),
    ...(values.purpose !== undefined && values.to === undefined && { purpose: values.purpose }),
    ...(values.use !== undefined && values.to === undefined && { use: values.use }),
    ...startAndEnd(values),
    toBattery: values.to?.kind === "battery",
    ...shown("returnColour", values.returnColour),
    ...(typeof values.sheathed === "string" && { duplex: values.sheathed }),
    // If it ends at a part, the part states it.
    ...(values.termination !== undefined && values.to === undefined && { termination: values.termination }),
    ...(values.maxFuseA !== undefined && values.to === undefined && { maxFuseA: values.maxFuseA }),
    ...(largest && values.to === undefined && { terminalSizes: [...(run.terminalSizes ?? []), { largest }] }),
    partlyInvalid: identity.partlyInvalid,
  };
}

/** If it ends at a part, the part states it. */
function ownMinimumV({ minimumV, to }: CircuitValues): number | undefined {
  return to === undefined ? minimumV : undefined;
}

/** In a network, the network shows both. */
function startAndEnd({ from, fromBattery = false, fedFromBothEnds = false }: CircuitValues) {
  return from
    ? { fromBattery: from.of === "battery", fedFromBothEnds: false }
    : { fromBattery, fedFromBothEnds };
}
