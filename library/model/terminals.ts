import { descriptorOfWord, type PartWord, partWords } from "./parts/index.ts";
import type { Word } from "./record.ts";

export function isPartWord(word: Word): word is PartWord {
  return (partWords as readonly Word[]).includes(word);
}

/** The two terminals for a pair of conductors that ends at the whole part; chargers are fed at their input. */
export function polesOf(word: PartWord): Poles | undefined {
  const { poles, ports } = descriptorOfWord(word);
  return poles ?? ports[0];
}

export interface Poles {
  readonly positive: string;
  readonly negative: string;
}

/** The negative terminal that belongs to a positive one of the same part; undefined if the part has none. */
export function returnOf(word: PartWord, positive: string): string | undefined {
  const { terminals, ports, poles } = descriptorOfWord(word);
  if (!Object.hasOwn(terminals, positive) || terminals[positive]!.side !== "positive") return undefined;
  return (ports.find((port) => port.positive === positive) ?? poles)?.negative;
}
