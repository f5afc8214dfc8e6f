/* The two poles of a part that is fed, or feeds, at one pair of terminals. */

export const poles = {
  positive: { side: "positive", words: "the positive terminal" },
  negative: { side: "negative", words: "the negative terminal" },
} as const;

export const feeds = [{ does: "feeds", positive: "positive", negative: "negative" }] as const;
export const draws = [{ does: "draws", positive: "positive", negative: "negative" }] as const;
