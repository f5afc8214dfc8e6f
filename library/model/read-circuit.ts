import { criticalDropLimit, ordinaryDropLimit } from "../standards/drop-limits.ts";
import type { BuildValues } from "./build-properties.ts";
import type { Circuit, Conductor, LengthProperty, Protection } from "./circuit.ts";
import { type CircuitValues, circuitProperties, greatestLoadA } from "./circuit-properties.ts";
import { displayName } from "./display-name.ts";
import { grouped } from "./property.ts";
import type { WrittenProtection } from "./protection-properties.ts";
import { anything, type Refusal, readValues } from "./read-values.ts";
import type { PlanRecord } from "./record.ts";

/** Reads one call of `circuit`, with the defaults of its build. */
export function readCircuit(record: PlanRecord, index: number, build: ReadBuild): ReadCircuit {
  const { values, invalid, missed } = readValues(record.input, circuitProperties);
  const name = displayName(values.name ?? "") || displayName(record.fallbackName);
  if (missed.size > 0 || reliesOnMissed(values, build.missed)) return { name, invalid };
  const contradiction = contradictionIn(values, build.values);
  if (contradiction) return { name, invalid: [...invalid, contradiction] };
  return {
    name,
    invalid,
    circuit: circuitOf(values, build.values, { index, name, partlyInvalid: invalid.length > 0 }),
  };
}

export interface ReadCircuit {
  readonly name: string;
  readonly invalid: readonly Refusal[];
  /** Absent where what is wrong could make a figure wrong. */
  readonly circuit?: Circuit;
}

/** The defaults of a build, and those of them that were refused. */
export interface ReadBuild {
  readonly values: BuildValues;
  readonly missed: ReadonlySet<string>;
}

/** Whether the circuit would have taken from the build what the build does not soundly say. */
function reliesOnMissed(values: CircuitValues, missed: ReadonlySet<string>): boolean {
  if (missed.size === 0) return false;
  const limitLeftOut = values.dropLimitPercent === undefined;
  return (
    missed.has(anything) ||
    (missed.has("criticalDropPercent") && limitLeftOut && values.critical === true) ||
    (missed.has("dropPercent") && limitLeftOut && values.critical !== true) ||
    sharedDefaults.some((name) => missed.has(name) && values[name] === undefined)
  );
}

/** Properties that mean the same in `build` and in `circuit`. */
const sharedDefaults = ["voltage", "ambientC", "insulationC", "engineSpace", "continuous"] as const;

/** Each value is allowed by itself, but not beside the others. */
function contradictionIn(values: CircuitValues, build: BuildValues): Refusal | undefined {
  const systemV = values.voltage ?? build.voltage ?? defaultVoltage;
  const { minimumV, loadW } = values;
  // It would make the current of a load in watts too small, and no drop could ever be small enough.
  if (minimumV !== undefined && minimumV > systemV)
    return {
      path: ["minimumV"],
      given: String(minimumV),
      wrong: `is above the nominal voltage, ${grouped(systemV)} V`,
      allowed: `a voltage from 1 to ${grouped(systemV)} V`,
    };
  const loadAtV = minimumV ?? systemV;
  if (loadW !== undefined && loadW / loadAtV > greatestLoadA)
    return {
      path: ["loadW"],
      given: String(loadW),
      wrong: `is too large: more than ${grouped(greatestLoadA)} A`,
      allowed: `a power above 0 and up to ${grouped(greatestLoadA * loadAtV)} W at ${grouped(loadAtV)} V`,
    };
  return undefined;
}

/** What a plan that says nothing of it means. The manual in `library/plan` promises the same. */
const defaultVoltage = 12;
const defaultAmbientC = 30;
const defaultInsulationC = 75;

interface Identity {
  readonly index: number;
  readonly name: string;
  readonly partlyInvalid: boolean;
}

function circuitOf(values: CircuitValues, build: BuildValues, identity: Identity): Circuit {
  const systemV = values.voltage ?? build.voltage ?? defaultVoltage;
  const loadAtV = values.minimumV ?? systemV;
  const parallel = values.parallel ?? 1;
  const critical = values.critical ?? false;
  const insulationC = values.insulationC ?? build.insulationC;
  const ambientC = values.ambientC ?? build.ambientC;
  const dropLimitPercent =
    values.dropLimitPercent ?? (critical ? build.criticalDropPercent : build.dropPercent);
  const defaultLimit = critical ? criticalDropLimit : ordinaryDropLimit;
  return {
    record: identity.index,
    word: "circuit",
    wired: false,
    statesLoad: true,
    name: identity.name,
    loadA: values.load ?? values.loadW! / loadAtV,
    ...(values.loadW !== undefined && { loadW: values.loadW }),
    loadAtV,
    systemV,
    ...lengthsOf(values),
    conductor: conductorOf(values, parallel),
    insulationC: insulationC ?? defaultInsulationC,
    insulationStated: insulationC !== undefined,
    engineSpace: values.engineSpace ?? build.engineSpace ?? false,
    ambientC: ambientC ?? defaultAmbientC,
    ambientStated: ambientC !== undefined,
    // Its own wires lie together: all of both polarities, less the one that is looked at.
    bundledWith: values.bundledWith ?? 2 * parallel - 1,
    bundledWithStated: values.bundledWith !== undefined,
    sheathed: values.sheathed ?? false,
    continuous: values.continuous ?? build.continuous ?? true,
    critical,
    dropLimitPercent: dropLimitPercent ?? defaultLimit.percentOfNominal,
    dropLimitStated: dropLimitPercent !== undefined,
    ...(values.minimumV !== undefined && { minimumV: values.minimumV }),
    fedFromBothEnds: values.fedFromBothEnds ?? false,
    fromBattery: values.fromBattery ?? false,
    protection: protectionOf(values.protect),
    protectionFarEnd: protectionOf(values.protectFarEnd),
    accept: acceptedIn(values.accept),
    partlyInvalid: identity.partlyInvalid,
  };
}

function conductorOf({ gauge, mm2 }: CircuitValues, parallel: number): Conductor {
  return gauge !== undefined
    ? { parallel, system: "awg", awg: gauge }
    : { parallel, system: "metric", mm2: mm2! };
}

/** International foot and inch, exact since 1959. */
const metresPerFoot = 0.3048;
const metresPerInch = 0.0254;

type Lengths = Pick<Circuit, "lengthsGiven" | "positiveM" | "negativeM">;

/** The reader of the values has seen to it that exactly one kind of length is there. */
function lengthsOf(values: CircuitValues): Lengths {
  const { oneWayFt, oneWayM, positiveFt, negativeFt, positiveM, negativeM } = values;
  if (oneWayFt !== undefined) return lengths({ oneWayFt }, oneWayFt, oneWayFt, metresPerFoot);
  if (oneWayM !== undefined) return lengths({ oneWayM }, oneWayM, oneWayM, 1);
  if (positiveFt !== undefined)
    return lengths({ positiveFt, negativeFt: negativeFt! }, positiveFt, negativeFt!, metresPerFoot);
  return lengths({ positiveM: positiveM!, negativeM: negativeM! }, positiveM!, negativeM!, 1);
}

function lengths(
  lengthsGiven: Partial<Record<LengthProperty, number>>,
  positive: number,
  negative: number,
  metresPerUnit: number,
): Lengths {
  return { lengthsGiven, positiveM: positive * metresPerUnit, negativeM: negative * metresPerUnit };
}

function protectionOf(written: WrittenProtection | undefined): Protection | null {
  if (written === undefined) return null;
  if (typeof written === "number") return { ratingA: written, writtenAs: "number" };
  const { ratingA, family, distanceIn, distanceMm, interruptingA, ratedV } = written;
  return {
    ratingA: ratingA!,
    writtenAs: "object",
    ...(family !== undefined && { family }),
    ...(distanceIn !== undefined && { distanceM: distanceIn * metresPerInch, distanceGiven: { distanceIn } }),
    ...(distanceMm !== undefined && { distanceM: distanceMm / 1_000, distanceGiven: { distanceMm } }),
    ...(interruptingA !== undefined && { interruptingA }),
    ...(ratedV !== undefined && { ratedV }),
  };
}

const nothingAccepted: Readonly<Record<string, string>> = Object.freeze({});

function acceptedIn(written: CircuitValues["accept"]): Readonly<Record<string, string>> {
  if (written === undefined) return nothingAccepted;
  const reasons = Object.entries(written).filter(
    (entry): entry is [string, string] => entry[1] !== undefined,
  );
  return Object.fromEntries(reasons);
}
