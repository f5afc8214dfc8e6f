import ts from "typescript";
import type { PropertyPath } from "../../library/model/record.ts";
import type { Place, Spot } from "./checked-plan.ts";
import { writtenValue } from "./object-literals.ts";
import { type Argument, type Origin, Provenance } from "./provenance.ts";
import { referenceIn } from "./references.ts";
import type { Evidence, Written } from "./scenes.ts";
import { Sharing } from "./sharing.ts";
import type { Uri } from "./workspace.ts";

/** Places, as long as the trees they are read off belong to the checked text. */
export class PlacesOfTrees {
  readonly evidence: Evidence;
  readonly provenance: Provenance;
  readonly #trees: readonly unknown[];
  readonly #arguments = new Map<number, Argument>();
  /** By path, then by record. */
  readonly #origins = new Map<string, Map<number, Origin | undefined>>();
  readonly #around = new Map<number, readonly Written[]>();
  readonly #sharing: Sharing;
  /** By number of the call site. */
  readonly #recordsAt = new Map<number, number[]>();
  #values: readonly WrittenValue[] | undefined;
  readonly #setBy = new Map<ts.Node, Set<number>>();

  constructor(evidence: Evidence) {
    this.evidence = evidence;
    this.#trees = evidence.files.map((file) => file.tree);
    this.provenance = new Provenance(evidence);
    const { records, calls } = evidence.outcome;
    this.#sharing = new Sharing(
      records.length,
      (record) => this.#piecesAround(record),
      (record, path) => this.#piecesBehind(record, path),
    );
    for (const [index, { call }] of records.entries()) {
      const site = calls[call]?.callSite ?? -1;
      const there = this.#recordsAt.get(site);
      if (there) there.push(index);
      else this.#recordsAt.set(site, [index]);
    }
  }

  get current(): boolean {
    return this.evidence.files.every((file, index) => file.tree === this.#trees[index]);
  }

  argumentOf(record: number): Argument {
    let argument = this.#arguments.get(record);
    if (!argument) {
      argument = this.provenance.argumentOf(record);
      this.#arguments.set(record, argument);
    }
    return argument;
  }

  originOf(record: number, path: PropertyPath): Origin | undefined {
    const key = path.length === 1 ? (path[0] as string) : path.join("\n");
    let origins = this.#origins.get(key);
    if (!origins) {
      origins = new Map();
      this.#origins.set(key, origins);
    }
    if (origins.has(record)) return origins.get(record);
    const origin = this.provenance.originOf(record, path, this.argumentOf(record));
    origins.set(record, origin);
    return origin;
  }

  /**
   * On the value that is wrong. Where one written value sets several circuits, where those differ, and the value is related;
   * where they differ nowhere, on the value, which then is the same for all of them.
   */
  placeFinding(record: number, path: PropertyPath): FoundPlace {
    const origin = path.length > 0 ? this.originOf(record, path) : undefined;
    const end = origin?.trail.at(-1);
    const { call } = this.argumentOf(record);
    if (this.#recordsOfCall(record).length <= 1 && (!end || isWithin(end, call))) {
      return { place: end ? oneLine(end) : placeOfCallee(call), related: [] };
    }
    const set = end ? oneLine(end) : placeOfCallee(call);
    const together = end ? this.#sharing.recordsBehind(path, end) : this.#sharing.recordsAround(call);
    if (together.size <= 1) return { place: set, related: [] };
    const tellsApart = (records: ReadonlySet<number>) => {
      for (const other of records) if (other !== record && together.has(other)) return false;
      return true;
    };
    const own =
      this.#piecesBehind(record, path).find((piece) =>
        tellsApart(this.#sharing.recordsBehind(path, piece)),
      ) ?? this.#piecesAround(record).find((piece) => tellsApart(this.#sharing.recordsAround(piece)));
    if (!own) return { place: set, related: [], shared: (end ?? call).node };
    const text = `${end ? "Set" : "Made"} here, for ${this.#othersInWords(record, together)} too`;
    return { place: placeOfDifference(own), related: [{ place: set, text }] };
  }

  #othersInWords(record: number, together: ReadonlySet<number>): string {
    const { records } = this.evidence.outcome;
    const others = [...together].filter((other) => other !== record);
    const kinds = new Set(others.map((other) => records[other]?.word));
    const [kind] = kinds.size === 1 && !kinds.has("build") ? kinds : [];
    const noun = kind === "circuit" || kind === "cable" || kind === "scenario" ? kind : kind && "part";
    const many = others.length === 1 ? "" : "s";
    return noun ? `${others.length} other ${noun}${many}` : `${others.length} other${many}`;
  }

  /** What a record holds at a path. */
  valueOf(record: number, path: PropertyPath): unknown {
    return path.reduce<unknown>(
      (value, key) => (value as Readonly<Record<string, unknown>> | null | undefined)?.[key],
      this.evidence.outcome.records[record]?.input,
    );
  }

  /** Where a property stands that is written, but came to nothing when the plan ran: a misspelt terminal, say. */
  placeOfNothing(record: number, name: string): Place | undefined {
    const input = this.evidence.outcome.records[record]?.input;
    if (typeof input !== "object" || input === null || Object.hasOwn(input, name)) return undefined;
    const end = this.originOf(record, [name])?.trail.at(-1);
    return end && oneLine(end);
  }

  /** A place that a finding only points to: the value itself, wherever it is. */
  placeRelated(record: number, path: PropertyPath): Place {
    const origin = path.length > 0 ? this.originOf(record, path) : undefined;
    const end = origin?.trail.at(-1);
    return end ? oneLine(end) : placeOfCallee(this.argumentOf(record).call);
  }

  /** Other records that a piece of text has a part in, whichever property of theirs it sets. */
  alsoSets(record: number, piece: Written): readonly number[] {
    const { call } = this.argumentOf(record);
    const own = this.#recordsOfCall(record);
    const others = new Set<number>(isWithin(piece, call) ? own : []);
    this.#allValues();
    for (const other of this.#setBy.get(piece.node) ?? []) others.add(other);
    others.delete(record);
    return [...others].sort((a, b) => a - b);
  }

  /** Other records that the same call made. */
  alsoSetsCall(record: number): readonly number[] {
    return this.#recordsOfCall(record).filter((other) => other !== record);
  }

  /** Other records whose argument is this literal, or has it spread into it. */
  alsoHave(record: number, literal: Written): readonly number[] {
    const others: number[] = [];
    for (let other = 0; other < this.evidence.outcome.records.length; other++) {
      if (other !== record && this.#layersOf(other).has(literal.node)) others.push(other);
    }
    return others;
  }

  spotAt(uri: Uri, offset: number): Spot | undefined {
    const file = this.evidence.files.find((candidate) => candidate.uri === uri);
    if (!file) return undefined;
    const value = this.#valueAt(file.number, offset);
    if (value) return value;
    // Not on a value: perhaps on a call that made a record.
    let innermost: Spot | undefined;
    for (const records of this.#recordsAt.values()) {
      const [record, ...alsoSets] = records;
      if (record === undefined) continue;
      const { call } = this.argumentOf(record);
      if (call.file !== file || this.evidence.outcome.records[record]?.call === -1) continue;
      const place = placeIn(call);
      if (offset < place.start || offset > place.end) continue;
      const smaller = !innermost || place.end - place.start < innermost.place.end - innermost.place.start;
      if (smaller) innermost = { record, path: [], place, alsoSets };
    }
    return innermost;
  }

  #valueAt(fileNumber: number, offset: number): Spot | undefined {
    let best: { readonly value: WrittenValue; readonly place: Place } | undefined;
    const { source } = this.evidence.files.find(({ number }) => number === fileNumber)!.tree;
    for (const value of this.#allValues()) {
      const { node, file } = value.written;
      const first = value.name ?? node;
      if (file.number !== fileNumber || first.pos > offset || node.end < offset) continue;
      if (offset < first.getStart(source)) continue;
      const place = placeIn(value.written);
      if (!best || place.end - place.start < best.place.end - best.place.start) best = { value, place };
    }
    if (!best) return undefined;
    const { value, place } = best;
    return {
      record: value.record,
      path: value.path,
      place,
      alsoSets: this.alsoSets(value.record, value.written),
    };
  }

  /** Every piece of text that sets a value of a record. */
  #allValues(): readonly WrittenValue[] {
    if (this.#values) return this.#values;
    const values: WrittenValue[] = [];
    for (const [record, { input }] of this.evidence.outcome.records.entries()) {
      for (const path of pathsIn(input)) {
        const origin = this.originOf(record, path);
        if (!origin?.whole) continue;
        for (const [step, written] of origin.trail.entries()) {
          const name = step === 0 ? origin.property.name : undefined;
          values.push({ record, path, written, ...(name ? { name } : {}) });
          const records = this.#setBy.get(written.node);
          if (records) records.add(record);
          else this.#setBy.set(written.node, new Set([record]));
        }
      }
    }
    this.#values = values;
    return values;
  }

  /** The text behind a property of a record, nearest to what set it first. */
  #piecesBehind(record: number, path: PropertyPath): readonly Written[] {
    const trail = path.length > 0 ? this.originOf(record, path)?.trail : undefined;
    return trail ? [...trail].reverse() : [];
  }

  /** The calls that made a record, innermost first, and the elements that they were made for. */
  #piecesAround(record: number): readonly Written[] {
    let pieces = this.#around.get(record);
    if (!pieces) {
      pieces = [...this.provenance.callersOf(record), ...this.provenance.seenAt(record)];
      this.#around.set(record, pieces);
    }
    return pieces;
  }

  #recordsOfCall(record: number): readonly number[] {
    const { records, calls } = this.evidence.outcome;
    return this.#recordsAt.get(calls[records[record]?.call ?? -1]?.callSite ?? -1) ?? [];
  }

  readonly #layers = new Map<number, ReadonlySet<ts.Node>>();

  /** Every literal that is the record's argument, is spread into it, or nested in it. */
  #layersOf(record: number): ReadonlySet<ts.Node> {
    let layers = this.#layers.get(record);
    if (!layers) {
      const { object } = this.argumentOf(record);
      const literals = object ? this.provenance.layersOf(object).map(({ literal }) => literal) : [];
      const nested = literals.flatMap(({ properties }) =>
        properties.flatMap((property) => writtenValue(property) ?? []),
      );
      layers = new Set<ts.Node>([...literals, ...nested]);
      this.#layers.set(record, layers);
    }
    return layers;
  }
}

export interface FoundPlace {
  readonly place: Place;
  readonly related: readonly { readonly place: Place; readonly text: string }[];
  /** What all of them have in common, when nothing tells them apart. */
  readonly shared?: ts.Node;
}

interface WrittenValue {
  readonly record: number;
  readonly path: PropertyPath;
  readonly written: Written;
  /** The property's name, where it stands beside the value. */
  readonly name?: ts.Node;
}

export function placeIn({ file, node }: Written): Place {
  return { uri: file.uri, start: node.getStart(file.tree.source), end: node.end };
}

/** A squiggle never runs over several lines: it ends with the first. */
function oneLine(written: Written): Place {
  const place = placeIn(written);
  const lineEnd = written.file.text.slice(place.start, place.end).search(/\r?\n/);
  return lineEnd < 0 ? place : { ...place, end: place.start + lineEnd };
}

/** What tells circuits apart is marked whole if it is on one line. */
function placeOfDifference(own: Written): Place {
  const whole = placeIn(own);
  return own.file.text.slice(whole.start, whole.end).includes("\n") ? placeOfCallee(own) : whole;
}

/** What is called: an absent value has no better place. */
export function placeOfCallee(call: Written): Place {
  const { node, file } = call;
  return ts.isCallExpression(node) || ts.isNewExpression(node)
    ? oneLine({ file, node: node.expression })
    : oneLine(call);
}

function isWithin(inner: Written, outer: Written): boolean {
  return inner.file === outer.file && outer.node.pos <= inner.node.pos && inner.node.end <= outer.node.end;
}

/** Every value of a record but the record itself; what it names is one value. */
function pathsIn(input: unknown, depth = 0): PropertyPath[] {
  if (typeof input !== "object" || input === null || depth === deepestPath) return [];
  if (depth > 0 && ("$strange" in input || referenceIn(input))) return [];
  return Object.entries(input).flatMap(([key, value]) => [
    [key],
    ...pathsIn(value, depth + 1).map((inner) => [key, ...inner]),
  ]);
}

/** `joins: [{ between: ["in", "out"] }]` */
const deepestPath = 4;
