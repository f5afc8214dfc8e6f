import { lowestVoltageFor } from "./battery-figures.ts";
import type { BuildValues } from "./build-properties.ts";
import type { LoadOfCircuit, PartDraft } from "./draft-part.ts";
import type { LowestVoltages, NominalVoltages } from "./nominal-voltage.ts";
import { descriptorOfWord, type Part } from "./parts/index.ts";
import type { LoadPart } from "./parts/load.ts";
import type { DefaultContext } from "./parts/part-property.ts";
import { acceptedIn, defaultVoltage } from "./read-run.ts";
import type { CircuitRun } from "./run.ts";
import { keptIfEqual } from "./same-plain-data.ts";

/** A part with every default filled in, as its descriptor states them. Its draft must be valid. Equal ones are the same object. */
export function makePart(draft: PartDraft, context: PartContext): Part {
  const before = madeBefore.get(draft);
  if (before?.context === context) return before.part;
  const part = keptPart(draft, partOf(draft, context));
  madeBefore.set(draft, { context, part });
  return part;
}

const madeBefore = new WeakMap<PartDraft, { readonly context: PartContext; readonly part: Part }>();
const keptPart = keptIfEqual<PartDraft, Part>();

function partOf(draft: PartDraft, context: PartContext): Part {
  const { properties, kind, figures } = descriptorOfWord(draft.word);
  const stated: Readonly<Record<string, unknown>> = draft.values;
  const { source, price, accept } = draft.values;
  const at = (terminal: string) => draft.terminals!.get(terminal)!;
  const buildV = context.build.voltage ?? defaultVoltage;
  const surroundings: DefaultContext = {
    build: context.build,
    buildV,
    nominalV: nominalVoltageOf(draft, context),
    lowestV: lowestVoltageAt(draft, context),
    islandV: (terminal) => context.nominal.ofIsland(at(terminal)) ?? buildV,
    amount: (name) => stated[name] as number,
    stated: (name) => stated[name],
  };
  const given = { ...stated };
  const taken: string[] = [];
  const kept: Record<string, unknown> = {};
  for (const [name, property] of Object.entries(properties)) {
    if (given[name] === undefined && property.taken) {
      given[name] = property.taken(surroundings);
      taken.push(name);
    }
    if (given[name] !== undefined && !property.presence.endsWith("input")) kept[name] = given[name];
  }
  return {
    kind,
    index: draft.index,
    record: draft.record,
    name: draft.name,
    terminals: Object.fromEntries(draft.terminals!),
    ...(source !== undefined && { source }),
    ...(price !== undefined && { price }),
    accept: acceptedIn(accept),
    ...kept,
    ...figures(given, { at, source, taken, mountedOn: context.mountedOn.get(draft.record), ...surroundings }),
    ...(taken.length > 0 && { taken }),
  } as unknown as Part;
}

/** The nominal voltage between two terminals of a part, V; that of the build if nothing determines it. */
export function nominalVoltageOf(
  { terminals }: PartDraft,
  { build, nominal }: PartContext,
): DefaultContext["nominalV"] {
  return (positive = "positive", negative = "negative") =>
    nominal.between(terminals!.get(positive)!, terminals!.get(negative)!) ?? build.voltage ?? defaultVoltage;
}

/** The lowest voltage in use between two terminals of a part, V; that of lead-acid if no battery determines it. */
function lowestVoltageAt(draft: PartDraft, context: PartContext): DefaultContext["lowestV"] {
  return (positive = "positive", negative = "negative") =>
    context.lowest.between(draft.terminals!.get(positive)!, draft.terminals!.get(negative)!) ??
    lowestVoltageFor(nominalVoltageOf(draft, context)(positive, negative));
}

export interface PartContext {
  readonly build: BuildValues;
  readonly nominal: NominalVoltages;
  /** The lowest voltages in use, as the batteries end. */
  readonly lowest: LowestVoltages;
  /** By record: the terminal of another part that a device is mounted on. */
  readonly mountedOn: ReadonlyMap<number, number>;
}

/** The load that a circuit states itself. Returns the same object for the same circuit at the same place. */
export function makeLoadOfCircuit(draft: LoadOfCircuit, circuit: CircuitRun): LoadPart {
  const before = loadsMade.get(circuit);
  if (before?.index === draft.index && before.terminals.positive === draft.positive) return before;
  const load = loadOf(draft, circuit);
  loadsMade.set(circuit, load);
  return load;
}

const loadsMade = new WeakMap<CircuitRun, LoadPart>();

function loadOf({ index, positive, negative }: LoadOfCircuit, circuit: CircuitRun): LoadPart {
  const { loadA, loadW, lowestV, minimumV, maximumV, maxFuseA, critical, purpose, use, continuous, systemV } =
    circuit;
  const { dropLimitPercent, dropLimitStated, dropLimitSource } = circuit;
  return {
    kind: "load",
    index,
    record: circuit.record,
    name: circuit.name,
    terminals: { positive, negative },
    accept: circuit.accept,
    draws: loadW === undefined ? { as: "current", currentA: loadA } : { as: "power", powerW: loadW },
    ...(minimumV !== undefined && { minimumV }),
    ...(maximumV !== undefined && { maximumV }),
    ...(maxFuseA !== undefined && { maxFuseA }),
    ...(purpose !== undefined && { purpose }),
    ...(use !== undefined && { use }),
    critical,
    continuous,
    dropLimitPercent,
    dropLimitStated,
    dropLimitSource,
    systemV,
    lowestV,
    statedBy: "circuit",
  };
}
