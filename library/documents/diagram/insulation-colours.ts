/**
 * The colours in which a conductor is drawn: its base, and the stripe if it has two. From the text of the plan, such as "red", "green with
 * yellow stripe" or "violet/white"; empty if it names no colour that is known here.
 */
export function drawnColours(stated: string): readonly InsulationColour[] {
  const named = stated
    .toLowerCase()
    .split(/[^a-z]+/)
    .flatMap((word) => {
      const colour = alsoCalled[word] ?? word;
      return isColour(colour) ? [colour] : [];
    });
  return [...new Set(named)].slice(0, 2);
}

export type InsulationColour = keyof typeof coloursOnPaper;

/** They are drawn between two lines of ink, which also show white on white paper and black on a dark screen. */
export const coloursOnPaper = {
  red: "#d40000",
  black: "#000000",
  yellow: "#ffd400",
  brown: "#7a4419",
  orange: "#ff7f0e",
  blue: "#1f5fd0",
  purple: "#7b2fa8",
  grey: "#8c8c8c",
  white: "#ffffff",
  pink: "#ff9ec7",
  green: "#0a8a3a",
  turquoise: "#1fb5ad",
} as const;

const alsoCalled: Readonly<Record<string, string>> = { gray: "grey", violet: "purple", cyan: "turquoise" };

function isColour(word: string): word is InsulationColour {
  return Object.hasOwn(coloursOnPaper, word);
}
