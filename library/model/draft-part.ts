import type { Termination } from "../plan/termination.ts";
import type { BatteryValues } from "./battery-properties.ts";
import type { AlternatorValues, DcDcChargerValues, ShoreChargerValues } from "./charging-properties.ts";
import type { InverterValues, LoadValues, MotorValues } from "./consumer-properties.ts";
import { displayName } from "./display-name.ts";
import type {
  BusBarValues,
  ChassisValues,
  DisconnectValues,
  FusePanelValues,
  OtherPartValues,
  ShuntValues,
} from "./distribution-properties.ts";
import type { NetworkTerminal, Side } from "./network.ts";
import { contradictionsIn } from "./part-contradictions.ts";
import { type Refusal, readValues } from "./read-values.ts";
import type { PlanRecord } from "./record.ts";
import type { SolarArrayValues, SolarControllerValues } from "./solar-properties.ts";
import { type PartWord, terminalsOf } from "./terminals.ts";
import { wordProperties } from "./word-properties.ts";

/** A part as its record states it, with its place in the network. Its relation to other parts is not resolved yet. */
export type PartDraft = { readonly [W in PartWord]: DraftOf<W> }[PartWord];

/** The load that a circuit states itself, at the end of its two conductors. */
export interface LoadOfCircuit {
  readonly word: "circuit";
  readonly index: number;
  readonly record: number;
  readonly name: string;
  /** Indices in the network's terminals. */
  readonly positive: number;
  readonly negative: number;
}

interface DraftOf<W extends PartWord> extends Place {
  readonly word: W;
  readonly values: PartValues[W];
}

interface Place {
  /** Index of the part. */
  readonly index: number;
  /** Index of the record. */
  readonly record: number;
  readonly name: string;
  /** Name to index in the network's terminals; undefined if its terminals are unknown. */
  readonly terminals: ReadonlyMap<string, number> | undefined;
}

interface PartValues {
  readonly battery: BatteryValues;
  readonly busBar: BusBarValues;
  readonly fusePanel: FusePanelValues;
  readonly disconnect: DisconnectValues;
  readonly shunt: ShuntValues;
  readonly inverter: InverterValues;
  readonly dcDcCharger: DcDcChargerValues;
  readonly alternator: AlternatorValues;
  readonly shoreCharger: ShoreChargerValues;
  readonly solarArray: SolarArrayValues;
  readonly solarController: SolarControllerValues;
  readonly chassis: ChassisValues;
  readonly load: LoadValues;
  readonly motor: MotorValues;
  readonly part: OtherPartValues;
}

/** Reads one part. Appends its terminals to `all`. */
export function draftPart(
  record: PlanRecord & { readonly word: PartWord },
  place: { readonly record: number; readonly index: number },
  all: NetworkTerminal[],
): { readonly draft: PartDraft; readonly invalid: readonly Refusal[] } {
  const { values, invalid, unusable } = readValues(record.input, wordProperties[record.word]);
  const { word } = record;
  const name = displayName((values as { name?: string }).name ?? "") || displayName(record.fallbackName);
  const sides = sidesOf(word, values);
  const terminals =
    sides && addTerminals(sides, { part: place.index, fastening: fasteningIn(word, values) }, all);
  const draft = { ...place, word, name, values, terminals } as PartDraft;
  const sound = unusable.size === 0;
  return { draft, invalid: sound ? [...invalid, ...contradictionsIn(draft)] : invalid };
}

export function draftLoadOfCircuit(
  { record, index, name }: Pick<LoadOfCircuit, "record" | "index" | "name">,
  termination: Termination | undefined,
  all: NetworkTerminal[],
): LoadOfCircuit {
  const positive = all.length;
  const fastening = fasteningOf(termination, undefined);
  all.push(
    { part: index, name: "positive", side: "positive", ...fastening },
    { part: index, name: "negative", side: "negative", ...fastening },
  );
  return { word: "circuit", index, record, name, positive, negative: positive + 1 };
}

function sidesOf(word: PartWord, values: object): readonly (readonly [string, Side])[] | undefined {
  if (word === "part")
    return (values as OtherPartValues).terminals?.map((name): [string, Side] => [name, "either"]);
  if (word === "busBar") return [["stud", (values as BusBarValues).side ?? "either"]];
  return Object.entries(terminalsOf[word]);
}

type Fastening = Pick<NetworkTerminal, "termination" | "torqueNm">;

/** How conductors are fastened to each terminal, as far as the part states it. */
function fasteningIn(word: PartWord, values: object): (terminal: string) => Fastening {
  const { termination, torqueNm } = values as Fastening;
  const all = fasteningOf(termination, torqueNm);
  if (word !== "fusePanel") return () => all;
  const { branchTermination, branchTorqueNm } = values as FusePanelValues;
  // A screw of another size has another torque than the stud of the feed.
  const torqueOfFeed = branchTermination === undefined ? torqueNm : undefined;
  const branches = fasteningOf(branchTermination ?? termination, branchTorqueNm ?? torqueOfFeed);
  return (terminal) => (terminal === "feed" ? all : branches);
}

function fasteningOf(termination: Termination | undefined, torqueNm: number | undefined): Fastening {
  return {
    ...(termination !== undefined && { termination }),
    ...(torqueNm !== undefined && { torqueNm }),
  };
}

function addTerminals(
  sides: readonly (readonly [string, Side])[],
  { part, fastening }: { readonly part: number; readonly fastening: (terminal: string) => Fastening },
  all: NetworkTerminal[],
): ReadonlyMap<string, number> {
  const own = new Map<string, number>();
  for (const [name, side] of sides) {
    if (own.has(name)) continue;
    own.set(name, all.length);
    all.push({ part, name, side, ...fastening(name) });
  }
  return own;
}
