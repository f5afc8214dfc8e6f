import {
  type BankEnergy,
  isAtBest,
  type NamedConsumer,
  type PeriodEnergy,
  type Verdict,
} from "../../analysis/energy/energy-result.ts";
import { monthNames } from "../../model/use-properties.ts";
import { formatAbout } from "../../rules/wording/format-number.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import { lossesNotCounted } from "../../rules/wording/unknown-length.ts";

/** For each month, in a table and beside it. */
const verdictWords: Readonly<Record<Verdict, string>> = {
  "not judged": "not judged",
  "keeps up": "keeps up",
  barely: "barely keeps up",
  "runs short": "runs short",
  "not on average": "short on average too",
};

/** A sign for each, in one character; a chart draws the same. */
export const verdictGlyphs: Readonly<Record<Verdict, string>> = {
  "not judged": "–",
  "keeps up": "●",
  barely: "◐",
  "runs short": "○",
  "not on average": "⊗",
};

/** "at best keeps up": a load without hours, or a run without a length, can only make the verdict worse. */
export function verdictAt(bank: BankEnergy, verdict: Verdict): string {
  return isAtBest(bank) && verdict !== "not judged"
    ? `at best ${verdictWords[verdict]}`
    : verdictWords[verdict];
}

/** The whole period in sentences. */
export function summaryOf({ period }: PeriodEnergy, bank: BankEnergy): string[] {
  const { months, unmetHours } = bank;
  const of = (...verdicts: readonly Verdict[]) =>
    months.filter(({ verdict }) => verdicts.includes(verdict)).map(({ month }) => monthNames[month]!);
  const short = of("runs short", "not on average");
  const barely = of("barely");
  const atBest = isAtBest(bank) ? "At best: " : "";
  const most = Number.POSITIVE_INFINITY;
  if (months.every(({ verdict }) => verdict === "not judged"))
    return [`${period.name} is not judged: ${whyNotJudged(bank)}.`];
  const belowReserveH = months.reduce((sum, { hoursBelowReserve }) => sum + hoursBelowReserve, 0);
  const howLong =
    unmetHours > 0
      ? `without supply for about ${about(unmetHours).text} hours`
      : `never without supply, but below its reserve for about ${about(belowReserveH).text} hours`;
  return [
    short.length === 0
      ? `${atBest}${period.name}: the bank keeps up in every month with the mean sun${barely.length > 0 ? `, and in ${listInWords(barely, most)} only barely: not with 15 % less sun` : ", and with 15 % less sun"}.`
      : `${atBest}${period.name}: the bank runs short in ${listInWords(short, most)}, ${howLong}${barely.length > 0 ? `; in ${listInWords(barely, most)} it keeps up barely: not with 15 % less sun` : ""}.`,
    ...notInFigures(bank),
  ];
}

function whyNotJudged({ withoutHours }: BankEnergy): string {
  const invalid = withoutHours.filter(({ isInvalid }) => isInvalid);
  return invalid.length === 0 || invalid.length < withoutHours.length
    ? "no load of this bank states its hours (use)"
    : `a value of ${namesInWords(invalid)} is invalid, see loomwright check`;
}

/** The reasons for "at best", in sentences. */
export function notInFigures(bank: BankEnergy): string[] {
  const stateNone = bank.withoutHours.filter(({ isInvalid }) => !isInvalid);
  const invalid = bank.withoutHours.filter(({ isInvalid }) => isInvalid);
  return [
    ...(stateNone.length > 0
      ? [`The plan states no hours for ${namesInWords(stateNone)}: not in these figures.`]
      : []),
    ...(invalid.length > 0
      ? [`A value of ${namesInWords(invalid)} is invalid: not in these figures, see loomwright check.`]
      : []),
    ...lossesNotCounted(bank),
  ];
}

/** The reason for a period without a balance: "a value of roof is invalid, and the balance of the bank needs it". */
export function refusedInWords(parts: readonly NamedConsumer[]): string {
  return `a value of ${namesInWords(parts)} is invalid, and the balance of the bank needs it`;
}

export function namesInWords(consumers: readonly NamedConsumer[]): string {
  return listInWords(
    consumers.map(({ name }) => name),
    10,
  );
}

/** Two significant figures for people: the sun of a month is known no better. */
export function about(value: number): { readonly value: number; readonly text: string } {
  return { value, text: formatAbout(value) };
}
