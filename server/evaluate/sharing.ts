import type { PropertyPath } from "../../library/model/record.ts";
import type { Written } from "./provenance.ts";

/**
 * Counts which records each piece of text has a part in, so that a finding can be put where circuits differ, and a fix can
 * say what else it changes. Filled for one property at a time, on the first question about it: most plans share nothing.
 */
export class Sharing {
  readonly #records: number;
  readonly #piecesOf: (record: number, path: PropertyPath) => readonly Written[];
  readonly #byPath = new Map<string, ReadonlyMap<string, readonly number[]>>();

  constructor(records: number, piecesOf: (record: number, path: PropertyPath) => readonly Written[]) {
    this.#records = records;
    this.#piecesOf = piecesOf;
  }

  /** Records of whose property the piece of text has a part in, in their order. */
  recordsOf(path: PropertyPath, piece: Written): readonly number[] {
    return this.#index(path).get(keyOf(piece)) ?? [];
  }

  #index(path: PropertyPath): ReadonlyMap<string, readonly number[]> {
    const key = path.join("\n");
    let index = this.#byPath.get(key);
    if (!index) {
      index = this.#count(path);
      this.#byPath.set(key, index);
    }
    return index;
  }

  #count(path: PropertyPath): ReadonlyMap<string, readonly number[]> {
    const index = new Map<string, number[]>();
    for (let record = 0; record < this.#records; record++) {
      for (const piece of this.#piecesOf(record, path)) {
        const key = keyOf(piece);
        const records = index.get(key);
        if (!records) index.set(key, [record]);
        else if (records.at(-1) !== record) records.push(record);
      }
    }
    return index;
  }
}

export function keyOf({ file, node }: Written): string {
  return `${file.number}:${node.pos}:${node.end}`;
}
