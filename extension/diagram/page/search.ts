import type { ShownElement } from "../messages.ts";

/**
 * The elements whose name or description contains all words, in any case; those with the words in their name first, else in
 * reading order. Empty for no words.
 */
export function elementsWith(words: string, elements: readonly ShownElement[]): ShownElement[] {
  const wanted = words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  if (wanted.length === 0) return [];
  const holds = (text: string) => wanted.every((word) => text.toLowerCase().includes(word));
  const named = elements.filter(({ name }) => holds(name));
  return [
    ...named,
    ...elements.filter((one) => !named.includes(one) && holds(`${one.name} ${one.description}`)),
  ];
}
