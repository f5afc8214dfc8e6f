import { PlanFile } from "./parse.ts";
import type { SourceText, Uri } from "./workspace.ts";

/** The newest parsed version of each file of the plans that are checked, and of a few others. */
export class FileCache {
  readonly #files = new Map<Uri, PlanFile>();
  /** Files that were only looked at, or whose plan was forgotten, the latest last. A syntax tree is some fifty times as large as its text. */
  readonly #lookedAt = new Map<Uri, PlanFile>();
  #lookedAtLength = 0;
  readonly #numbers: Map<Uri, number>;

  /** Caches for the same files under different texts number them alike. */
  constructor(numberedAs?: FileCache) {
    this.#numbers = numberedAs ? numberedAs.#numbers : new Map();
  }

  /** Keeps the file until it is forgotten. */
  get(source: SourceText): PlanFile {
    const file = this.#newest(source, this.#files.get(source.uri) ?? this.#lookedAt.get(source.uri));
    this.#forgetLookedAt(source.uri);
    this.#files.set(source.uri, file);
    return file;
  }

  /** For a question about a file that may belong to no plan that is checked. It is kept only if it is already, or for a short time. */
  lookAt(source: SourceText): PlanFile {
    if (this.#files.has(source.uri)) return this.get(source);
    const file = this.#newest(source, this.#lookedAt.get(source.uri));
    this.#keepForNow(file);
    return file;
  }

  forget(uri: Uri): void {
    this.#files.delete(uri);
    this.#forgetLookedAt(uri);
  }

  /** Only these are kept from now on; the others like files that were only looked at. */
  keepOnly(uris: ReadonlySet<Uri>): void {
    for (const [uri, file] of this.#files) {
      if (uris.has(uri)) continue;
      this.#files.delete(uri);
      this.#keepForNow(file);
    }
  }

  #newest(source: SourceText, known: PlanFile | undefined): PlanFile {
    if (known && known.version === source.version && known.text === source.text) return known;
    let number = this.#numbers.get(source.uri);
    if (number === undefined) {
      number = this.#numbers.size;
      this.#numbers.set(source.uri, number);
    }
    return new PlanFile(source, number, known);
  }

  #keepForNow(file: PlanFile): void {
    this.#forgetLookedAt(file.uri);
    this.#lookedAt.set(file.uri, file);
    this.#lookedAtLength += file.text.length;
    for (const uri of this.#lookedAt.keys()) {
      if (this.#lookedAtLength <= mostLookedAtLength) break;
      this.#forgetLookedAt(uri);
    }
  }

  #forgetLookedAt(uri: Uri): void {
    this.#lookedAtLength -= this.#lookedAt.get(uri)?.text.length ?? 0;
    this.#lookedAt.delete(uri);
  }
}

/** In UTF-16 units, of all texts together: some ten megabytes of trees. */
const mostLookedAtLength = 200_000;
