import type ts from "typescript";
import type { PropertyPath } from "../../../library/model/plain-values.ts";
import type { SourceNode } from "./contexts.ts";

/**
 * The records that each AST node contributes to. A finding is put where circuits differ, and a fix lists its other effects.
 * Counted for one property at a time, on first use: most plans share nothing.
 */
export class Sharing {
  readonly #around: (record: number) => readonly SourceNode[];
  readonly #behind: (record: number, path: PropertyPath) => readonly SourceNode[];
  readonly #records: number;
  /** By path; undefined: records as a whole. */
  readonly #counts: Map<string | undefined, Count>;

  /**
   * `around`: nodes that contribute to a record as a whole (calls, elements); `behind`: those that contribute to one of its
   * properties. The counts of an earlier run are taken over, and are then no longer the other's.
   */
  constructor(
    records: number,
    around: (record: number) => readonly SourceNode[],
    behind: (record: number, path: PropertyPath) => readonly SourceNode[],
    earlier?: EarlierRun,
  ) {
    this.#records = records;
    this.#around = around;
    this.#behind = behind;
    this.#counts = earlier ? earlier.sharing.#counts : new Map();
    for (const { outdated } of this.#counts.values())
      for (const record of earlier?.changed ?? []) outdated.add(record);
  }

  recordsAround(piece: SourceNode): ReadonlySet<number> {
    return this.#count(undefined, this.#around).get(piece.node) ?? none;
  }

  recordsBehind(path: PropertyPath, piece: SourceNode): ReadonlySet<number> {
    return this.#count(path.join("\n"), (record) => this.#behind(record, path)).get(piece.node) ?? none;
  }

  #count(key: string | undefined, piecesOf: (record: number) => readonly SourceNode[]): Count["byNode"] {
    const known = this.#counts.get(key);
    const { byNode, outdated } = known ?? {
      byNode: new Map(),
      outdated: new Set(Array(this.#records).keys()),
    };
    if (!known) this.#counts.set(key, { byNode, outdated });
    if (outdated.size === 0) return byNode;
    for (const records of byNode.values()) for (const record of outdated) records.delete(record);
    for (const record of outdated) {
      for (const { node } of piecesOf(record)) {
        const records = byNode.get(node);
        if (records) records.add(record);
        else byNode.set(node, new Set([record]));
      }
    }
    outdated.clear();
    return byNode;
  }
}

/** A run of the same plan, with the same nodes. */
export interface EarlierRun {
  readonly sharing: Sharing;
  /** The only records that may have other nodes now. */
  readonly changed: readonly number[];
}

interface Count {
  readonly byNode: Map<ts.Node, Set<number>>;
  /** Records that are not counted yet. */
  readonly outdated: Set<number>;
}

const none: ReadonlySet<number> = new Set();
