import { fullLimitMs, glanceLimitMs, PlanFile } from "./parse.ts";
import { SlowTexts } from "./slow-texts.ts";
import type { SourceText, Uri } from "./workspace.ts";

/** The newest parsed version of each file. */
export class FileCache {
  readonly #files = new Map<Uri, PlanFile>();
  readonly #numbers: Map<Uri, number>;
  readonly #slowTexts: SlowTexts;

  /** Caches for the same files under different texts number them alike. */
  constructor(numberedAs?: FileCache) {
    this.#numbers = numberedAs ? numberedAs.#numbers : new Map();
    this.#slowTexts = numberedAs ? numberedAs.#slowTexts : new SlowTexts();
  }

  get(source: SourceText): PlanFile {
    return this.#read(source, fullLimitMs(source.text));
  }

  /** As {@link get}, for one of many files that are only looked at for their imports: it may be refused for want of time. */
  glance(source: SourceText): PlanFile {
    return this.#read(source, glanceLimitMs);
  }

  #read(source: SourceText, limitMs: number): PlanFile {
    const known = this.#files.get(source.uri);
    const isSame = known?.version === source.version && known.text === source.text;
    if (known && isSame && (!isOutOfTime(known) || this.#slowTexts.refusalOf(source, limitMs))) return known;
    let number = this.#numbers.get(source.uri);
    if (number === undefined) {
      number = this.#numbers.size;
      this.#numbers.set(source.uri, number);
    }
    const refusal = this.#slowTexts.refusalOf(source, limitMs);
    const file = new PlanFile(source, number, { before: known, limitMs, refusal });
    if (!refusal && file.refusal && isOutOfTime(file)) {
      this.#slowTexts.remember(source, limitMs, file.refusal);
    }
    this.#files.set(source.uri, file);
    return file;
  }

  forget(uri: Uri): void {
    this.#files.delete(uri);
  }
}

function isOutOfTime(file: PlanFile): boolean {
  return file.refusal?.reason === "reading-too-slow";
}
