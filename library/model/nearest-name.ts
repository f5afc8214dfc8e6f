/**
 * The name among `known` that a builder most likely meant by `name`; undefined if none is near or two are equally near.
 * A name that lacks only its unit is nearer than one that goes on: `interrupting` is `interruptingA`, not `interruptingAtV`.
 * A name with another unit is never offered: `ambientF` is not a slip for `ambientC`, nor `loadKw` for `loadW`.
 */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
  if (name.length > longestTried) return undefined;
  const typed = name.toLowerCase();
  const candidates = [...known].filter((candidate) => !hasOtherUnit(typed, candidate));
  const same = candidates.find((candidate) => candidate.toLowerCase() === typed);
  if (same) return same;
  const meant = tradeWords.get(typed);
  if (meant && candidates.includes(meant)) return meant;
  const begun = candidates.filter(
    (candidate) => typed.length > 2 && candidate.toLowerCase().startsWith(typed),
  );
  const withoutUnit = begun.filter((candidate) => stemOf(candidate).toLowerCase() === typed);
  if (withoutUnit.length === 1) return withoutUnit[0];
  if (begun.length > 0) return begun.length === 1 ? begun[0] : undefined;
  const allowed = typed.length < 5 ? 1 : 2;
  const ranked = candidates
    .map((candidate) => ({ candidate, slips: slipsBetween(typed, candidate.toLowerCase()) }))
    .filter(({ slips }) => slips <= allowed)
    .sort((a, b) => a.slips - b.slips);
  const [first, second] = ranked;
  return first && first.slips !== second?.slips ? first.candidate : undefined;
}

/** No property or rule id is nearly as long. A longer name is not a slip and is not compared. */
const longestTried = 60;

/** Common words for these properties and sizes; the thickest AWG sizes have two names. */
const tradeWords: ReadonlyMap<string, string> = new Map([
  ["awg", "gauge"],
  ["amps", "load"],
  ["current", "load"],
  ["watts", "loadW"],
  ["volts", "voltage"],
  ["fuse", "protect"],
  ["breaker", "protect"],
  ["rating", "ratingA"],
  ["return", "returnTo"],
  ["0", "1/0"],
  ["00", "2/0"],
  ["000", "3/0"],
  ["0000", "4/0"],
]);

/** The unit of a name's value, if the plan's manual states it and the ending does not. */
const unitOfName: ReadonlyMap<string, string> = new Map([
  ["load", "a"],
  ["voltage", "v"],
  ["protect", "a"],
  ["protectFarEnd", "a"],
  ["milliohm", "milliohm"],
]);

const units: ReadonlyMap<string, string> = new Map(
  [
    ["ft", "feet", "foot"],
    ["m", "meter", "meters", "metre", "metres"],
    ["in", "inch", "inches"],
    ["mm"],
    ["cm"],
    ["km"],
    ["yd", "yards"],
    ["a", "amps", "amperes"],
    ["ma"],
    ["ka"],
    ["w", "watts"],
    ["kw"],
    ["v", "volts"],
    ["mv"],
    ["c", "celsius"],
    ["f", "fahrenheit"],
    ["k", "kelvin"],
    ["percent"],
    ["ah"],
    ["wh"],
    ["kwh"],
    ["ohm", "ohms"],
    ["milliohm", "milliohms"],
    ["nm"],
    ["ftlb", "lbft"],
    ["inlb", "lbin"],
    ["kgcm"],
  ].flatMap(([unit = "", ...others]) => [unit, ...others].map((word): [string, string] => [word, unit])),
);

function hasOtherUnit(typed: string, candidate: string): boolean {
  const stem = stemOf(candidate).toLowerCase();
  if (!typed.startsWith(stem)) return false;
  const ending = candidate.slice(stem.length);
  const typedUnit = units.get(typed.slice(stem.length));
  return typedUnit !== undefined && typedUnit !== (unitOfName.get(candidate) ?? ending.toLowerCase());
}

/** A name without its unit: "distance" of `distanceIn`. */
function stemOf(name: string): string {
  return name.replace(/(?<=[a-z])(?:Ft|M|In|Mm|A|Ah|W|V|MV|C|Nm|Ohm|Milliohm|Percent)$/, "");
}

/** Letters added, left out, changed, or swapped with their neighbour (optimal string alignment distance). */
function slipsBetween(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + change);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, beforeLast[j - 2]! + 1);
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
