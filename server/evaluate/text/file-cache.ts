import type { SourceText, Uri } from "../workspace.ts";
import { fullLimitMs, glanceLimitMs, PlanFile, secondGlanceLimitMs } from "./parse.ts";
import { SlowTexts } from "./slow-texts.ts";

/** The newest parsed version of each file of the plans that are checked, and of a few others. */
export class FileCache {
  readonly #files = new Map<Uri, PlanFile>();
  /**
   * Files that were only glanced at, or belonged to a forgotten plan, the latest last. A syntax tree is some fifty times as
   * large as its text.
   */
  readonly #lookedAt = new Map<Uri, PlanFile>();
  #lookedAtLength = 0;
  readonly #numbers: Map<Uri, number>;
  readonly #slowTexts: SlowTexts;
  /** Files with a version that exceeded the time limit for reading; the next version is likely to do so too. */
  readonly #slowFiles = new Set<Uri>();

  /** Caches of the same files with different texts give them the same numbers. */
  constructor(numberedAs?: FileCache) {
    this.#numbers = numberedAs ? numberedAs.#numbers : new Map();
    this.#slowTexts = numberedAs ? numberedAs.#slowTexts : new SlowTexts();
  }

  /** Keeps the file until it is forgotten. */
  get(source: SourceText): PlanFile {
    const known = this.#files.get(source.uri) ?? this.#lookedAt.get(source.uri);
    const file = this.#newest(source, known, fullLimitMs(source.text));
    this.#forgetLookedAt(source.uri);
    this.#files.set(source.uri, file);
    return file;
  }

  /**
   * For one of many files that are read only for their imports, and may belong to no checked plan. Such a file may be refused
   * for lack of time, and is kept for a short time. A file that is already kept is read in full: it is about to be checked, and
   * an interrupted reading would cost the next one the tree of the last version.
   */
  glance(source: SourceText): PlanFile {
    if (this.#files.has(source.uri)) return this.get(source);
    const limitMs = this.#slowFiles.has(source.uri) ? secondGlanceLimitMs : glanceLimitMs;
    const file = this.#newest(source, this.#lookedAt.get(source.uri), limitMs);
    this.#keepForNow(file);
    return file;
  }

  expectSlow(uris: readonly Uri[]): void {
    for (const uri of uris) this.#slowFiles.add(uri);
  }

  forget(uri: Uri): void {
    this.#slowFiles.delete(uri);
    this.#files.delete(uri);
    this.#forgetLookedAt(uri);
  }

  /** Only these are kept from now on; the others are treated like files that were only glanced at. */
  keepOnly(uris: ReadonlySet<Uri>): void {
    for (const [uri, file] of this.#files) {
      if (uris.has(uri)) continue;
      this.#files.delete(uri);
      this.#keepForNow(file);
    }
  }

  #newest(source: SourceText, known: PlanFile | undefined, limitMs: number): PlanFile {
    const isSame = known?.version === source.version && known.text === source.text;
    const refusal = this.#slowTexts.refusalOf(source, limitMs);
    if (known && isSame && (!isOutOfTime(known) || refusal)) return known;
    let number = this.#numbers.get(source.uri);
    if (number === undefined) {
      number = this.#numbers.size;
      this.#numbers.set(source.uri, number);
    }
    const file = new PlanFile(source, number, { before: known, limitMs, refusal });
    if (!refusal && file.refusal && isOutOfTime(file)) {
      this.#slowTexts.remember(source, limitMs, file.refusal);
      this.#slowFiles.add(source.uri);
    }
    return file;
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

function isOutOfTime(file: PlanFile): boolean {
  return file.refusal?.reason === "reading-too-slow";
}

/** In UTF-16 units, of all texts together: some ten megabytes of trees. */
const mostLookedAtLength = 200_000;
