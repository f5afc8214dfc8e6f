import type { PartKind, Side } from "./network.ts";
import type { Word } from "./record.ts";

/** DSL functions that make a part. */
export type PartWord = Exclude<Word, "circuit" | "build" | "cable" | "scenario">;

/** The terminals of each kind of part, in their order in the part, with their polarity. */
export const terminalsOf: Readonly<Record<PartWord, Readonly<Record<string, Side>>>> = {
  battery: { positive: "positive", negative: "negative" },
  // Its `side`, if stated, takes precedence.
  busBar: { stud: "either" },
  fusePanel: { feed: "positive", branch: "positive", negative: "negative" },
  disconnect: { line: "either", load: "either" },
  shunt: { batterySide: "either", systemSide: "either" },
  inverter: { positive: "positive", negative: "negative" },
  dcDcCharger: {
    inputPositive: "positive",
    inputNegative: "negative",
    outputPositive: "positive",
    outputNegative: "negative",
  },
  alternator: { positive: "positive", negative: "negative" },
  shoreCharger: { positive: "positive", negative: "negative" },
  solarArray: { positive: "positive", negative: "negative" },
  solarController: {
    solarPositive: "positive",
    solarNegative: "negative",
    positive: "positive",
    negative: "negative",
  },
  chassis: { bond: "negative", metal: "negative" },
  load: { positive: "positive", negative: "negative" },
  motor: { positive: "positive", negative: "negative" },
  // The plan names them.
  part: {},
};

export function isPartWord(word: Word): word is PartWord {
  return Object.hasOwn(terminalsOf, word);
}

/** The kind of part that a function makes: a motor is a load of its own. */
export function kindOfWord(word: PartWord): PartKind {
  return word === "motor" ? "load" : word;
}

/** The two terminals for a pair of conductors that ends at the whole part; chargers are fed at their input. */
export const polesOf: Readonly<Record<PartWord, Poles | undefined>> = {
  battery: ordinary(),
  busBar: undefined,
  fusePanel: { positive: "feed", negative: "negative" },
  disconnect: undefined,
  shunt: undefined,
  inverter: ordinary(),
  dcDcCharger: { positive: "inputPositive", negative: "inputNegative" },
  alternator: ordinary(),
  shoreCharger: ordinary(),
  solarArray: ordinary(),
  solarController: { positive: "solarPositive", negative: "solarNegative" },
  chassis: undefined,
  load: ordinary(),
  motor: ordinary(),
  part: undefined,
};

export interface Poles {
  readonly positive: string;
  readonly negative: string;
}

function ordinary(): Poles {
  return { positive: "positive", negative: "negative" };
}

/** The negative terminal that belongs to a positive one of the same part; undefined if the part has none. */
export function returnOf(word: PartWord, positive: string): string | undefined {
  const own = positive.replace(/Positive$/, "Negative").replace(/^positive$/, "negative");
  const sides = terminalsOf[word];
  if (sides[positive] !== "positive") return undefined;
  if (own !== positive && sides[own] === "negative") return own;
  return sides.negative === "negative" ? "negative" : undefined;
}
