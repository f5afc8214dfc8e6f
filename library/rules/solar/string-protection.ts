import { type StringJudgement, stringsOf } from "../../analysis/solar-strings.ts";
import { solarCurrentFactors, stringProtectionRequired } from "../../standards/solar-factors.ts";
import type { ProposedFix } from "../finding.ts";
import { statedWithUnit } from "../fixes/judged-devices.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { atPart, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const stringProtection = defineRule<Values>({
  id: "solar/string-protection",
  title: "Parallel strings without string fuses",
  formerTitles: ["Strings side by side without their fuses"],
  severity: "error",
  why: "If one string has a fault, all others drive reverse current through it, more than its modules withstand.",
  sources: [
    stringProtectionRequired,
    solarCurrentFactors.irradianceSource,
    solarCurrentFactors.continuousSource,
  ],
  fixable: true,
  acceptable: true,
  // Needs the current that the other strings can drive into each, and the fuses that would fit.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      stringsOf(network).flatMap((judged): Found<Values>[] => {
        const wrong = whatIsWrong(judged);
        if (!wrong) return [];
        const { array } = judged;
        const fixes = fixesFor(judged, wrong);
        const values: Values = {
          wrong,
          strings: judged.strings,
          othersA: judged.othersA,
          leastFuseA: judged.leastFuseA,
          maxSeriesFuseA: array.maxSeriesFuseA,
          stringFuseA: array.stringFuseA,
          source: sourceInWords(stringProtectionRequired),
          currentSource: sourceInWords(solarCurrentFactors.irradianceSource),
          wayOut: wayOut(fixes, "no standard rating is between; ask the modules' maker"),
        };
        return [
          {
            subject: array.name,
            at: atPart(array, ...placeOf(judged, wrong)),
            severity: severities[wrong],
            related: judged.others.map((other) => relatedPart(other)),
            values,
            fixes,
          },
        ];
      }),
    ),
  message(values) {
    const { wrong, strings, othersA, leastFuseA, maxSeriesFuseA = 0, stringFuseA = 0, source } = values;
    const fuse = `The ${statedWithUnit(stringFuseA, "A")} string fuse`;
    switch (wrong) {
      case "bearing-not-stated":
        return `Cannot be judged: ${strings} strings drive up to ${withUnit(othersA, "A")} into one with a fault (${source}): state maxSeriesFuseA from the data sheet.`;
      case "missing": {
        const [pushed, borne] = formatDistinctWithUnit(othersA, maxSeriesFuseA, "A");
        return `The other strings drive ${pushed} into one with a fault, its modules allow a fuse of ${borne} at most (${source}): ${values.wayOut}.`;
      }
      case "too-great": {
        const [, borne] = formatDistinctWithUnit(stringFuseA, maxSeriesFuseA, "A");
        return `${fuse} is above the ${borne} that the modules' maker allows (${source}): ${values.wayOut}.`;
      }
      case "too-small": {
        const [, least] = formatDistinctWithUnit(stringFuseA, leastFuseA, "A");
        return `${fuse} opens in bright sun: it needs ${least}, 1.25 × 1.25 times the short-circuit current (${values.currentSource} and (B)): ${values.wayOut}.`;
      }
    }
  },
});

type Wrong = "bearing-not-stated" | "missing" | "too-great" | "too-small";

interface Values {
  readonly wrong: Wrong;
  /** Number of strings in parallel, including this one. */
  readonly strings: number;
  readonly othersA: number;
  readonly leastFuseA: number;
  readonly maxSeriesFuseA: number | undefined;
  readonly stringFuseA: number | undefined;
  readonly source: string;
  readonly currentSource: string;
  readonly wayOut: string;
}

const severities = {
  "bearing-not-stated": "info",
  missing: "error",
  "too-great": "error",
  "too-small": "warning",
} as const;

function whatIsWrong({ array, othersA, strings, leastFuseA, protectedOutside }: StringJudgement) {
  const { maxSeriesFuseA, stringFuseA } = array;
  if (stringFuseA !== undefined && exceeds(leastFuseA, stringFuseA)) return "too-small";
  // One other string cannot drive more than its own current, which every module is assumed to withstand.
  if (maxSeriesFuseA === undefined) return strings > 2 ? "bearing-not-stated" : undefined;
  if (!exceeds(othersA, maxSeriesFuseA) || protectedOutside) return undefined;
  if (stringFuseA === undefined) return "missing";
  return exceeds(stringFuseA, maxSeriesFuseA) ? "too-great" : undefined;
}

function placeOf({ array }: StringJudgement, wrong: Wrong): readonly string[] {
  if (wrong === "bearing-not-stated") return [];
  if (array.stringFuseA !== undefined) return ["stringFuseA"];
  return array.parallel > 1 ? ["parallel"] : [];
}

function fixesFor({ array, bestFuseA }: StringJudgement, wrong: Wrong): ProposedFix[] {
  if (wrong === "bearing-not-stated" || bestFuseA === undefined) return [];
  const fuse = `a ${withUnit(bestFuseA, "A")} fuse`;
  return [
    {
      title: array.stringFuseA === undefined ? `Put ${fuse} in each string` : `Use ${fuse} in each string`,
      kind: "repair",
      changes: [{ do: "set", record: array.record, path: ["stringFuseA"], value: bestFuseA }],
    },
  ];
}
