import type ts from "typescript";
import type { PropertyPath } from "../../../library/model/plain-values.ts";
import type { SourceNode } from "./contexts.ts";

/**
 * The records that each AST node contributes to. A finding is put where circuits differ, and a fix lists its other effects.
 * Counted for one property at a time, on first use: most plans share nothing.
 */
export class Sharing {
  readonly #records: number;
  readonly #around: (record: number) => readonly SourceNode[];
  readonly #behind: (record: number, path: PropertyPath) => readonly SourceNode[];
  #byRecord: Index | undefined;
  readonly #byPath = new Map<string, Index>();

  /**
   * `around`: nodes that contribute to a record as a whole (calls, elements); `behind`: those that contribute to one of its
   * properties.
   */
  constructor(
    records: number,
    around: (record: number) => readonly SourceNode[],
    behind: (record: number, path: PropertyPath) => readonly SourceNode[],
  ) {
    this.#records = records;
    this.#around = around;
    this.#behind = behind;
  }

  recordsAround(piece: SourceNode): ReadonlySet<number> {
    this.#byRecord ??= this.#count(this.#around);
    return this.#byRecord.get(piece.node) ?? none;
  }

  recordsBehind(path: PropertyPath, piece: SourceNode): ReadonlySet<number> {
    const key = path.join("\n");
    let index = this.#byPath.get(key);
    if (!index) {
      index = this.#count((record) => this.#behind(record, path));
      this.#byPath.set(key, index);
    }
    return index.get(piece.node) ?? none;
  }

  #count(piecesOf: (record: number) => readonly SourceNode[]): Index {
    const index = new Map<ts.Node, Set<number>>();
    for (let record = 0; record < this.#records; record++) {
      for (const { node } of piecesOf(record)) {
        const records = index.get(node);
        if (records) records.add(record);
        else index.set(node, new Set([record]));
      }
    }
    return index;
  }
}

type Index = ReadonlyMap<ts.Node, ReadonlySet<number>>;

const none: ReadonlySet<number> = new Set();
