import type { Coverage } from "./fonts.ts";

/**
 * Makes text drawable in given fonts. A character that one of them lacks becomes a visible empty box, and is kept in `missing`.
 * So does a character that draws nothing itself but changes how others are read, such as marks that reverse the writing
 * direction. Line breaks and tabs become spaces: the caller breaks the lines.
 */
export function drawableText(fonts: readonly Coverage[]) {
  const missing = new Set<string>();
  const drawable = (text: string) =>
    [...text.replaceAll(/[\t\n\v\f\r\u0085\u2028\u2029]+/g, " ")]
      .map((character) => {
        const codePoint = character.codePointAt(0)!;
        if (codePoint >= 0x20 && codePoint < 0x7f) return character;
        if (!invisible.test(character) && fonts.every((font) => font.hasGlyphForCodePoint(codePoint)))
          return character;
        missing.add(character);
        return emptyBox;
      })
      .join("");
  return { drawable, missing: missing as ReadonlySet<string> };
}

const emptyBox = "□";

/** Control characters; bidirectional and zero-width formatting characters; halves of a character. */
const invisible = /[\p{Cc}\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]|\p{Cs}/u;
