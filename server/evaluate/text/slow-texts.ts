import { createHash } from "node:crypto";
import type { SourceText } from "../workspace.ts";
import type { Refusal } from "./refusal.ts";

/** Texts that exceeded the reading time limit, by content: each costs its time only once. */
export class SlowTexts {
  readonly #known = new Map<string, { readonly limitMs: number; readonly refusal: Refusal }>();
  /** Most texts have another length, and need no digest. */
  readonly #lengths = new Set<number>();

  remember(source: SourceText, limitMs: number, refusal: Refusal): void {
    this.#lengths.add(source.text.length);
    this.#known.set(digestOf(source), { limitMs, refusal });
  }

  /** Undefined if the text has never been given that much time. */
  refusalOf(source: SourceText, limitMs: number): Refusal | undefined {
    if (!this.#lengths.has(source.text.length)) return undefined;
    const known = this.#known.get(digestOf(source));
    return known && known.limitMs >= limitMs ? known.refusal : undefined;
  }
}

/** The reading of a text also depends on its file extension. */
function digestOf({ uri, text }: SourceText): string {
  return createHash("sha256")
    .update(`${/\.[^./]*$/.exec(uri)?.[0] ?? ""}\n${text}`)
    .digest("base64");
}
