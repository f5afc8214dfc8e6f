/** Longer names are cut: they would break lists and messages. */
export const longestName = 80;

/**
 * A name that is safe to show: one line, no control characters, no marks that change the direction of the text around it,
 * at most {@link longestName} characters. Empty if no characters are left.
 */
export function displayName(name: string): string {
  return cutTo(longestName, harmlessText(name).replace(/\s+/g, " ").trim());
}

/** Text from a plan, without characters that would disturb the text around it. */
export function harmlessText(text: string): string {
  if (plain.test(text)) return text;
  return text
    .replace(/[\p{Cc}\u2028\u2029]/gu, " ")
    .replace(/\p{Cs}/gu, "\ufffd")
    .replace(invisible, "");
}

/** Cuts between characters, not within one. */
export function cutTo(characters: number, text: string): string {
  if (text.length <= characters) return text;
  const all = [...text];
  return all.length <= characters ? text : `${all.slice(0, characters - 1).join("")}…`;
}

const plain = /^[\x20-\x7e]*$/;

/** Format characters, direction marks among them. The two joiners stay: emoji and several scripts need them. */
const invisible = /(?![\u200c\u200d])\p{Cf}/gu;
