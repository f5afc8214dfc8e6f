import type { PartKind, Side } from "./network.ts";
import type { Word } from "./record.ts";

/** The words that make a part. */
export type PartWord = Exclude<Word, "circuit" | "build" | "cable" | "scenario">;

/** The terminals of each kind of part, in the order in which a part has them, and on which side of the system they lie. */
export const terminalsOf: Readonly<Record<PartWord, Readonly<Record<string, Side>>>> = {
  battery: { positive: "positive", negative: "negative" },
  // What its `side` says, where it says it.
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
  // Those that the plan names.
  part: {},
};

export function isPartWord(word: Word): word is PartWord {
  return Object.hasOwn(terminalsOf, word);
}

/** The kind of part that a word makes: a motor is a load of its own. */
export function kindOfWord(word: PartWord): PartKind {
  return word === "motor" ? "load" : word;
}

/** The two terminals at which a pair of conductors ends that is drawn to the whole part; chargers are fed at their input. */
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

/** The negative terminal that belongs to a positive one of the same part; undefined where the part has none. */
export function returnOf(word: PartWord, positive: string): string | undefined {
  const own = positive.replace(/Positive$/, "Negative").replace(/^positive$/, "negative");
  const sides = terminalsOf[word];
  if (sides[positive] !== "positive") return undefined;
  if (own !== positive && sides[own] === "negative") return own;
  return sides.negative === "negative" ? "negative" : undefined;
}
