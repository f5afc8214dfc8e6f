import ts from "typescript";
import type { PropertyPath } from "../../../library/model/plain-values.ts";
import type { Word } from "../../../library/model/record.ts";
import type { SourceRange, ValueAtPosition } from "../checked-plan.ts";
import type { Tree } from "../text/parse.ts";
import type { Uri } from "../workspace.ts";
import type { SourceNode, TracedRun } from "./contexts.ts";
import { propertyValue } from "./object-literals.ts";
import { type Argument, type Origin, Provenance } from "./provenance.ts";
import { referenceIn } from "./references.ts";
import { Sharing } from "./sharing.ts";

/** Source ranges, valid as long as their trees belong to the checked text. */
export class PlanSourceMap {
  readonly traced: TracedRun;
  readonly provenance: Provenance;
  readonly #trees: readonly Tree[];
  readonly #arguments = new Map<number, Argument>();
  /** By path, then by record. */
  readonly #origins = new Map<string, Map<number, Origin | undefined>>();
  readonly #around = new Map<number, readonly SourceNode[]>();
  readonly #sharing: Sharing;
  /** By number of the call site. */
  readonly #recordsAt = new Map<number, Set<number>>();
  #values: readonly SourceValue[] | undefined;
  readonly #setBy = new Map<ts.Node, Set<number>>();

  /** Takes over the counts of an earlier version that differs only in literals, and leaves it without. */
  constructor(traced: TracedRun, before?: PlanSourceMap) {
    this.traced = traced;
    this.#trees = traced.files.map((file) => file.tree);
    this.provenance = new Provenance(traced);
    const { records, calls } = traced.outcome;
    const changed = before?.changedSince(this);
    this.#sharing = new Sharing(
      records.length,
      (record) => this.#piecesAround(record),
      (record, path) => this.#piecesBehind(record, path),
      before && changed ? { sharing: before.#sharing, changed } : undefined,
    );
    for (const [index, { call }] of records.entries()) {
      const site = calls[call]?.callSite ?? -1;
      const there = this.#recordsAt.get(site);
      if (there) there.add(index);
      else this.#recordsAt.set(site, new Set([index]));
    }
  }

  /**
   * The records that differ in another version, if the two versions have the same nodes and calls: a record that is as before then
   * has its values from the same nodes. Undefined if other records may have too.
   */
  private changedSince(now: PlanSourceMap): readonly number[] | undefined {
    const { records, calls, allocations } = this.traced.outcome;
    const after = now.traced.outcome;
    const isSame =
      calls === after.calls &&
      allocations === after.allocations &&
      records.length === after.records.length &&
      this.#trees.length === now.#trees.length &&
      this.#trees.every(({ source }, index) => source === now.#trees[index]!.source);
    if (!isSame || this.provenance.comparesElements) return undefined;
    return records.flatMap(({ input, call, allocations: born }, index) => {
      const other = after.records[index]!;
      return input === other.input && call === other.call && born === other.allocations ? [] : [index];
    });
  }

  get current(): boolean {
    return this.traced.files.every((file, index) => file.tree === this.#trees[index]);
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
   * On the wrong value. If one source value sets several circuits: on the node by which they differ, with the value as related
   * information. If they do not differ anywhere: on the value, which is then the same for all of them.
   */
  placeFinding(record: number, path: PropertyPath): FoundRange {
    const origin = path.length > 0 ? this.originOf(record, path) : undefined;
    const end = origin?.trail.at(-1);
    const { call } = this.argumentOf(record);
    if (this.recordsOfCall(record).size <= 1 && (!end || isWithin(end, call))) {
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
    const many = together.size - (together.has(record) ? 1 : 0);
    const own = this.traced.outcome.records[record]?.word;
    const counts = this.#countsByWord(together);
    const kinds = [...counts].filter(([word, count]) => word !== own || count > 1).map(([word]) => word);
    const [kind] = kinds.length === 1 && !kinds.includes("build") ? kinds : [];
    const noun =
      kind === "circuit" || kind === "cable" || kind === "scenario" || kind === "period"
        ? kind
        : kind && "part";
    const plural = many === 1 ? "" : "s";
    return noun ? `${many} other ${noun}${plural}` : `${many} other${plural}`;
  }

  readonly #counts = new WeakMap<ReadonlySet<number>, ReadonlyMap<Word, number>>();

  /** Counted once for all findings about the same records: one source value may set thousands. */
  #countsByWord(together: ReadonlySet<number>): ReadonlyMap<Word, number> {
    const known = this.#counts.get(together);
    if (known) return known;
    const counts = new Map<Word, number>();
    for (const record of together) {
      const word = this.traced.outcome.records[record]?.word;
      if (word) counts.set(word, (counts.get(word) ?? 0) + 1);
    }
    this.#counts.set(together, counts);
    return counts;
  }

  /** The value of a record at a path. */
  valueOf(record: number, path: PropertyPath): unknown {
    return path.reduce<unknown>(
      (value, key) => (value as Readonly<Record<string, unknown>> | null | undefined)?.[key],
      this.traced.outcome.records[record]?.input,
    );
  }

  /** The range of a property that is in the text, but had no value at run time: a misspelt terminal, for example. */
  placeOfNothing(record: number, name: string): SourceRange | undefined {
    const input = this.traced.outcome.records[record]?.input;
    if (typeof input !== "object" || input === null || Object.hasOwn(input, name)) return undefined;
    const end = this.originOf(record, [name])?.trail.at(-1);
    return end && oneLine(end);
  }

  /** A related place of a finding: the value itself, in any file. */
  placeRelated(record: number, path: PropertyPath): SourceRange {
    const origin = path.length > 0 ? this.originOf(record, path) : undefined;
    const end = origin?.trail.at(-1);
    return end ? oneLine(end) : placeOfCallee(this.argumentOf(record).call);
  }

  /** The records that a node behind a record contributes to, through any of their properties. */
  recordsSetBy(record: number, piece: SourceNode): ReadonlySet<number> {
    this.#allValues();
    const set = this.#setBy.get(piece.node) ?? noRecords;
    if (!isWithin(piece, this.argumentOf(record).call)) return set;
    const own = this.recordsOfCall(record);
    const joined = this.#joined.get(own) ?? new Map<ts.Node, ReadonlySet<number>>();
    this.#joined.set(own, joined);
    let all = joined.get(piece.node);
    if (!all) {
      all = new Set([...own, ...set]);
      joined.set(piece.node, all);
    }
    return all;
  }

  /** By the records of one call, then by node: cached, because fixes of thousands of findings request the same. */
  readonly #joined = new Map<ReadonlySet<number>, Map<ts.Node, ReadonlySet<number>>>();

  /** The records whose value at a path comes through a node. */
  recordsSetAt(path: PropertyPath, piece: SourceNode): ReadonlySet<number> {
    return this.#sharing.recordsBehind(path, piece);
  }

  /** The records with this literal as their argument, or spread into it. */
  recordsHaving(literal: SourceNode): ReadonlySet<number> {
    this.#having ??= this.#recordsByLayer();
    return this.#having.get(literal.node) ?? noRecords;
  }

  #having: ReadonlyMap<ts.Node, ReadonlySet<number>> | undefined;

  #recordsByLayer(): ReadonlyMap<ts.Node, ReadonlySet<number>> {
    const having = new Map<ts.Node, Set<number>>();
    for (let record = 0; record < this.traced.outcome.records.length; record++) {
      for (const layer of this.#layersOf(record)) {
        const records = having.get(layer);
        if (records) records.add(record);
        else having.set(layer, new Set([record]));
      }
    }
    return having;
  }

  valueAt(uri: Uri, offset: number): ValueAtPosition | undefined {
    const file = this.traced.files.find((candidate) => candidate.uri === uri);
    if (!file) return undefined;
    const value = this.#valueAt(file.number, offset);
    if (value) return value;
    // Not on a value: perhaps on a call that made a record.
    let innermost: ValueAtPosition | undefined;
    for (const records of this.#recordsAt.values()) {
      const [record, ...alsoSets] = records;
      if (record === undefined) continue;
      const { call } = this.argumentOf(record);
      if (call.file !== file || this.traced.outcome.records[record]?.call === -1) continue;
      const place = placeIn(call);
      if (offset < place.start || offset > place.end) continue;
      const smaller = !innermost || place.end - place.start < innermost.place.end - innermost.place.start;
      if (smaller) innermost = { record, path: [], place, alsoSets };
    }
    return innermost;
  }

  #valueAt(fileNumber: number, offset: number): ValueAtPosition | undefined {
    let best: { readonly value: SourceValue; readonly place: SourceRange } | undefined;
    const { source } = this.traced.files.find(({ number }) => number === fileNumber)!.tree;
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
      alsoSets: [...this.recordsSetBy(value.record, value.written)]
        .filter((record) => record !== value.record)
        .sort((a, b) => a - b),
    };
  }

  /** Every node that sets a value of a record. */
  #allValues(): readonly SourceValue[] {
    if (this.#values) return this.#values;
    const values: SourceValue[] = [];
    for (const [record, { input }] of this.traced.outcome.records.entries()) {
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

  /** The nodes behind a property of a record, nearest to its origin first. */
  #piecesBehind(record: number, path: PropertyPath): readonly SourceNode[] {
    const trail = path.length > 0 ? this.originOf(record, path)?.trail : undefined;
    return trail ? [...trail].reverse() : [];
  }

  /** The calls that made a record, innermost first, and the elements that they were made for. */
  #piecesAround(record: number): readonly SourceNode[] {
    let pieces = this.#around.get(record);
    if (!pieces) {
      pieces = [...this.provenance.callersOf(record), ...this.provenance.observedAt(record)];
      this.#around.set(record, pieces);
    }
    return pieces;
  }

  /** The records that the same call made. */
  recordsOfCall(record: number): ReadonlySet<number> {
    const { records, calls } = this.traced.outcome;
    return this.#recordsAt.get(calls[records[record]?.call ?? -1]?.callSite ?? -1) ?? noRecords;
  }

  /** Every literal that is the record's argument, is spread into it, or nested in it. */
  #layersOf(record: number): ReadonlySet<ts.Node> {
    const { object } = this.argumentOf(record);
    const literals = object ? this.provenance.layersOf(object).map(({ literal }) => literal) : [];
    const nested = literals.flatMap(({ properties }) =>
      properties.flatMap((property) => propertyValue(property) ?? []),
    );
    return new Set<ts.Node>([...literals, ...nested]);
  }
}

const noRecords: ReadonlySet<number> = new Set();

export interface FoundRange {
  readonly place: SourceRange;
  readonly related: readonly { readonly place: SourceRange; readonly text: string }[];
  /** The node common to all of them, if the text does not distinguish them. */
  readonly shared?: ts.Node;
}

interface SourceValue {
  readonly record: number;
  readonly path: PropertyPath;
  readonly written: SourceNode;
  /** The property's name, if it is beside the value. */
  readonly name?: ts.Node;
}

export function placeIn({ file, node }: SourceNode): SourceRange {
  return { uri: file.uri, start: node.getStart(file.tree.source), end: node.end };
}

/** A squiggle never covers several lines: it ends with the first. */
function oneLine(written: SourceNode): SourceRange {
  const place = placeIn(written);
  const lineEnd = written.file.text.slice(place.start, place.end).search(/\r?\n/);
  return lineEnd < 0 ? place : { ...place, end: place.start + lineEnd };
}

/** The node by which circuits differ is marked whole if it is on one line. */
function placeOfDifference(own: SourceNode): SourceRange {
  const whole = placeIn(own);
  return own.file.text.slice(whole.start, whole.end).includes("\n") ? placeOfCallee(own) : whole;
}

/** The callee: the best place for an absent value. */
export function placeOfCallee(call: SourceNode): SourceRange {
  const { node, file } = call;
  return ts.isCallExpression(node) || ts.isNewExpression(node)
    ? oneLine({ file, node: node.expression })
    : oneLine(call);
}

function isWithin(inner: SourceNode, outer: SourceNode): boolean {
  return inner.file === outer.file && outer.node.pos <= inner.node.pos && inner.node.end <= outer.node.end;
}

/** Every value in a record except the record itself; a reference counts as one value. */
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
