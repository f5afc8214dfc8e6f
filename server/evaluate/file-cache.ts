import { PlanFile } from "./parse.ts";
import type { SourceText, Uri } from "./workspace.ts";

/** The newest parsed version of each file. */
export class FileCache {
  readonly #files = new Map<Uri, PlanFile>();
  readonly #numbers: Map<Uri, number>;

  /** Caches for the same files under different texts number them alike. */
  constructor(numberedAs?: FileCache) {
    this.#numbers = numberedAs ? numberedAs.#numbers : new Map();
  }

  get(source: SourceText): PlanFile {
    const known = this.#files.get(source.uri);
    if (known && known.version === source.version && known.text === source.text) return known;
    let number = this.#numbers.get(source.uri);
    if (number === undefined) {
      number = this.#numbers.size;
      this.#numbers.set(source.uri, number);
    }
    const file = new PlanFile(source, number, known);
    this.#files.set(source.uri, file);
    return file;
  }

  forget(uri: Uri): void {
    this.#files.delete(uri);
  }
}
