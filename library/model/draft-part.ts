import type { AwgSize, Mm2Size, TerminalC } from "../plan/sizes.ts";
import type { Termination } from "../plan/termination.ts";
import { displayName } from "./display-name.ts";
import { largestConductorOf } from "./largest-conductor.ts";
import type { NetworkTerminal } from "./network.ts";
import { type Fastening, fasteningOf, type StatedValues } from "./parts/define-part.ts";
import { descriptorOfWord, type PartWord, type partDescriptors } from "./parts/index.ts";
import { isObject } from "./plain-values.ts";
import type { Properties } from "./property-table.ts";
import { type ReadValues, readValues } from "./read-values.ts";
import type { PlanRecord } from "./record.ts";
import type { Refusal } from "./run.ts";
import { isSamePlainData } from "./same-plain-data.ts";

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
  readonly values: StatedValues<(typeof partDescriptors)[W]>;
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

/** Reads one part. Appends its terminals to `every`. The same draft for the same argument at the same place. */
export function draftPart(
  record: PlanRecord,
  word: PartWord,
  place: { readonly record: number; readonly index: number },
  every: NetworkTerminal[],
): ReadPart {
  const { input } = record;
  const { table } = descriptorOfWord(word);
  const read = readValues(input, table);
  const name = displayName((read.values as Stated).name ?? "") || displayName(record.fallbackName);
  const at = { name, from: every.length, ...place };
  const before = isObject(input) ? readBefore.get(input) : undefined;
  const made =
    before && before.read === read && isSamePlainData(before.at, at) ? before : readPart(word, read, at);
  if (isObject(input)) readBefore.set(input, made);
  every.push(...made.terminals);
  return made;
}

interface ReadPart {
  readonly draft: PartDraft;
  readonly invalid: readonly Refusal[];
}

/** By argument, as the plan makes it. */
const readBefore = new WeakMap<
  object,
  ReadPart & {
    readonly read: unknown;
    readonly at: PlaceOfPart;
    readonly terminals: readonly NetworkTerminal[];
  }
>();

interface PlaceOfPart extends Pick<Place, "record" | "index" | "name"> {
  /** The index of its first terminal. */
  readonly from: number;
}

function readPart(word: PartWord, read: ReadValues<Properties>, at: PlaceOfPart) {
  const { from, ...place } = at;
  const { values, invalid, unusable } = read;
  const descriptor = descriptorOfWord(word);
  const stated: Stated = values;
  const sides = descriptor.sides
    ? descriptor.sides(values)
    : Object.entries(descriptor.terminals).map(([terminal, { side }]) => [terminal, side] as const);
  const all = fasteningOf(
    stated.termination,
    stated.torqueNm,
    largestConductorOf(stated.largestGauge, stated.largestMm2),
  );
  const fastening = descriptor.fastening?.(values) ?? (() => all);
  const { terminalC: ratedC } = stated;
  const own = sides && terminalsOf(sides, { part: place.index, fastening, ratedC });
  const terminals = own && new Map(own.map(({ name }, index) => [name, from + index]));
  const draft = { word, values, terminals, ...place } as PartDraft;
  const sound = unusable.size === 0;
  return {
    invalid: sound ? [...invalid, ...(descriptor.contradictions?.(values) ?? [])] : invalid,
    ...{ read, at, draft, terminals: own ?? [] },
  };
}

interface Stated {
  readonly name?: string;
  readonly termination?: Termination;
  readonly torqueNm?: number;
  readonly terminalC?: TerminalC;
  readonly largestGauge?: AwgSize;
  readonly largestMm2?: Mm2Size;
}

export function draftLoadOfCircuit(
  { record, index, name }: Pick<LoadOfCircuit, "record" | "index" | "name">,
  termination: Termination | undefined,
  all: NetworkTerminal[],
): LoadOfCircuit {
  const positive = all.length;
  const fastening = fasteningOf(termination, undefined, undefined);
  all.push(
    { part: index, name: "positive", side: "positive", ...fastening },
    { part: index, name: "negative", side: "negative", ...fastening },
  );
  return { word: "circuit", index, record, name, positive, negative: positive + 1 };
}

function terminalsOf(
  sides: readonly (readonly [string, NetworkTerminal["side"]])[],
  of: {
    readonly part: number;
    readonly fastening: (terminal: string) => Fastening;
    readonly ratedC: TerminalC | undefined;
  },
): readonly NetworkTerminal[] {
  const { part, fastening, ratedC } = of;
  const own = new Map<string, NetworkTerminal>();
  for (const [name, side] of sides)
    if (!own.has(name))
      own.set(name, { part, name, side, ...fastening(name), ...(ratedC !== undefined && { ratedC }) });
  return [...own.values()];
}
