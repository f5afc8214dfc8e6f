import { criticalDropLimit, ordinaryDropLimit, statedDropLimit } from "../standards/drop-limits.ts";
import type { BuildValues } from "./build-properties.ts";
import type { CableValues } from "./cable-properties.ts";
import type { CircuitValues } from "./circuit-properties.ts";
import { type CoolestTerminal, cooler } from "./coolest-terminal.ts";
import { displayName } from "./display-name.ts";
import { largestConductorOf } from "./largest-conductor.ts";
import { metresPerFoot, metresPerInch } from "./length-limits.ts";
import type { LengthUnit } from "./length-unit.ts";
import type { WayLengths } from "./placement/run-way.ts";
import { behaviourOf, type WrittenProtection } from "./protection-properties.ts";
import type {
  CircuitRun,
  Conductor,
  DropLimit,
  LengthProperty,
  PlaceOfRun,
  Protection,
  Run,
  TerminalSize,
} from "./run.ts";

/** Defaults for values that a plan does not state. The manual in `library/plan` promises the same. */
export const defaultVoltage = 12;
const defaultAmbientC = 30;
const defaultInsulationC = 75;

/** Construction and surroundings of the conductors of a circuit or cable, with the defaults of the build. */
export function runOf(
  values: CircuitValues | CableValues,
  build: BuildValues,
  way?: WayLengths,
): Construction {
  const places = placesOf(values, build, way);
  const insulationC = values.insulationC ?? build.insulationC;
  const ambientC = values.ambientC ?? build.ambientC;
  const continuous = values.continuous ?? build.continuous;
  const [protection, protectionFarEnd] = [protectionOf(values.protect), protectionOf(values.protectFarEnd)];
  const coolestTerminal = cooler(ratingOf(protection), ratingOf(protectionFarEnd));
  const terminalSizes = [
    ...terminalSizeOf(values.protect, ""),
    ...terminalSizeOf(values.protectFarEnd, " at the far end"),
  ];
  return {
    nameStated: displayName(values.name ?? "") !== "",
    conductor: conductorOf(values),
    insulationC: insulationC ?? defaultInsulationC,
    insulationStated: insulationC !== undefined,
    engineSpace: values.engineSpace ?? build.engineSpace ?? false,
    ambientC: ambientC ?? defaultAmbientC,
    ambientStated: ambientC !== undefined,
    ...(places && { places }),
    sheathed: (values.sheathed ?? false) !== false,
    continuous: continuous ?? true,
    continuousStated: continuous !== undefined,
    protection,
    protectionFarEnd,
    ...(terminalSizes.length > 0 && { terminalSizes }),
    ...(coolestTerminal && { coolestTerminal }),
    accept: acceptedIn(values.accept),
    ...shown("colour", values.colour),
    ...shown("label", values.label),
  };
}

/** The places of its way, if any of them is unlike the rest of the build; a value that the plan states for the run counts in all of them. */
function placesOf(
  values: CircuitValues | CableValues,
  build: BuildValues,
  way: WayLengths | undefined,
): readonly PlaceOfRun[] | undefined {
  if (!way?.places?.some(({ ambientC, engineSpace }) => ambientC !== undefined || engineSpace !== undefined))
    return undefined;
  return way.places.map(({ name, ...place }) => {
    const ambientC = values.ambientC ?? place.ambientC ?? build.ambientC;
    return {
      name,
      engineSpace: values.engineSpace ?? place.engineSpace ?? build.engineSpace ?? false,
      ambientC: ambientC ?? defaultAmbientC,
      ambientStated: ambientC !== undefined,
    };
  });
}

/** Text of a plan for a cell or a label, if any of it can be shown. */
export function shown<Name extends string>(
  name: Name,
  text: string | undefined,
): { readonly [N in Name]?: string } {
  const harmless = displayName(text ?? "");
  return (harmless ? { [name]: harmless } : {}) as { [N in Name]?: string };
}

type Construction = Pick<
  Run,
  | "nameStated"
  | "conductor"
  | "insulationC"
  | "terminalSizes"
  | "insulationStated"
  | "engineSpace"
  | "ambientC"
  | "ambientStated"
  | "places"
  | "sheathed"
  | "continuous"
  | "continuousStated"
  | "protection"
  | "protectionFarEnd"
  | "coolestTerminal"
  | "accept"
  | "colour"
  | "label"
>;

/** Voltage-drop limit on the way to a load: stated by the load, else by the build, else by the standards. */
export function dropLimitOf(
  { critical, dropLimitPercent }: Pick<CircuitValues, "critical" | "dropLimitPercent">,
  build: BuildValues,
): DropLimit & Pick<CircuitRun, "critical"> {
  const limit = dropLimitPercent ?? (critical ? build.criticalDropPercent : build.dropPercent);
  const usual = critical ? criticalDropLimit : ordinaryDropLimit;
  return {
    critical: critical ?? false,
    dropLimitPercent: limit ?? usual.percentOfNominal,
    dropLimitStated: limit !== undefined,
    dropLimitSource: limit === undefined ? usual.source : statedDropLimit,
  };
}

type Lengths = Pick<Run, "lengthsGiven" | "lengthsFrom" | "lengthUnit" | "positiveM" | "negativeM">;

/** The reader of the values ensures at most one kind of length. */
export function lengthsOfPair(values: CircuitValues, way: WayLengths | undefined): Lengths {
  const { oneWayFt, oneWayM, positiveFt, negativeFt, positiveM, negativeM } = values;
  if (oneWayFt !== undefined) return lengths({ oneWayFt }, oneWayFt, oneWayFt, "ft");
  if (oneWayM !== undefined) return lengths({ oneWayM }, oneWayM, oneWayM, "m");
  if (positiveFt !== undefined)
    return lengths({ positiveFt, negativeFt: negativeFt! }, positiveFt, negativeFt!, "ft");
  if (positiveM !== undefined)
    return lengths({ positiveM, negativeM: negativeM! }, positiveM, negativeM!, "m");
  return lengthsAlong(way);
}

/** One conductor, treated as the positive one, regardless of its polarity. */
export function lengthOfOne({ lengthFt, lengthM }: CableValues, way: WayLengths | undefined): Lengths {
  if (lengthFt !== undefined) return lengths({ lengthFt }, lengthFt, 0, "ft");
  if (lengthM !== undefined) return lengths({ lengthM }, lengthM, 0, "m");
  return lengthsAlong(way && { ...way, negativeM: 0 });
}

function lengthsAlong(way: WayLengths | undefined): Lengths {
  const lengthsGiven = {};
  if (!way)
    return {
      lengthsGiven,
      lengthsFrom: "unknown",
      lengthUnit: "m",
      positiveM: undefined,
      negativeM: undefined,
    };
  const { positiveM, negativeM, unit } = way;
  return { lengthsGiven, lengthsFrom: "way", lengthUnit: unit, positiveM, negativeM };
}

function lengths(
  lengthsGiven: Partial<Record<LengthProperty, number>>,
  positive: number,
  negative: number,
  lengthUnit: LengthUnit,
): Lengths {
  const metresPerUnit = lengthUnit === "ft" ? metresPerFoot : 1;
  return {
    lengthsGiven,
    lengthsFrom: "plan",
    lengthUnit,
    positiveM: positive * metresPerUnit,
    negativeM: negative * metresPerUnit,
  };
}

function conductorOf({ gauge, mm2, parallel = 1 }: CircuitValues | CableValues): Conductor {
  return gauge !== undefined
    ? { parallel, system: "awg", awg: gauge }
    : { parallel, system: "metric", mm2: mm2! };
}

/** The largest conductor that the terminals of a device take, if the plan states it. */
function terminalSizeOf(written: WrittenProtection | undefined, where: string): TerminalSize[] {
  if (written === undefined || typeof written === "number") return [];
  const largest = largestConductorOf(written.largestGauge, written.largestMm2);
  const kind = written.family === "circuit breaker" ? "breaker" : "fuse";
  return largest ? [{ largest, of: `its ${kind}${where}` }] : [];
}

function protectionOf(written: WrittenProtection | undefined): Protection | null {
  if (written === undefined) return null;
  if (typeof written === "number") return { ratingA: written, writtenAs: "number" };
  const { ratingA, family, distanceIn, distanceMm, interruptingA, ratedV } = written;
  const { holderRatedA, terminalC, ambientC, price } = written;
  return {
    ratingA: ratingA!,
    writtenAs: "object",
    ...(family !== undefined && { family }),
    ...(distanceIn !== undefined && { distanceM: distanceIn * metresPerInch, distanceGiven: { distanceIn } }),
    ...(distanceMm !== undefined && { distanceM: distanceMm / 1_000, distanceGiven: { distanceMm } }),
    ...(interruptingA !== undefined && { interruptingA }),
    ...(ratedV !== undefined && { ratedV }),
    ...(holderRatedA !== undefined && { holderRatedA }),
    ...(terminalC !== undefined && { terminalC }),
    ...(ambientC !== undefined && { ambientC }),
    ...behaviourOf(written),
    ...(price !== undefined && { price }),
  };
}

function ratingOf(protection: Protection | null): CoolestTerminal | undefined {
  return protection?.terminalC === undefined ? undefined : { ratedC: protection.terminalC };
}

const nothingAccepted: Readonly<Record<string, string>> = Object.freeze({});

export function acceptedIn(written: CircuitValues["accept"]): Readonly<Record<string, string>> {
  if (written === undefined) return nothingAccepted;
  const reasons = Object.entries(written).filter(
    (entry): entry is [string, string] => entry[1] !== undefined,
  );
  return Object.fromEntries(reasons);
}
