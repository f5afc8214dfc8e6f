import { type Judgement, judge } from "../../library/judge.ts";
import type { PropertyPath } from "../../library/model/plain-values.ts";
import type { PlanRecord } from "../../library/model/record.ts";
import type { Finding } from "../../library/rules/finding.ts";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import { keyOf } from "../evaluate/fixes/finding-keys.ts";
import { changed } from "../evaluate/fixes/fix-effect.ts";
import type { Choice } from "./choices.ts";

/** The place of the value that is chosen. */
export interface ChosenPlace {
  /** Those that the value sets. */
  readonly records: ReadonlySet<number>;
  readonly path: PropertyPath;
  /** The value in the plan that was checked, as written. */
  readonly standIn: string;
}

/**
 * The choices, thinnest or smallest first, with the findings that the check of the whole plan would have with each of them: as many are
 * judged as a list may cost, and of those between two of them it follows, because every limit is exceeded either from some choice
 * downwards or from one upwards. The others are not known. One with findings of its own is not judged: it is not praised anyway.
 *
 * A finding elsewhere counts if it is absent with another choice.
 */
export function judgedInPlan<Any extends Choice>(
  choices: readonly Any[],
  plan: CheckedPlan,
  place: ChosenPlace,
): readonly Any[] {
  const open = choices.flatMap(({ faults }, index) => (faults.length === 0 ? [index] : []));
  if (open.length === 0) return choices;
  const found = new Map<number, Serious>();
  const standIn = choices.findIndex(({ written }) => written === place.standIn);
  if (standIn >= 0) found.set(standIn, seriousIn(plan.judgement));
  const conductors = plan.judgement.network?.network.conductors.length ?? 0;
  let left = conductors > manyConductors ? 2 : 8;
  for (let next = nextToJudge(open, found); next !== undefined && left > 0; next = nextToJudge(open, found)) {
    const value = JSON.parse(choices[next]!.written) as number | string;
    found.set(next, seriousIn(judge(recordsWith(plan.records, place, value), [], plan.judgement)));
    left--;
  }
  const isEverywhere = (key: string) => [...found.values()].every((one) => one.has(key));
  const counts = ([key, { at }]: [string, Finding]) =>
    ("record" in at && place.records.has(at.record)) || !isEverywhere(key);
  return choices.map((choice, index) => {
    if (choice.faults.length > 0) return choice;
    const { certain, possible } = seriousAt(index, found);
    const faults = [...certain].filter(counts).map(([, finding]) => finding);
    const isKnown = faults.length > 0 || (possible !== undefined && ![...possible].some(counts));
    return { ...choice, faults, inPlan: isKnown ? "judged" : "unknown" };
  });
}

/** A network of more conductors takes so long that a list must make do with two further judgements. */
const manyConductors = 120;

/** Errors and warnings that are not accepted, by their key. */
type Serious = ReadonlyMap<string, Finding>;

function seriousIn({ findings }: Judgement): Serious {
  const isSerious = ({ severity, accepted }: Finding) =>
    accepted === undefined && (severity === "error" || severity === "warning");
  return new Map(findings.filter(isSerious).map((finding) => [keyOf(finding), finding]));
}

/** The first choice, the last one, and then the middle of the widest gap between two that differ. */
function nextToJudge(open: readonly number[], found: ReadonlyMap<number, Serious>): number | undefined {
  const [first, last] = [open[0]!, open.at(-1)!];
  if (!found.has(first)) return first;
  if (![...found.keys()].some((index) => index >= last)) return last;
  const unknown = open.filter((index) => {
    const { certain, possible } = seriousAt(index, found);
    return possible === undefined || possible.size > certain.size;
  });
  return unknown[Math.floor(unknown.length / 2)];
}

/** The findings that a choice has at least and at most, by its judged neighbours. Undefined: it is not between two. */
function seriousAt(
  index: number,
  found: ReadonlyMap<number, Serious>,
): { readonly certain: Serious; readonly possible: Serious | undefined } {
  const judged = [...found.keys()].sort((one, other) => one - other);
  const below = found.get(judged.findLast((other) => other <= index) ?? -1);
  const above = found.get(judged.find((other) => other >= index) ?? -1);
  if (!below || !above) return { certain: new Map(), possible: undefined };
  return {
    certain: new Map([...below].filter(([key]) => above.has(key))),
    possible: new Map([...below, ...above]),
  };
}

/** The records of a plan with another value at a place. */
function recordsWith(
  records: readonly PlanRecord[],
  { records: set, path }: ChosenPlace,
  value: number | string,
): readonly PlanRecord[] {
  return records.map((one, record) =>
    set.has(record)
      ? {
          word: one.word,
          input: changed(one.input, { do: "set", record, path, value }),
          get fallbackName() {
            return one.fallbackName;
          },
        }
      : one,
  );
}
